// Measures the way of a ticket: npm run bench. Prints medians; compares in one run; never fails for wall time.
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { runnerImport } from 'vite';
import { dragFigures } from './drag.mjs';

const root = resolve(import.meta.dirname, '../..');
globalThis.__VERSION__ = 'bench';
const load = async (path) => (await runnerImport(join(root, path), { logLevel: 'error' })).module;
const { evaluate } = await load('main/heat/evaluate.ts');
const { assess } = await load('main/planning/assess.ts');
const { renderWorkMap } = await load('main/work-map/render.ts');
const { loadSheetFonts } = await load('main/shells/fonts.ts');

const median = (values) => values.sort((a, b) => a - b)[Math.floor(values.length / 2)];

async function timed(times, work) {
  const taken = [];
  let result;
  for (let round = 0; round < times; round++) {
    const started = performance.now();
    result = await work();
    taken.push(performance.now() - started);
  }
  return { ms: median(taken), result };
}

const samples = readdirSync(join(root, 'sample-boards')).flatMap((name) => /^(.+)\.board\.json$/.exec(name)?.[1] ?? []);
const read = (name) => JSON.parse(readFileSync(join(root, 'sample-boards', name), 'utf8'));
const fonts = loadSheetFonts();

for (const name of samples) {
  const board = read(`${name}.board.json`);
  const plan = read(`${name}.plan.json`);
  const coarse = await timed(5, () => evaluate(board, plan, { phase: 'coarse' }));
  const fine = await timed(3, () => evaluate(board, plan, { phase: 'fine' }));
  const assessed = await timed(5, () => assess(board, plan, fine.result.value));
  const input = {
    board,
    plan,
    assessment: assessed.result,
    fonts,
    date: '2026-01-01T00:00:00Z',
    programVersion: 'bench',
  };
  const sheet = await timed(3, () => renderWorkMap(input));
  const grid = fine.result.value.grid;
  console.log(
    `${name}: ${board.parts.length} parts, ${grid.columns} x ${grid.rows} cells, ${plan.heatRuns.length} heat runs; ` +
      `coarse ${coarse.ms.toFixed(0)} ms, fine ${fine.ms.toFixed(0)} ms, assess ${assessed.ms.toFixed(0)} ms, ` +
      `sheet ${sheet.ms.toFixed(0)} ms, ${sheet.result.pages} pages, ${(sheet.result.bytes.length / 1024).toFixed(0)} kB`,
  );
}
console.log(await dragFigures());
