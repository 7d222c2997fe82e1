import fc from 'fast-check';
import { expect, test } from 'vitest';
import { guessColumns, likelyStart, samplesFrom } from '../../../../shared-types/rules/log-columns.ts';

const samples = (values: readonly number[], everyS = 1, fromS = 0) => ({
  atS: Float32Array.from(values, (_, row) => fromS + row * everyS),
  celsius: Float32Array.from(values),
});
const warm = samples([23, 90, 180, 231]);
const point = (name: string, refdes: string | null = null) => ({ id: name.toLowerCase(), name, refdes });

test.each([
  ['names', ['T W2 (°C)', 'T W1 (°C)'], ['w2', 'w1']],
  ['the part that it sits on', ['conn J4', 'left over'], ['w2', 'w1']],
  ['numbers, units left out', ['CH2 [F1]', 'CH1 [F1]'], ['w2', 'w1']],
  ['nothing that says more', ['left', 'right'], ['w1', 'w2']],
])('columns are guessed by %s', (_, names, expected) => {
  const columns = names.map((name) => ({ name, samples: warm }));
  expect(guessColumns(columns, [point('W1'), point('W2', 'J4')])).toEqual(expected);
});

test('a column that stayed cold is of no bead, and no bead is given twice', () => {
  const columns = [
    { name: 'W1 cold junction', samples: samples([23, 24, 25, 26]) },
    { name: 'W1', samples: warm },
    { name: 'W1 again', samples: warm },
  ];
  expect(guessColumns(columns, [point('W1')])).toEqual([null, 'w1', null]);
});

test('samples before the begin of the run are left out, the others counted from it', () => {
  expect(samplesFrom(warm, 2)).toEqual({ atS: new Float32Array([0, 1]), celsius: new Float32Array([180, 231]) });
  expect(samplesFrom(warm, 9).atS).toHaveLength(0);
});

/** A preheat, a kink when the gas comes, and cooling. */
const run = (row: number): number => {
  if (row < 190) return 23 + 130 * (1 - Math.exp(-row / 90));
  if (row < 270) return run(189) + 1.1 * (row - 189);
  return Math.max(30, run(269) - 1.4 * (row - 269));
};

test('the begin of a run is found by its shape, whatever the size, the room and the noise of the log', () => {
  const told = Array.from({ length: 360 }, (_, row) => run(row));
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 400 }),
      fc.double({ min: 0.8, max: 1.25, noNaN: true }),
      fc.integer({ min: 1, max: 5 }),
      fc.integer({ min: 0, max: 1000 }),
      (startS, size, everyS, seed) => {
        const noise = (row: number) => Math.sin(row * 12.9898 + seed) * 0.6;
        const rows = Math.ceil((startS + 360) / everyS);
        const read = Array.from({ length: rows }, (_, row) => {
          const at = row * everyS - startS;
          return 21 + size * ((at < 0 ? 23 : run(at)) - 23) + noise(row);
        });
        const found = likelyStart([{ read: samples(read, everyS), said: samples(told) }]);
        expect(Math.abs(found! - startS)).toBeLessThanOrEqual(6);
      },
    ),
    { numRuns: 60 },
  );
});

test('without a column that the model knows nothing is guessed', () => {
  expect(likelyStart([])).toBeNull();
});
