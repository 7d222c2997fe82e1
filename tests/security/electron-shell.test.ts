import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import type { Program } from '../../main/contract/program.ts';
import { declareScheme, isOwnUrl, START_URL, serveScheme } from '../../main/shells/electron/app-scheme.ts';
import { offerContractPorts } from '../../main/shells/electron/contract-ports.ts';
import { saveBeforeQuitting } from '../../main/shells/electron/end-program.ts';
import { openMainWindow } from '../../main/shells/electron/main-window.ts';
import { denyPermissions, refuseNavigation } from '../../main/shells/electron/refusals.ts';
import { ticketArgument } from '../../main/shells/electron/ticket-argument.ts';
import { builtPart } from '../support/shell/build-main.ts';

// Electron's binary is not needed for these: its parts are replaced, and what the shell asks of them is looked at.
const fake = vi.hoisted(() => {
  type Listener = (...given: unknown[]) => unknown;
  const emitter = () => {
    const listeners = new Map<string, Listener>();
    return {
      on: (name: string, listener: Listener) => void listeners.set(name, listener),
      once: (name: string, listener: Listener) => void listeners.set(name, listener),
      emit: (name: string, ...given: unknown[]) => listeners.get(name)?.(...given),
      names: () => [...listeners.keys()].sort(),
    };
  };
  const state = {
    windowOptions: null as unknown,
    loaded: [] as string[],
    schemes: [] as unknown[],
    handler: null as null | ((request: Request) => Promise<Response>),
    ports: 0,
    answers: [] as number[],
    asked: [] as string[],
    quits: 0,
  };
  return { emitter, state, ipcMain: emitter(), app: emitter() };
});

vi.mock('electron', () => {
  const { state, emitter, ipcMain, app } = fake;
  class BrowserWindow {
    constructor(options: unknown) {
      state.windowOptions = options;
    }
    once() {}
    show() {}
    async loadURL(url: string) {
      state.loaded.push(url);
    }
  }
  class MessageChannelMain {
    port1 = { ...emitter(), start: () => undefined, close: () => undefined, postMessage: () => undefined };
    port2 = { handedOver: true };
    constructor() {
      state.ports += 1;
    }
  }
  return {
    ...{ ipcMain, BrowserWindow, MessageChannelMain },
    app: { ...app, quit: () => Object.assign(state, { quits: state.quits + 1 }) },
    protocol: {
      registerSchemesAsPrivileged: (schemes: unknown[]) => Object.assign(state, { schemes }),
      handle: (_scheme: string, handler: (request: Request) => Promise<Response>) => Object.assign(state, { handler }),
    },
    dialog: {
      showMessageBox: async ({ detail }: { detail: string }) => {
        state.asked.push(detail);
        return { response: state.answers.shift() ?? 1 };
      },
    },
  };
});

const program = (closes: { code: 'disk-full'; file: string }[][] = [[]]): Program => ({
  connect: () => ({ dispatch: async () => ({ ok: true, value: {} }), close: async () => [] }),
  close: async () => closes.shift() ?? [],
});

beforeEach(() => {
  Object.assign(fake.state, { ports: 0, answers: [], asked: [], quits: 0 });
});

test('the window is walled off from the system', async () => {
  await openMainWindow('/app/preload.cjs');
  const { webPreferences } = fake.state.windowOptions as { webPreferences: Record<string, unknown> };
  expect(webPreferences).toMatchObject({
    ...{ contextIsolation: true, sandbox: true, webSecurity: true, preload: '/app/preload.cjs' },
    ...{ nodeIntegration: false, nodeIntegrationInWorker: false, nodeIntegrationInSubFrames: false, webviewTag: false },
  });
  expect(webPreferences).not.toHaveProperty('allowRunningInsecureContent');
  expect(webPreferences).not.toHaveProperty('experimentalFeatures');
  expect(fake.state.loaded).toEqual([START_URL]);
});

