import type { MessagePortMain } from 'electron';
import { onTestFinished } from 'vitest';
import { WebSocket } from 'ws';
import type { Program } from '../../../main/contract/program.ts';
import { serveConnection } from '../../../main/contract/serve-connection.ts';
import { portCarrier as mainPortCarrier } from '../../../main/shells/electron/port-carrier.ts';
import { type LocalServer, startServer } from '../../../main/shells/local/server.ts';
import { socketCarrier as mainSocketCarrier } from '../../../main/shells/local/socket-carrier.ts';
import type { ConnectedBackend } from '../../../renderer/backend/connect.ts';
import { createFrameBackend } from '../../../renderer/backend/frame-backend.ts';
import { portCarrier } from '../../../renderer/backend/port-carrier.ts';
import { type SocketLike, socketCarrier } from '../../../renderer/backend/socket-carrier.ts';

/** Connects a window to a program over one carrier. `gone` resolves when main has let the window's tickets go. */
export type Connect = (program: Program) => Promise<{ backend: ConnectedBackend; cut(): void; gone: Promise<void> }>;

/** A port of this process in the shape of Electron's own: it hands out events rather than values. */
function asElectronPort(port: import('node:worker_threads').MessagePort): MessagePortMain {
  const shape = {
    on: (_name: 'message', listener: (event: { data: unknown; ports: [] }) => void) =>
      port.on('message', (data: unknown) => listener({ data, ports: [] })),
    once: (_name: 'close', listener: () => void) => port.once('close', listener),
    start: () => port.start(),
    postMessage: (message: unknown) => port.postMessage(message),
    close: () => port.close(),
  };
  return shape as unknown as MessagePortMain;
}

export const overPort: Connect = async (program) => {
  const { MessageChannel } = await import('node:worker_threads');
  const { port1, port2 } = new MessageChannel();
  const gone = serveConnection(program, mainPortCarrier(asElectronPort(port1)));
  const backend = createFrameBackend(portCarrier(port2 as unknown as Parameters<typeof portCarrier>[0]));
  onTestFinished(() => port2.close());
  return { backend, cut: () => port2.close(), gone };
};

/** The cookie that the server gives for its start address. */
export async function cookieOf(server: Pick<LocalServer, 'startAddress'>): Promise<string> {
  const answer = await fetch(server.startAddress, { redirect: 'manual' });
  return (answer.headers.get('set-cookie') ?? '').split(';')[0];
}

/** A socket as the window's page opens it. */
export async function openSocket(startAddress: string): Promise<WebSocket> {
  const origin = new URL(startAddress).origin;
  const headers = { Cookie: await cookieOf({ startAddress }), Origin: origin };
  return new WebSocket(`${origin.replace('http', 'ws')}/contract`, { headers });
}

export const overSocket: Connect = async (program) => {
  let letGo: () => void = () => undefined;
  const gone = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  const server = await startServer({
    port: 0,
    pages: async () => null,
    onSocket: (socket) => void serveConnection(program, mainSocketCarrier(socket)).then(letGo),
  });
  onTestFinished(() => server.close());
  const socket = await openSocket(server.startAddress);
  const backend = createFrameBackend(socketCarrier(socket as unknown as SocketLike));
  return { backend, cut: () => socket.close(), gone };
};

export const carriers: [string, Connect][] = [
  ['message port', overPort],
  ['socket', overSocket],
];
