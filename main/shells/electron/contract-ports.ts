import { ipcMain, MessageChannelMain, type WebFrameMain } from 'electron';
import { CONTRACT_CONNECT_CHANNEL, CONTRACT_PORT_MESSAGE } from '../../../shared-types/wire-names.ts';
import type { Program } from '../../contract/program.ts';
import { serveConnection } from '../../contract/serve-connection.ts';
import { isOwnUrl } from './app-scheme.ts';
import { portCarrier } from './port-carrier.ts';

/** Hands the contract's port to a window that asks. Only the main frame of the program's own page gets one. */
export function offerContractPorts(program: Program): void {
  ipcMain.on(CONTRACT_CONNECT_CHANNEL, (event) => {
    const frame: WebFrameMain | null = event.senderFrame;
    if (!frame || frame !== event.sender.mainFrame || !isOwnUrl(frame.url)) return;
    const { port1, port2 } = new MessageChannelMain();
    void serveConnection(program, portCarrier(port1));
    frame.postMessage(CONTRACT_PORT_MESSAGE, null, [port2]);
  });
}
