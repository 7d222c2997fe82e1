import { expect, test } from 'vitest';
import { suspectPairs } from '../../../../../shared-types/rules/photo-suspects.ts';
import { noisyPairs, randomFrom } from './made-up.ts';

const moved = (pairs: ReturnType<typeof noisyPairs>, index: number, byMm: number) =>
  pairs.map((pair, place) =>
    place === index ? { ...pair, board: { x: pair.board.x + byMm, y: pair.board.y } } : pair,
  );

test('honest pairs are hardly ever accused', () => {
  for (const [count, kind] of [
    [8, 'projective'],
    [6, 'affine'],
    [6, 'similarity'],
  ] as const) {
    const random = randomFrom(count);
    let accused = 0;
    for (let run = 0; run < 60; run++)
      if (suspectPairs(noisyPairs(count, 0.1, random, [0.05, 0, 0, 0, -0.05, 60, 0, 0, 1]), 'top', kind).length > 0)
        accused++;
    expect(accused).toBeLessThanOrEqual(3);
  }
});

test('one pair clicked 3 mm off among ten is pointed out, and no other', () => {
  const random = randomFrom(17);
  let found = 0;
  for (let run = 0; run < 30; run++) {
    const [suspect, ...more] = suspectPairs(moved(noisyPairs(10, 0.1, random), 4, 3), 'top', 'projective');
    if (suspect?.index !== 4 || more.length > 0) continue;
    found++;
    expect(suspect.mm).toBeGreaterThan(1);
    expect(suspect.times).toBeGreaterThan(4);
  }
  expect(found).toBeGreaterThanOrEqual(28);
});

test('two parts taken for each other are both pointed out', () => {
  const random = randomFrom(23);
  let found = 0;
  for (let run = 0; run < 20; run++) {
    const pairs = noisyPairs(10, 0.1, random);
    const swapped = pairs.map((pair, index) => ({ ...pair, board: pairs[[0, 3, 2, 1][index] ?? index].board }));
    if (
      suspectPairs(swapped, 'top', 'projective')
        .map(({ index }) => index)
        .join() === '1,3'
    )
      found++;
  }
  expect(found).toBeGreaterThanOrEqual(18);
});

test('with one pair to spare nobody can tell which is bad, so none is accused', () => {
  expect(suspectPairs(moved(noisyPairs(5, 0.1, randomFrom(1)), 2, 9), 'top', 'projective')).toEqual([]);
});

test('an exact fit accuses nobody for the last hundredth of a millimetre', () => {
  expect(suspectPairs(moved(noisyPairs(9, 0, randomFrom(2)), 2, 0.01), 'top', 'projective')).toEqual([]);
  expect(suspectPairs(moved(noisyPairs(9, 0, randomFrom(2)), 2, 1), 'top', 'projective')).toMatchObject([{ index: 2 }]);
});
