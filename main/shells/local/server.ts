import { randomBytes } from 'node:crypto';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo, Socket } from 'node:net';
import { type WebSocket, WebSocketServer } from 'ws';
import { CONTRACT_SOCKET_PATH } from '../../../shared-types/wire-names.ts';
import { refusedPage } from '../../../shared-types/words/shell.ts';
import { PAGE_HEADERS } from '../content-security.ts';
import type { PageFiles } from '../page-files.ts';
import { type House, type Knock, refusal, START_PATH, sameText, socketRefusal, tokenCookie } from './guard.ts';

export const LOOPBACK = '127.0.0.1';
/** A ticket file enters as one message. */
const LARGEST_MESSAGE = 600 * 1024 * 1024;

export type LocalServer = {
  readonly port: number;
  /** Address that lets a browser in; it carries the key of this run. */
  readonly startAddress: string;
  /** From now on the start address lets nobody in: the window that was opened with it is there. Its page may still reload. */
  endStart(): void;
  close(): Promise<void>;
};

export type ServerOptions = {
  /** 0: any free port. */
  port: number;
  pages: PageFiles;
  /** A window connected. */
  onSocket(socket: WebSocket): void;
};

/** Serves the built window and the contract's socket on loopback only. Errors: those of listening, such as a port in use. */
export async function startServer(options: ServerOptions): Promise<LocalServer> {
  const token = randomBytes(32).toString('base64url');
  const startKey = randomBytes(32).toString('base64url');
  let startIsOpen = true;
  const sockets = new WebSocketServer({ noServer: true, maxPayload: LARGEST_MESSAGE, perMessageDeflate: false });
  const house: House = { host: '', token };
  const server = createServer(
    (request, response) => void answer(options.pages, house, startIsOpen ? startKey : null, request, response),
  );
  server.on('upgrade', (request, socket, head) => {
    const knock = knockOf(request);
    const refused = knock.path === CONTRACT_SOCKET_PATH ? socketRefusal(house, knock) : 403;
    if (refused) return turnAway(socket as Socket, refused);
    sockets.handleUpgrade(request, socket, head, options.onSocket);
  });
  const port = await listening(server, options.port);
  house.host = `${LOOPBACK}:${port}`;
  return {
    port,
    startAddress: `http://${house.host}${START_PATH}?key=${startKey}`,
    endStart() {
      startIsOpen = false;
    },
    async close() {
      for (const socket of sockets.clients) socket.terminate();
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}

function listening(server: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, LOOPBACK, () => resolve((server.address() as AddressInfo).port));
  });
}

/** The path is taken as sent: nothing is decoded or resolved, so nothing can mean two things. */
const knockOf = (request: IncomingMessage): Knock => ({
  method: request.method ?? '',
  path: (request.url ?? '').split('?')[0],
  headers: request.headers,
});

async function answer(
  pages: PageFiles,
  house: House,
  startKey: string | null,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const knock = knockOf(request);
  const refused = refusal(house, knock);
  if (refused) return refuse(response, refused);
  if (knock.path === START_PATH) return letIn(house, startKey, request, response);
  const file = await pages(knock.path);
  if (!file) return refuse(response, 404);
  response.writeHead(200, { ...PAGE_HEADERS, 'Content-Type': file.type, 'Content-Length': file.bytes.byteLength });
  response.end(knock.method === 'HEAD' ? undefined : file.bytes);
}

function letIn(house: House, startKey: string | null, request: IncomingMessage, response: ServerResponse): void {
  const key = new URL(request.url ?? '', `http://${house.host}`).searchParams.get('key') ?? '';
  if (startKey === null || !sameText(key, startKey)) {
    refuse(response, 403);
    return;
  }
  response.writeHead(303, { ...PAGE_HEADERS, Location: '/', 'Set-Cookie': tokenCookie(house) });
  response.end();
}

function refuse(response: ServerResponse, status: number): void {
  response.writeHead(status, { ...PAGE_HEADERS, 'Content-Type': 'text/plain; charset=utf-8' });
  response.end(refusedPage);
}

function turnAway(socket: Socket, status: number): void {
  socket.end(`HTTP/1.1 ${status} Refused\r\nConnection: close\r\n\r\n`);
}
