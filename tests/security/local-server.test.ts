import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { connect } from 'node:net';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { WebSocket } from 'ws';
import { startServer } from '../../main/shells/local/server.ts';
import { createPageFiles } from '../../main/shells/page-files.ts';
import { cookieOf } from '../support/shell/carriers.ts';
import { temporaryFolder } from '../support/shell/folders.ts';

async function serve() {
  const folder = temporaryFolder();
  mkdirSync(join(folder, 'pages/assets'), { recursive: true });
  writeFileSync(join(folder, 'pages/index.html'), '<!doctype html><title>window</title>');
  writeFileSync(join(folder, 'pages/assets/a.js'), 'export {};');
  writeFileSync(join(folder, 'pages/notes.secret'), 'of no known type');
  writeFileSync(join(folder, 'secret.js'), 'outside');
  symlinkSync(join(folder, 'secret.js'), join(folder, 'pages/link.js'));
  let sockets = 0;
  const server = await startServer({
    port: 0,
    pages: createPageFiles(join(folder, 'pages')),
    onSocket: () => {
      sockets += 1;
    },
  });
  onTestFinished(() => server.close());
  const host = `127.0.0.1:${server.port}`;
  const cookie = await cookieOf(server);
  type Ask = { path?: string; method?: string; headers?: Record<string, string> };
  const ask = ({ path = '/', method = 'GET', headers = {} }: Ask) =>
    new Promise<{ status: number; headers: Record<string, unknown>; text: string }>((resolve, reject) => {
      const sent = { Host: host, Cookie: cookie, ...headers };
      const asked = request({ host: '127.0.0.1', port: server.port, path, method, headers: sent }, (response) => {
        let text = '';
        response.on('data', (data: Buffer) => {
          text += data.toString();
        });
        response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, text }));
      });
      asked.on('error', reject);
      asked.end();
    });
  const socket = (headers: Record<string, string>, path = '/contract') =>
    new Promise<'open' | 'refused'>((resolve) => {
      const opening = new WebSocket(`ws://${host}${path}`, { headers: { Cookie: cookie, ...headers } });
      opening.once('open', () => {
        resolve('open');
        opening.terminate();
      });
      opening.once('error', () => resolve('refused'));
    });
  return { server, host, cookie, ask, socket, sockets: () => sockets };
}

describe('who is let in', () => {
  test('the cookie of this run opens the page; without it, or with another, nothing does', async () => {
    const { ask, cookie } = await serve();
    expect(await ask({})).toMatchObject({ status: 200, text: expect.stringContaining('window') });
    expect((await ask({ headers: { Cookie: '' } })).status).toBe(403);
    expect((await ask({ headers: { Cookie: `${cookie}x` } })).status).toBe(403);
    expect((await ask({ headers: { Cookie: cookie.replace(/=.*/, '=') } })).status).toBe(403);
    expect((await ask({ path: '/assets/a.js', headers: { Cookie: '' } })).status).toBe(403);
  });

  test('the cookie is out of reach of scripts and of other sites', async () => {
    const { server } = await serve();
    const answer = await fetch(server.startAddress, { redirect: 'manual' });
    expect(answer.status).toBe(303);
    expect(answer.headers.get('set-cookie')).toMatch(/^heatmargin-\d+=[\w-]{43}; HttpOnly; SameSite=Strict; Path=\/$/);
    expect(answer.headers.get('location')).toBe('/');
  });

  test('a start without the key, or with a wrong one, gives no cookie', async () => {
    const { server } = await serve();
    const { origin } = new URL(server.startAddress);
    for (const path of ['/start', '/start?key=', `/start?key=${'A'.repeat(43)}`]) {
      const answer = await fetch(origin + path, { redirect: 'manual' });
      expect([answer.status, answer.headers.get('set-cookie')]).toEqual([403, null]);
    }
  });

  test('once its window is there, the start address lets nobody in; the window may still reload', async () => {
    const { server, ask } = await serve();
    server.endStart();
    const answer = await fetch(server.startAddress, { redirect: 'manual' });
    expect([answer.status, answer.headers.get('set-cookie')]).toEqual([403, null]);
    expect((await ask({})).status).toBe(200);
  });

  test('every run has its own key and cookie', async () => {
    const [one, two] = [await serve(), await serve()];
    expect(one.server.startAddress.split('key=')[1]).not.toBe(two.server.startAddress.split('key=')[1]);
    expect(one.cookie).not.toBe(two.cookie);
  });

  test('another name for this address is refused: rebound names bring no one in', async () => {
    const { ask, server, host } = await serve();
    for (const Host of [
      `localhost:${server.port}`,
      'evil.example',
      `evil.example:${server.port}`,
      '127.0.0.1',
      `${host}.`,
    ])
      expect((await ask({ headers: { Host } })).status).toBe(400);
  });

  test('requests that another site started are refused, cookie or not', async () => {
    const { ask } = await serve();
    for (const site of ['cross-site', 'same-site'])
      expect((await ask({ headers: { 'Sec-Fetch-Site': site } })).status).toBe(403);
    for (const site of ['same-origin', 'none'])
      expect((await ask({ headers: { 'Sec-Fetch-Site': site } })).status).toBe(200);
    const start = new URL((await serve()).server.startAddress);
    const answer = await fetch(start, { redirect: 'manual', headers: { 'Sec-Fetch-Site': 'cross-site' } });
    expect(answer.status).toBe(403);
  });

  test('nothing can be posted', async () => {
    const { ask } = await serve();
    for (const method of ['POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS'])
      expect((await ask({ method })).status).toBe(405);
  });
});

