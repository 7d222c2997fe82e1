// Every outside board through the import, as a whole and in every sensible part, held against what outside readers say of its
// files: npm run bench:imports [-- board ...]. Prints a table, then every miss with its reason.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { runnerImport } from 'vite';
import { bundleFile } from './bundled.mjs';

const root = resolve(import.meta.dirname, '../..');
const boards = resolve(root, '../shared/boards');
const load = async (path) => (await runnerImport(join(root, path), { logLevel: 'error' })).module;
const wanted = process.argv.slice(2);

const CENTRE_MM = 0.05;
const TURN_DEGREES = 1;
const BOX_MM = 0.05;

if (!existsSync(boards)) {
  console.log('no outside boards here (../shared/boards): nothing to import');
  process.exit(0);
}
const { casesOf } = await load('tests/support/imports/cases.ts');
const { gatherTruth } = await load('tests/support/imports/gather-truth.ts');
const { judge } = await load('tests/support/imports/judge.ts');
const { missesOf } = await load('tests/support/imports/misses.ts');

const folder = mkdtempSync(join(tmpdir(), 'heatmargin-imports-'));
process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
const command = join(root, 'main/shells/command-line/import.ts');
const bundle = await bundleFile(`export { importCommand } from ${JSON.stringify(command)};`, folder);

function runImport(paths) {
  const output = join(folder, 'out.board.json');
  rmSync(output, { force: true });
  const child = join(import.meta.dirname, 'import-child.mjs');
  const run = spawnSync(process.execPath, [child, bundle, output, ...paths], { encoding: 'utf8', maxBuffer: 1 << 28 });
  if (run.status !== 0) return { failed: run.stderr.trim().split('\n').at(-1) };
  const told = JSON.parse(run.stdout);
  const { outcome } = told;
  if (outcome.kind !== 'done') return { ...told, failed: outcome.problem?.code ?? outcome.sentence };
  return { ...told, board: JSON.parse(readFileSync(output, 'utf8')), lines: outcome.lines };
}

const sorted = (values) => [...values].sort((a, b) => a - b);
const at = (values, share) => sorted(values)[Math.min(values.length - 1, Math.floor(values.length * share))];
const mm = (value) => (value === undefined ? '-' : value.toFixed(3));
const share = (right, of) => (of === 0 ? '-' : `${right}/${of}`);

function row({ board, what, layers }, { board: imported, lines, failed, seconds, peakMb }, truth) {
  const time = seconds === undefined ? '-' : seconds.toFixed(2);
  const memory = peakMb === undefined ? '-' : peakMb.toFixed(0);
  if (failed) return { cells: [board, what, `refused: ${failed}`, '', '', '', '', '', '', time, memory], misses: [] };
  const verdict = judge(imported, truth, layers);
  const centres = verdict.centres.map((one) => one.mm);
  const near = centres.filter((value) => value <= CENTRE_MM).length;
  const many = verdict.turns.filter(({ twoPads }) => !twoPads);
  const two = verdict.turns.filter(({ twoPads }) => twoPads);
  const right = (turns) => turns.filter(({ degrees }) => degrees <= TURN_DEGREES).length;
  const limits = { centreMm: CENTRE_MM, turnDegrees: TURN_DEGREES, boxMm: BOX_MM };
  return {
    cells: [
      board,
      what,
      `${verdict.top}/${verdict.bottom}`,
      verdict.truth,
      share(verdict.matched, verdict.top + verdict.bottom),
      verdict.sideOf === 0 ? '-' : `${((100 * verdict.sideRight) / verdict.sideOf).toFixed(1)}`,
      centres.length === 0
        ? '-'
        : `${mm(at(centres, 1))} ${mm(at(centres, 0.95))} ${((100 * near) / centres.length).toFixed(1)}`,
      `${share(right(many), many.length)} ${share(right(two), two.length)} +${verdict.alone}`,
      verdict.boxMm === null ? '-' : mm(verdict.boxMm),
      time,
      memory,
    ],
    misses: missesOf(verdict, imported, truth, limits, lines),
  };
}

const HEADINGS = [
  'board',
  'files',
  'top/bottom',
  'truth',
  'matched',
  'side %',
  'centre mm: max, p95, % <= 0.05',
  'turn <= 1: pins, two pads, alone',
  'box mm',
  's',
  'MB',
];

function table(rows) {
  const widths = HEADINGS.map((heading, column) =>
    Math.max(heading.length, ...rows.map((cells) => cells[column].length)),
  );
  return [HEADINGS, ...rows].map((cells) =>
    cells
      .map((cell, column) => cell.padEnd(widths[column]))
      .join('  ')
      .trimEnd(),
  );
}

const rows = [];
const notes = [];
for (const name of readdirSync(boards).sort()) {
  const path = join(boards, name);
  if (!statSync(path).isDirectory() || (wanted.length > 0 && !wanted.includes(name))) continue;
  const cases = casesOf(name, path);
  const shared = cases.find(({ what }) => what === 'whole folder');
  const whole = shared ? gatherTruth(shared.paths) : null;
  for (const one of cases) {
    const told = row(one, runImport(one.paths), whole ?? gatherTruth(one.paths));
    rows.push(told.cells);
    if (told.misses.length > 0) notes.push(`\n${one.board}, ${one.what}`, ...told.misses.map((miss) => `  ${miss}`));
  }
}
console.log(table(rows).join('\n'));
console.log(notes.join('\n'));