test('every permission is denied, asked or looked up, and devices too', () => {
  const handlers: Record<string, (...given: never[]) => unknown> = {};
  const downloads = fake.emitter();
  const keep = (name: string) => (handler: (...given: never[]) => unknown) => {
    handlers[name] = handler;
  };
  denyPermissions({
    setPermissionRequestHandler: keep('request'),
    setPermissionCheckHandler: keep('check'),
    setDevicePermissionHandler: keep('device'),
    on: downloads.on,
  } as never);
  for (const permission of [
    'media',
    'geolocation',
    'notifications',
    'fileSystem',
    'clipboard-read',
    'hid',
    'unknown',
  ]) {
    const decided: boolean[] = [];
    handlers.request(null as never, permission as never, ((yes: boolean) => decided.push(yes)) as never);
    expect(decided).toEqual([false]);
    expect(handlers.check(null as never, permission as never)).toBe(false);
  }
  expect(handlers.device({} as never)).toBe(false);
  const download = (url: string) => {
    const event = { preventDefault: vi.fn() };
    downloads.emit('will-download', event, { getURL: () => url });
    return event.preventDefault.mock.calls.length === 0;
  };
  expect(download('blob:app://heatmargin/1234')).toBe(true);
  expect(download('https://example.org/x')).toBe(false);
  expect(download('blob:https://example.org/1')).toBe(false);
});

test('no navigation, no redirect, no other window, no webview', () => {
  const contents = fake.emitter();
  let opens: (() => { action: string }) | null = null;
  refuseNavigation({
    on: contents.on,
    setWindowOpenHandler: (handler: () => { action: string }) => {
      opens = handler;
    },
  } as never);
  const expected = ['will-attach-webview', 'will-frame-navigate', 'will-navigate', 'will-redirect'];
  expect(contents.names()).toEqual(expected);
  for (const name of expected) {
    const event = { preventDefault: vi.fn() };
    contents.emit(name, event);
    expect(event.preventDefault).toHaveBeenCalledTimes(1);
  }
  expect(opens!()).toEqual({ action: 'deny' });
});

describe('the scheme', () => {
  const pages = async (path: string) =>
    path === '/index.html' ? { bytes: new Uint8Array([60]), type: 'text/html; charset=utf-8' } : null;
  const get = (url: string, method = 'GET') => fake.state.handler!(new Request(url, { method }));

  test('is declared as one with an origin, and without the powers that it does not need', () => {
    declareScheme();
    expect(fake.state.schemes).toEqual([
      { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true } },
    ]);
  });

  test('serves the window with the policy, and nothing else', async () => {
    serveScheme(pages);
    const page = await get('app://heatmargin/index.html');
    expect(page.status).toBe(200);
    expect(page.headers.get('Content-Security-Policy')).toContain("default-src 'none'");
    expect((await get('app://heatmargin/secret')).status).toBe(404);
    expect((await get('app://other/index.html')).status).toBe(404);
    expect((await get('app://heatmargin/index.html', 'POST')).status).toBe(405);
  });

  test('knows its own addresses', () => {
    expect(isOwnUrl('app://heatmargin/index.html#x')).toBe(true);
    for (const url of ['app://heatmargin.example/', 'https://heatmargin/', 'file:///index.html', 'about:blank', '']) {
      expect(isOwnUrl(url)).toBe(false);
    }
  });
});

describe('the port', () => {
  const ask = (frame: object | null, mainFrame: object | null) =>
    fake.ipcMain.emit('contract.connect', { senderFrame: frame, sender: { mainFrame } });

  test('goes to the main frame of the own page', () => {
    offerContractPorts(program());
    const posted: unknown[] = [];
    const frame = { url: START_URL, postMessage: (...given: unknown[]) => posted.push(given) };
    ask(frame, frame);
    expect(posted).toEqual([['heatmargin-contract-port', null, [{ handedOver: true }]]]);
    expect(fake.state.ports).toBe(1);
  });

  test('goes to nobody else: another page, a frame inside, a frame that is gone', () => {
    offerContractPorts(program());
    const posted = vi.fn();
    const own = { url: START_URL, postMessage: posted };
    const foreign = { url: 'https://example.org/', postMessage: posted };
    ask(foreign, foreign);
    ask(own, { url: START_URL });
    ask(null, own);
    expect(posted).not.toHaveBeenCalled();
    expect(fake.state.ports).toBe(0);
  });
});

