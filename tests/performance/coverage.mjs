// How often the 90 % bands of a calibration cover the truth: npm run bench:calibration [seeds]. Data are made on the 1 mm
// grid with terms, hand, biases and noise drawn from their priors, fitted on the 2 mm grid.
import { join, resolve } from 'node:path';
import { runnerImport } from 'vite';

const root = resolve(import.meta.dirname, '../..');
const load = async (path) => (await runnerImport(join(root, path), { logLevel: 'error' })).module;
const { smallBoard, smallPlan } = await load('tests/unit/main/heat/support.ts');
const { coverage, loggedPlan } = await load('tests/support/heat/calibration-truth.ts');

const seeds = Number(process.argv[2] ?? 100);
const board = smallBoard();
const plan = loggedPlan(smallPlan(board));
const table = new Map();
for (let seed = 1; seed <= seeds; seed++) {
  for (const [name, { covered, band, missed }] of Object.entries(coverage(board, plan, seed))) {
    const row = table.get(name) ?? { covered: 0, band: 0, squares: 0 };
    table.set(name, {
      covered: row.covered + (covered ? 1 : 0),
      band: row.band + band / seeds,
      squares: row.squares + (missed * missed) / seeds,
    });
  }
}
console.log(`${seeds} seeds; covered, mean half width of the band, root mean square of what it missed by`);
for (const [name, { covered, band, squares }] of table) {
  console.log(
    `${name.padEnd(26)} ${String(covered).padStart(4)} ${band.toFixed(3).padStart(8)} ${Math.sqrt(squares).toFixed(3).padStart(8)}`,
  );
}