describe('the socket, through which every change goes', () => {
  test('opens for the page itself', async () => {
    const { socket, host, sockets } = await serve();
    expect(await socket({ Origin: `http://${host}` })).toBe('open');
    expect(await socket({ Origin: `http://${host}`, 'Sec-Fetch-Site': 'same-origin' })).toBe('open');
    expect(sockets()).toBe(2);
  });

  test.each([
    ['no origin', {}],
    ['a foreign origin', { Origin: 'http://evil.example' }],
    ['another port', { Origin: 'http://127.0.0.1:1' }],
    ['an opaque origin', { Origin: 'null' }],
  ])('refuses %s', async (_name, headers) => {
    const { socket, sockets } = await serve();
    expect(await socket(headers)).toBe('refused');
    expect(sockets()).toBe(0);
  });

  test('refuses the right origin with a foreign fetch site, a wrong host, no cookie or another path', async () => {
    const { socket, host, sockets } = await serve();
    const Origin = `http://${host}`;
    expect(await socket({ Origin, 'Sec-Fetch-Site': 'cross-site' })).toBe('refused');
    expect(await socket({ Origin, 'Sec-Fetch-Site': 'none' })).toBe('refused');
    expect(await socket({ Origin, Host: 'evil.example' })).toBe('refused');
    expect(await socket({ Origin, Cookie: '' })).toBe('refused');
    expect(await socket({ Origin }, '/other')).toBe('refused');
    expect(sockets()).toBe(0);
  });
});

describe('what is served', () => {
  test.each([
    '/../secret.js',
    '/assets/../../secret.js',
    '/%2e%2e/secret.js',
    '/..%2fsecret.js',
    '//secret.js',
    '/link.js',
    '/notes.secret',
    '/assets',
    '/constructor',
    '/index.html/',
  ])('%s is not', async (path) => {
    const { ask } = await serve();
    expect((await ask({ path })).status).toBe(404);
  });

  test('every answer carries the policy, refusals too', async () => {
    const { ask } = await serve();
    const answers = [await ask({}), await ask({ path: '/none' }), await ask({ headers: { Cookie: '' } })];
    for (const { headers } of answers) {
      const policy = String(headers['content-security-policy']);
      expect(policy).toContain("default-src 'none'");
      expect(policy).not.toMatch(/unsafe|\*|https?:|data: *;? *script/);
      expect(policy).toContain("frame-ancestors 'none'");
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['referrer-policy']).toBe('no-referrer');
    }
  });

  test('a refusal says nothing about the program but where to start it', async () => {
    const { ask } = await serve();
    const { text } = await ask({ headers: { Cookie: '' } });
    expect(text).toMatch(/Start it from the program window/);
    expect(text).not.toMatch(/key|cookie|token/i);
  });
});

test('it listens on loopback and nowhere else', async () => {
  const { server } = await serve();
  const outer = Object.values(networkInterfaces())
    .flatMap((addresses) => addresses ?? [])
    .filter(({ family, internal }) => family === 'IPv4' && !internal);
  for (const { address } of outer) {
    const outcome = await new Promise<string>((resolve) => {
      const socket = connect({ host: address, port: server.port, timeout: 2000 });
      socket.once('connect', () => resolve('open'));
      socket.once('error', () => resolve('refused'));
      socket.once('timeout', () => resolve('refused'));
      onTestFinished(() => void socket.destroy());
    });
    expect(outcome).toBe('refused');
  }
  const own = await new Promise<string>((resolve) => {
    const socket = connect({ host: '127.0.0.1', port: server.port });
    socket.once('connect', () => resolve('open'));
    onTestFinished(() => void socket.destroy());
  });
  expect(own).toBe('open');
});
