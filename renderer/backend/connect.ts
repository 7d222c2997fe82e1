import type { Backend } from '../../shared-types/contract.ts';
import { CONTRACT_PORT_MESSAGE, CONTRACT_SOCKET_PATH } from '../../shared-types/wire-names.ts';
import { createFrameBackend } from './frame-backend.ts';
import { portCarrier } from './port-carrier.ts';
import { type SocketLike, socketCarrier } from './socket-carrier.ts';

/** What Electron's preload puts into the page: nothing but a way to ask for the port. */
type PreloadBridge = { connect(): void };

export type ConnectedBackend = Backend & { onClose(listener: () => void): void };

/** The backend of this page: the message port in Electron, the socket of the local shell elsewhere. */
export async function connectBackend(page: Window = window): Promise<ConnectedBackend> {
  const bridge = (page as { heatmargin?: PreloadBridge }).heatmargin;
  if (!bridge) return createFrameBackend(socketCarrier(openSocket(page)));
  return createFrameBackend(portCarrier(await askForPort(page, bridge)));
}

function openSocket(page: Window): SocketLike {
  const url = new URL(CONTRACT_SOCKET_PATH, page.location.href);
  url.protocol = 'ws:';
  return new WebSocket(url) as SocketLike;
}

function askForPort(page: Window, bridge: PreloadBridge): Promise<MessagePort> {
  return new Promise((resolve) => {
    const listener = (event: MessageEvent) => {
      // Only the preload of this very window may hand in the port.
      if (event.source !== page || event.data !== CONTRACT_PORT_MESSAGE || !event.ports[0]) return;
      page.removeEventListener('message', listener);
      resolve(event.ports[0]);
    };
    page.addEventListener('message', listener);
    bridge.connect();
  });
}
