/**
 * Writes the expected figures of the cases in this folder with the independent solver
 * (tests/support/heat/monolithic.mjs) on the 2 mm grid: `expected` with steps of 1 s, `expectedFine` with 0.25 s.
 * Run it from the root of the repository: node tests/reference/cases/make-expectations.mjs
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { solveCase } from '../../support/heat/monolithic.mjs';

const folder = new URL('.', import.meta.url);
const round = (value) => Math.round(value * 1000) / 1000;
const rounded = (figures) =>
  figures && Object.fromEntries(Object.entries(figures).map(([key, value]) => [key, round(value)]));

function expectation(given, stepS) {
  const { nozzle, parts } = solveCase(given, { cellMm: 2, stepS });
  return {
    nozzle: rounded(nozzle),
    parts: Object.fromEntries(Object.entries(parts).map(([ref, figures]) => [ref, rounded(figures)])),
  };
}

for (const name of readdirSync(folder).filter((file) => file.endsWith('.json'))) {
  const path = new URL(name, folder);
  const given = JSON.parse(readFileSync(path, 'utf8'));
  given.expected = expectation(given, 1);
  given.expectedFine = expectation(given, 0.25);
  writeFileSync(path, `${JSON.stringify(given, null, 1)}\n`);
  process.stdout.write(`${name}\n`);
}
