import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

type Surroundings = { platform: NodeJS.Platform; env: NodeJS.ProcessEnv; isRoot: boolean };
const here = (): Surroundings => ({
  platform: process.platform,
  env: process.env,
  isRoot: process.getuid?.() === 0,
});

const LINUX_NAMES = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome', 'microsoft-edge'];
const MAC_APPS = [
  'Chromium.app/Contents/MacOS/Chromium',
  'Google Chrome.app/Contents/MacOS/Google Chrome',
  'Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
];
const WINDOWS_PATHS = [
  'Google/Chrome/Application/chrome.exe',
  'Chromium/Application/chrome.exe',
  'Microsoft/Edge/Application/msedge.exe',
];

/** Path of an installed Chromium, Chrome or Edge; null: none found. HEATMARGIN_BROWSER names one outright. */
export function findBrowser({ platform, env } = here(), exists = existsSync): string | null {
  if (env.HEATMARGIN_BROWSER) return exists(env.HEATMARGIN_BROWSER) ? env.HEATMARGIN_BROWSER : null;
  return candidates(platform, env).find((path) => exists(path)) ?? null;
}

function candidates(platform: NodeJS.Platform, env: NodeJS.ProcessEnv): string[] {
  if (platform === 'darwin') return MAC_APPS.map((app) => join('/Applications', app));
  if (platform === 'win32') {
    const roots = [env.PROGRAMFILES, env['PROGRAMFILES(X86)'], env.LOCALAPPDATA].filter((root) => root !== undefined);
    return roots.flatMap((root) => WINDOWS_PATHS.map((path) => join(root, path)));
  }
  const folders = (env.PATH ?? '').split(delimiter).filter(Boolean);
  return LINUX_NAMES.flatMap((name) => folders.map((folder) => join(folder, name)));
}

/** Whether a window can be shown at all: on Linux it takes a display. */
export const hasDisplay = ({ platform, env } = here()): boolean =>
  platform !== 'linux' || Boolean(env.DISPLAY || env.WAYLAND_DISPLAY);

/**
 * Flags of the app window. Software WebGL must be allowed by name where there is no graphics card, or the canvas falls back;
 * the sandbox stays on unless the user is root, for whom Chromium refuses to start with it.
 */
export function browserArguments(address: string, profileFolder: string, { isRoot } = here()): string[] {
  return [
    `--app=${address}`,
    `--user-data-dir=${profileFolder}`,
    '--no-first-run',
    '--no-default-browser-check',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--disable-quic',
    '--password-store=basic',
    '--enable-unsafe-swiftshader',
    ...(isRoot ? ['--no-sandbox', '--test-type'] : []),
  ];
}

/** Opens the app window. Resolves to false when the browser ends badly within a few seconds. */
export function openWindow(browser: string, address: string, profileFolder: string): Promise<boolean> {
  return new Promise((resolve) => {
    const child = spawn(browser, browserArguments(address, profileFolder), { stdio: 'ignore' });
    const started = setTimeout(() => resolve(true), 5000);
    const ended = (good: boolean) => {
      clearTimeout(started);
      resolve(good);
    };
    child.once('error', () => ended(false));
    child.once('exit', (code) => ended(code === 0));
    child.unref();
  });
}
