import { describe, expect, test, vi } from 'vitest';
import { browserArguments, findBrowser, hasDisplay, openWindow } from '../../../../main/shells/local/browser.ts';
import { createLifetime } from '../../../../main/shells/local/lifetime.ts';
import { readLocalOptions } from '../../../../main/shells/local/options.ts';

describe('the words after the local door', () => {
  test('nothing said: a window, any port, the usual folders', () => {
    expect(readLocalOptions([])).toEqual({
      ...{ window: true, stay: false, port: 0, shelf: null, appFolder: null, ticket: null },
    });
  });

  test('without a window the door stays', () => {
    const words = ['--no-window', '--port', '8123', '--shelf', '/s', '--app-folder', '/a', 'T-1.hmticket'];
    expect(readLocalOptions(words)).toEqual({
      ...{ window: false, stay: true, port: 8123, shelf: '/s', appFolder: '/a', ticket: 'T-1.hmticket' },
    });
  });

  test.each([[['--port', 'x']], [['--port', '70000']], [['--colour']], [['a', 'b']], [['--shelf']]])(
    '%j makes no sense',
    (words) => {
      expect(readLocalOptions(words)).toBeNull();
    },
  );
});

describe('the browser', () => {
  const linux = { platform: 'linux', env: { PATH: '/usr/bin:/opt/bin' }, isRoot: false } as const;

  test('is the first of the known ones on the path; one named outright wins or nothing is taken', () => {
    const has =
      (...paths: string[]) =>
      (path: string) =>
        paths.includes(path);
    expect(findBrowser(linux, has('/opt/bin/google-chrome', '/usr/bin/chromium') as never)).toBe('/usr/bin/chromium');
    expect(findBrowser(linux, has('/opt/bin/microsoft-edge') as never)).toBe('/opt/bin/microsoft-edge');
    expect(findBrowser(linux, has() as never)).toBeNull();
    const named = { ...linux, env: { ...linux.env, HEATMARGIN_BROWSER: '/x/browser' } };
    expect(findBrowser(named, has('/x/browser', '/usr/bin/chromium') as never)).toBe('/x/browser');
    expect(findBrowser(named, has('/usr/bin/chromium') as never)).toBeNull();
  });

  test('is looked for where Windows and macOS keep programs', () => {
    const all = () => true;
    expect(findBrowser({ platform: 'darwin', env: {}, isRoot: false }, all as never)).toMatch(
      /^\/Applications\/Chromium/,
    );
    const windows = { platform: 'win32', env: { PROGRAMFILES: 'C:/Programs' }, isRoot: false } as const;
    expect(findBrowser(windows, all as never)).toContain('C:/Programs/Google/Chrome');
  });

  test('keeps its sandbox, except for root, and software drawing is allowed by name', () => {
    const plain = browserArguments('http://127.0.0.1:1/start', '/profile', linux);
    expect(plain).toContain('--app=http://127.0.0.1:1/start');
    expect(plain).toContain('--user-data-dir=/profile');
    expect(plain).toContain('--enable-unsafe-swiftshader');
    expect(plain).not.toContain('--no-sandbox');
    expect(browserArguments('x', 'y', { ...linux, isRoot: true })).toContain('--no-sandbox');
  });

  test('needs a display on Linux only', () => {
    expect(hasDisplay(linux)).toBe(false);
    expect(hasDisplay({ ...linux, env: { WAYLAND_DISPLAY: 'w' } })).toBe(true);
    expect(hasDisplay({ ...linux, platform: 'win32' })).toBe(true);
  });

  test('that ends badly at once has opened no window', async () => {
    expect(await openWindow('/bin/false', 'http://127.0.0.1:1', '/tmp/none')).toBe(false);
    expect(await openWindow('/nonexistent/browser', 'http://127.0.0.1:1', '/tmp/none')).toBe(false);
    expect(await openWindow('/bin/true', 'http://127.0.0.1:1', '/tmp/none')).toBe(true);
  });
});

test('the program ends when the last window is gone for a while, and not over a reload', () => {
  vi.useFakeTimers();
  const end = vi.fn();
  const lifetime = createLifetime(3000, end);
  const leaveFirst = lifetime.enter();
  const leaveSecond = lifetime.enter();
  leaveFirst();
  leaveFirst();
  vi.advanceTimersByTime(10_000);
  expect(end).not.toHaveBeenCalled();
  leaveSecond();
  vi.advanceTimersByTime(2000);
  const leaveReloaded = lifetime.enter();
  vi.advanceTimersByTime(10_000);
  expect(end).not.toHaveBeenCalled();
  leaveReloaded();
  vi.advanceTimersByTime(3000);
  expect(end).toHaveBeenCalledTimes(1);
  vi.useRealTimers();
});
