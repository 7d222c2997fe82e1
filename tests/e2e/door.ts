import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test as base } from '@playwright/test';

/** A running local door with a shelf of its own. `kill` ends it as a crash would; `start` opens it again on the same folders. */
export type Door = {
  address(): string;
  shelf: string;
  start(): Promise<void>;
  kill(): Promise<void>;
  stop(): Promise<void>;
};

async function startDoor(folder: string): Promise<{ child: ChildProcess; address: string }> {
  const words = [
    'dist/main/local-app.js',
    '--no-window',
    '--shelf',
    join(folder, 'shelf'),
    '--app-folder',
    join(folder, 'app'),
  ];
  const child = spawn(process.execPath, words, { stdio: ['ignore', 'pipe', 'inherit'] });
  const address = await new Promise<string>((resolve, reject) => {
    let text = '';
    child.stdout?.on('data', (data) => {
      text += String(data);
      const found = /http:\/\/127\.0\.0\.1:\d+\S*/.exec(text);
      if (found) resolve(found[0]);
    });
    child.on('exit', (code) => reject(new Error(`the door closed with ${code}: ${text}`)));
  });
  return { child, address };
}

const ended = (child: ChildProcess): Promise<void> =>
  new Promise((resolve) =>
    child.exitCode === null && child.signalCode === null ? child.once('exit', () => resolve()) : resolve(),
  );

export const test = base.extend<{ door: Door }>({
  // biome-ignore lint/correctness/noEmptyPattern: the form that Playwright asks for
  door: async ({}, use) => {
    const folder = mkdtempSync(join(tmpdir(), 'heatmargin-e2e-'));
    let running = await startDoor(folder);
    const end = async (signal: NodeJS.Signals): Promise<void> => {
      running.child.kill(signal);
      await ended(running.child);
    };
    await use({
      address: () => running.address,
      shelf: join(folder, 'shelf'),
      start: async () => {
        running = await startDoor(folder);
      },
      kill: () => end('SIGKILL'),
      stop: () => end('SIGTERM'),
    });
    await end('SIGTERM');
    rmSync(folder, { recursive: true, force: true });
  },
});
export { expect } from '@playwright/test';
