import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, expect, test, vi } from 'vitest';
import { openApp } from '../../../../main/shells/electron/open-app.ts';
import { temporaryFolder } from '../../../support/shell/folders.ts';

// The whole start of the app with Electron's parts replaced: what is asked of them, and in which order.
const fake = vi.hoisted(() => ({
  order: [] as string[],
  folder: '',
  lock: true,
  handler: null as null | ((request: Request) => Promise<Response>),
  listeners: new Map<string, (...given: unknown[]) => void>(),
}));

vi.mock('electron', () => {
  const note =
    (name: string) =>
    (..._given: unknown[]) =>
      void fake.order.push(name);
  const on = (name: string, listener: (...given: unknown[]) => void) => void fake.listeners.set(name, listener);
  class BrowserWindow {
    static getAllWindows = () => [{ isMinimized: () => true, restore: note('restore'), focus: note('focus') }];
    once() {}
    async loadURL() {
      fake.order.push('load');
    }
  }
  const electron = {
    BrowserWindow,
    MessageChannelMain: class {},
    Menu: { setApplicationMenu: note('no menu') },
    ipcMain: { on: note('ports') },
    shell: {},
    dialog: {},
    app: {
      on,
      ...{ getVersion: () => '0.1.0', getPath: () => fake.folder, enableSandbox: note('sandbox'), quit: note('quit') },
      requestSingleInstanceLock: () => fake.lock,
      whenReady: async () => void fake.order.push('ready'),
    },
    protocol: {
      registerSchemesAsPrivileged: note('declare scheme'),
      handle: (_scheme: string, handler: (request: Request) => Promise<Response>) => {
        fake.order.push('serve scheme');
        fake.handler = handler;
      },
    },
    session: {
      defaultSession: {
        setPermissionRequestHandler: note('deny requests'),
        setPermissionCheckHandler: note('deny checks'),
        setDevicePermissionHandler: note('deny devices'),
        on: () => undefined,
      },
    },
  };
  return { ...electron, default: electron };
});

function builtDoor(): string {
  const folder = temporaryFolder();
  fake.folder = join(folder, 'user-data');
  mkdirSync(join(folder, 'dist/main'), { recursive: true });
  mkdirSync(join(folder, 'dist/renderer'), { recursive: true });
  writeFileSync(join(folder, 'dist/renderer/index.html'), '<!doctype html>');
  return join(folder, 'dist/main');
}

beforeEach(() => {
  fake.order = [];
  fake.lock = true;
});

test('everything is refused before the window loads, and the scheme is declared before the app is ready', async () => {
  await openApp(builtDoor());
  const place = (name: string) => fake.order.indexOf(name);
  expect(place('declare scheme')).toBeGreaterThanOrEqual(0);
  expect(place('sandbox')).toBeLessThan(place('ready'));
  expect(place('declare scheme')).toBeLessThan(place('ready'));
  for (const step of ['deny requests', 'deny checks', 'deny devices', 'serve scheme', 'ports']) {
    expect(place(step)).toBeGreaterThan(place('ready'));
    expect(place(step)).toBeLessThan(place('load'));
  }
  const page = await fake.handler?.(new Request('app://heatmargin/index.html'));
  expect(await page?.text()).toBe('<!doctype html>');
});

test('a second start raises the window of the first and goes', async () => {
  await openApp(builtDoor());
  fake.listeners.get('second-instance')?.();
  expect(fake.order.slice(-2)).toEqual(['restore', 'focus']);
  fake.order = [];
  fake.lock = false;
  await openApp(builtDoor());
  expect(fake.order).toEqual(['quit']);
});

test('every new page is kept from navigating, whoever made it', async () => {
  await openApp(builtDoor());
  const refused: string[] = [];
  const contents = { on: (name: string) => refused.push(name), setWindowOpenHandler: () => refused.push('open') };
  fake.listeners.get('web-contents-created')?.({}, contents);
  expect(refused.sort()).toEqual([
    'open',
    'will-attach-webview',
    'will-frame-navigate',
    'will-navigate',
    'will-redirect',
  ]);
});