describe('quitting', () => {
  const quit = async () => {
    const event = { preventDefault: vi.fn() };
    fake.app.emit('will-quit', event);
    await new Promise((resolve) => setTimeout(resolve, 5));
    return event.preventDefault.mock.calls.length;
  };

  test('waits until the tickets are saved, then goes', async () => {
    saveBeforeQuitting(program());
    expect(await quit()).toBe(1);
    expect(fake.state.quits).toBe(1);
    expect(await quit()).toBe(0);
  });

  test('asks when one cannot be saved; trying again tries again', async () => {
    const full = { code: 'disk-full', file: 'T-1.hmticket' } as const;
    fake.state.answers = [0];
    saveBeforeQuitting(program([[full], []]));
    await quit();
    expect(fake.state.asked).toHaveLength(1);
    expect(fake.state.asked[0]).toContain('T-1.hmticket');
    expect(fake.state.quits).toBe(1);
  });
});

test('the ticket that the app was started with is the one word that names one', () => {
  expect(ticketArgument(['/opt/heatmargin', 'C:\\shelf\\T-1.hmticket'])).toBe('C:\\shelf\\T-1.hmticket');
  expect(ticketArgument(['electron', '.', '--flag', 'T 2.HMTICKET'])).toBe('T 2.HMTICKET');
  expect(ticketArgument(['electron', '.'])).toBeNull();
  expect(ticketArgument(['electron', '--x=y.hmticket'])).toBeNull();
});

describe('what is built', () => {
  const folder = builtPart('preload');
  const preloadText = () => readFileSync(join(folder(), 'preload.cjs'), 'utf8');

  test('the preload is one file that needs nothing but electron', () => {
    const preload = preloadText();
    const needed = [...preload.matchAll(/require\(["'](.+?)["']\)/g)].map(([, name]) => name);
    expect([...new Set(needed)]).toEqual(['electron']);
    expect(preload).not.toMatch(/^\s*(import|export) /m);
  });

  test('the preload gives the page one function and no way to any other channel', () => {
    const exposed: Record<string, Record<string, () => void>> = {};
    const sent: unknown[][] = [];
    const heard: string[] = [];
    const electron = {
      contextBridge: {
        exposeInMainWorld: (name: string, api: Record<string, () => void>) => Object.assign(exposed, { [name]: api }),
      },
      ipcRenderer: { send: (...given: unknown[]) => sent.push(given), on: (channel: string) => heard.push(channel) },
    };
    new Function('require', 'exports', 'module', preloadText())(() => electron, {}, {});
    expect(Object.keys(exposed)).toEqual(['heatmargin']);
    expect(Object.keys(exposed.heatmargin)).toEqual(['connect']);
    exposed.heatmargin.connect();
    expect(sent).toEqual([['contract.connect']]);
    expect(heard).toEqual(['heatmargin-contract-port']);
  });

  test('the package shuts every fuse that would run other code', () => {
    const settings = readFileSync(join(import.meta.dirname, '../../electron-builder.yml'), 'utf8');
    const fuse = (name: string) => new RegExp(`^  ${name}: (true|false)$`, 'm').exec(settings)?.[1];
    expect(fuse('runAsNode')).toBe('false');
    expect(fuse('enableNodeOptionsEnvironmentVariable')).toBe('false');
    expect(fuse('enableNodeCliInspectArguments')).toBe('false');
    expect(fuse('onlyLoadAppFromAsar')).toBe('true');
    expect(fuse('enableEmbeddedAsarIntegrityValidation')).toBe('true');
    expect(fuse('grantFileProtocolExtraPrivileges')).toBe('false');
    expect(settings).toMatch(/^asar: true$/m);
  });
});
