// How often the 90 % bands of a calibration cover the truth, on several boards and stations; on the last two
// nothing was tuned. Data are made on the 1 mm
// grid with terms, hand, biases and noise drawn from their priors.
// npm run bench:calibration [seeds [first seed [cases...]]]
import { join, resolve } from 'node:path';
import { runnerImport } from 'vite';

const root = resolve(import.meta.dirname, '../..');
const load = async (path) => (await runnerImport(join(root, path), { logLevel: 'error' })).module;
const { handCase, hoodCase, longCase, standCase } = await load('tests/support/heat/calibration-cases.ts');
const { honestyOf, missesOf } = await load('tests/support/heat/calibration-truth.ts');

const [seeds = 100, first = 1] = process.argv.slice(2, 4).map(Number);
const wanted = process.argv.slice(4);
const cases = [handCase(), hoodCase(), standCase(), longCase()].filter(
  ({ name }) => wanted.length === 0 || wanted.includes(name),
);

const LEAST = 85;
const MOST = 96;

for (const given of cases) {
  const misses = Array.from({ length: seeds }, (_, index) => missesOf(given, first + index));
  console.log(`\n${given.name}: seeds ${first} to ${first + seeds - 1}`);
  console.log('figure                     covered %  mean half width  mean square (1: right)');
  for (const [name, { covered, meanBand, meanSquare }] of honestyOf(misses)) {
    const percent = (100 * covered) / seeds;
    const verdict = percent < LEAST ? 'too narrow' : percent > MOST ? 'too wide' : '';
    const columns = [
      percent.toFixed(0).padStart(8),
      meanBand.toFixed(3).padStart(16),
      meanSquare.toFixed(2).padStart(12),
    ];
    console.log(`${name.padEnd(26)}${columns.join(' ')}   ${verdict}`);
  }
}
