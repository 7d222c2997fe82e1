// npm start: builds what is missing or old, then opens the door that this machine has, and says which and why in one line.
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { join } from 'node:path';

const root = import.meta.dirname;
const SOURCES = ['main', 'renderer', 'shared-types', 'vite.config.ts', 'package.json'];
const BUILT = [
  'dist/main/local-app.js',
  'dist/main/electron-app.js',
  'dist/main/evaluation.worker.js',
  'dist/main/sheet.worker.js',
  'dist/preload/preload.cjs',
  'dist/renderer/index.html',
];

/** Time of the newest file below a path, ms. */
function newest(path) {
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  return readdirSync(path).reduce((latest, name) => Math.max(latest, newest(join(path, name))), 0);
}

/** Why the program must be built before it can start, or null. */
export function reasonToBuild(folder) {
  if (BUILT.some((file) => !existsSync(join(folder, file)))) return 'it was not built yet';
  const oldest = Math.min(...BUILT.map((file) => statSync(join(folder, file)).mtimeMs));
  return SOURCES.some((source) => newest(join(folder, source)) > oldest) ? 'its source is newer than the build' : null;
}

/** Path of Electron's binary when the package has fetched it; its own index.js would start a download. */
export function electronBinary(folder) {
  const electron = join(folder, 'node_modules/electron');
  const named = join(electron, 'path.txt');
  const binary = existsSync(named) ? join(electron, 'dist', readFileSync(named, 'utf8').trim()) : '';
  return binary && existsSync(binary) ? binary : null;
}

/** Which door opens, and the line that says so. */
export function chooseDoor({ binary, isRoot, hasDisplay, words }) {
  const local = (why) => ({ door: 'local', line: `Opening the local door (loopback, installed browser): ${why}.` });
  if (!binary) return local("Electron's binary is not installed; 'npx install-electron' fetches it");
  if (!hasDisplay) return local('there is no display for Electron');
  if (isRoot) return local('Electron does not start for root');
  if (words.some((word) => word.startsWith('-'))) return local('its options were given');
  return { door: 'electron', line: 'Opening Electron: its binary is installed.' };
}

function build() {
  const why = reasonToBuild(root);
  if (!why) return true;
  console.log(`Building Heatmargin: ${why}.`);
  const vite = join(root, 'node_modules/vite/bin/vite.js');
  return (
    spawnSync(process.execPath, [vite, 'build', '--app', '--logLevel', 'warn'], { cwd: root, stdio: 'inherit' })
      .status === 0
  );
}

function start() {
  if (!build()) process.exit(1);
  const words = process.argv.slice(2);
  const choice = chooseDoor({
    binary: electronBinary(root),
    isRoot: process.getuid?.() === 0,
    hasDisplay: process.platform !== 'linux' || Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY),
    words,
  });
  console.log(choice.line);
  const command =
    choice.door === 'electron'
      ? [electronBinary(root), root, ...words]
      : [process.execPath, join(root, 'dist/main/local-app.js'), ...words];
  const child = spawn(command[0], command.slice(1), { stdio: 'inherit' });
  // The door saves its tickets when it is told to end; this process waits for it.
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => child.kill(signal));
  child.on('exit', (code) => process.exit(code ?? 1));
}

if (process.argv[1] && realpathSync(process.argv[1]) === import.meta.filename) start();
