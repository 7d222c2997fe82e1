import { describe, expect, onTestFinished, test } from 'vitest';
import { WebSocket } from 'ws';
import { serveConnection } from '../../main/contract/serve-connection.ts';
import { startServer } from '../../main/shells/local/server.ts';
import { socketCarrier } from '../../main/shells/local/socket-carrier.ts';
import { encodeFrame } from '../../shared-types/frame.ts';
import { cookieOf } from '../support/shell/carriers.ts';
import { temporaryFolder } from '../support/shell/folders.ts';
import { testProgram } from '../support/shell/program.ts';

async function openRaw() {
  const { program } = await testProgram({ folder: temporaryFolder() });
  const server = await startServer({
    port: 0,
    pages: async () => null,
    onSocket: (socket) => void serveConnection(program, socketCarrier(socket)),
  });
  onTestFinished(() => server.close());
  const host = `127.0.0.1:${server.port}`;
  const headers = { Cookie: await cookieOf(server), Origin: `http://${host}` };
  const socket = new WebSocket(`ws://${host}/contract`, { headers });
  await new Promise((resolve) => socket.once('open', resolve));
  const closed = new Promise<string>((resolve) => socket.once('close', () => resolve('closed')));
  return { socket, closed };
}

describe('a window that speaks no sense is cut off', () => {
  test.each<[string, string | Uint8Array]>([
    ['text', '{"kind":"request"}'],
    ['bytes that are no frame', new Uint8Array([1, 2, 3])],
    ['a frame that is no request', encodeFrame({ kind: 'answer', serial: 1, result: {} })],
    [
      'a request with more than it may hold',
      encodeFrame({ kind: 'request', serial: 1, name: 'x', input: {}, as: 'root' }),
    ],
    ['a serial that is no number', encodeFrame({ kind: 'request', serial: 'one', name: 'x', input: {} })],
  ])('%s', async (_name, message) => {
    const { socket, closed } = await openRaw();
    socket.send(message);
    expect(await closed).toBe('closed');
  });

  test('and what it sent changed nothing: the next window works', async () => {
    const first = await openRaw();
    first.socket.send('rubbish');
    await first.closed;
    const { socket } = await openRaw();
    const answer = new Promise<number>((resolve) => socket.once('message', (data: Buffer) => resolve(data.length)));
    socket.send(encodeFrame({ kind: 'request', serial: 1, name: 'about.read', input: {} }));
    expect(await answer).toBeGreaterThan(20);
  });
});
