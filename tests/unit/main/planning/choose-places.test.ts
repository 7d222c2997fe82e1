import { expect, test } from 'vitest';
import { startCovariance } from '../../../../main/heat/uncertainty/narrowing.ts';
import { chooseGreedily } from '../../../../main/planning/choose-places.ts';
import { lossOfGreed } from '../../../support/heat/exhaustive-places.ts';
import { normals } from '../../../support/heat/random.ts';

const TERMS = 7;
const identity = Array.from({ length: TERMS * TERMS }, (_, at) => (at % (TERMS + 1) === 0 ? 1 : 0));
const start = startCovariance(identity, TERMS, 0);

/** Twelve places that read different mixtures of seven terms twice, and six figures to be made surer; K. */
function choice(seed: number) {
  const draw = normals(seed);
  const moves = (scale: number) => Array.from({ length: TERMS }, () => scale * draw());
  const readings = Array.from({ length: 12 }, () => ({ moves: [moves(8), moves(4)], biasK: 4, noiseK: 1 }));
  const wish = { targets: [moves(8), moves(8)], parts: Array.from({ length: 4 }, () => moves(6)) };
  return { start, readings, wish, given: [0] };
}

test('greedy choice loses little against the best set, every set tried', () => {
  const losses = Array.from({ length: 25 }, (_, seed) => lossOfGreed(choice(seed + 1), 3));
  expect(Math.min(...losses), 'no set is better than the best').toBeGreaterThanOrEqual(-1e-9);
  expect(losses.reduce((sum, loss) => sum + loss, 0) / losses.length).toBeLessThan(0.03);
  expect(Math.max(...losses)).toBeLessThan(0.05);
});

test('what is given comes first, nothing comes twice, and all places are enough', () => {
  const { readings, wish } = choice(3);
  const all = chooseGreedily(start, readings, wish, [5, 2], 99);
  expect(all.slice(0, 2)).toEqual([5, 2]);
  expect([...all].sort((a, b) => a - b)).toEqual(readings.map((_, index) => index));
});
