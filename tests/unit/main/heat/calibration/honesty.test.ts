import { expect, test } from 'vitest';
import { handCase } from '../../../../support/heat/calibration-cases.ts';
import { honestyOf, missesOf } from '../../../../support/heat/calibration-truth.ts';

const SEEDS = 10;
const honesty = honestyOf(Array.from({ length: SEEDS }, (_, index) => missesOf(handCase(), index + 1)));
const rows = [...honesty.values()];
const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / values.length;

// Thirteen figures of ten logs, many of them kin: they are worth some sixty that are free of each other.
const FREE = 60;

test('the 90 % bands of ten calibrations cover the truth, and are no wider than they must be', () => {
  const share = mean(rows.map(({ covered, seeds }) => covered / seeds));
  const sigma = Math.sqrt((0.9 * 0.1) / FREE);
  expect(share).toBeGreaterThan(0.9 - 2 * sigma);
  expect(share).toBeLessThan(0.9 + 2 * sigma);
});

test('what they miss is as large as they say: the mean square in deviations is 1', () => {
  const square = mean(rows.map(({ meanSquare }) => meanSquare));
  const sigma = Math.sqrt(2 / FREE);
  expect(square).toBeGreaterThan(1 - 2 * sigma);
  expect(square).toBeLessThan(1 + 2 * sigma);
  for (const [name, { meanSquare }] of honesty) expect(meanSquare, name).toBeLessThan(3);
});
