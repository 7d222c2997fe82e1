// Applies each committed one-line breakage to a copy of the house and runs its test: every one must turn red.
// Usage: npm run break [-- part-of-a-name]
import { execFileSync, spawn } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';

const root = resolve(import.meta.dirname, '..');
const wanted = process.argv[2] ?? '';
const list = readdirSync(join(root, 'tests/breakages'))
  .filter((file) => file.endsWith('.json'))
  .sort()
  .flatMap((file) => JSON.parse(readFileSync(join(root, 'tests/breakages', file), 'utf8')))
  .filter((breakage) => breakage.name.includes(wanted));

function copyHouse() {
  const copy = mkdtempSync(join(tmpdir(), 'heatmargin-break-'));
  const files = execFileSync('git', ['ls-files', '-co', '--exclude-standard'], { cwd: root, encoding: 'utf8' })
    .split('\n')
    .filter(Boolean);
  for (const file of files) {
    mkdirSync(dirname(join(copy, file)), { recursive: true });
    cpSync(join(root, file), join(copy, file));
  }
  for (const shared of ['node_modules', 'dist']) symlinkSync(join(root, shared), join(copy, shared));
  return copy;
}

const runTest = (copy, test) =>
  new Promise((done) => {
    const child = spawn('npx', ['--no-install', 'vitest', 'run', test], {
      cwd: copy,
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let text = '';
    child.stdout.on('data', (data) => (text += data));
    child.stderr.on('data', (data) => (text += data));
    child.on('close', (code) => done({ code, text }));
  });

const KERNELS = 'main/heat/kernels/assembly/';
/** Kernels act as compiled: those of a copy are compiled anew when their source was changed. */
const compileKernels = (copy, file) => {
  if (file.startsWith(KERNELS))
    execFileSync('node', ['tests/support/kernels/build.mjs'], { cwd: copy, stdio: 'ignore' });
};

/** red: the test failed as it should; green: it missed the breakage; unclear: the breakage no longer fits the code. */
async function tryOne(copy, { file, find, replace, test }) {
  const path = join(copy, file);
  const before = readFileSync(path, 'utf8');
  if (before.split(find).length !== 2) return 'unclear: the line to break was not found once';
  writeFileSync(
    path,
    before.replace(find, () => replace),
  );
  compileKernels(copy, file);
  const { code, text } = await runTest(copy, test);
  writeFileSync(path, before);
  compileKernels(copy, file);
  if (code === 0) return 'green: the test missed it';
  return /FAIL|failed/.test(text) && !/No test files found/.test(text) ? 'red' : 'unclear: the test did not run';
}

const results = new Array(list.length);
let next = 0;
async function bench() {
  const copy = copyHouse();
  for (let index = next++; index < list.length; index = next++) {
    results[index] = await tryOne(copy, list[index]);
    console.log(`${results[index].padEnd(12)} ${list[index].name}  (${list[index].file} -> ${list[index].test})`);
  }
  rmSync(copy, { recursive: true, force: true });
}
await Promise.all([bench(), bench()]);
const red = results.filter((result) => result === 'red').length;
console.log(`\n${red} of ${list.length} breakages turned a test red`);
process.exit(red === list.length && list.length > 0 ? 0 : 1);
