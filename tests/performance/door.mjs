// The real local door on a shelf of its own, for what is measured through it. Needs `npm run build` first.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

export const DOOR_FILE = resolve(import.meta.dirname, '../../dist/main/local-app.js');

/** A door in a new folder. `close` ends it, waits until it has saved, and takes the folder away. Fails when the door ends by itself. */
export async function openDoor(name) {
  const folder = mkdtempSync(join(tmpdir(), `heatmargin-${name}-`));
  const shelf = join(folder, 'shelf');
  const places = ['--shelf', shelf, '--app-folder', join(folder, 'app')];
  const door = spawn(process.execPath, [DOOR_FILE, '--no-window', ...places], { stdio: ['ignore', 'pipe', 'inherit'] });
  const gone = new Promise((done) => door.once('exit', done));
  // A measurement that fails leaves no door behind.
  process.once('exit', () => door.kill('SIGTERM'));
  const close = async () => {
    door.kill('SIGTERM');
    await gone;
    rmSync(folder, { recursive: true, force: true });
  };
  try {
    return { address: await addressOf(door), folder, shelf, close };
  } catch (error) {
    await close();
    throw error;
  }
}

/** The first address that the door prints. */
function addressOf(door) {
  return new Promise((found, failed) => {
    let text = '';
    door.stdout.on('data', (data) => {
      text += data;
      const said = /http:\S+/.exec(text)?.[0];
      if (said) found(said);
    });
    door.once('exit', (code) => failed(new Error(`the door ended with ${code}: ${text}`)));
  });
}
