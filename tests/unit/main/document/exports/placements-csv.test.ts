import fc from 'fast-check';
import { expect, test } from 'vitest';
import { placementsCsv } from '../../../../../main/document/exports/placements-csv.ts';
import { importBoard } from '../../../../../main/document/imports/import-board.ts';
import type { Part } from '../../../../../shared-types/board.ts';
import { boardWith, partNamed } from '../../../../support/boards.ts';

/** The parts of a board written and read again, back at the written origin. */
function back(parts: Part[]): Part[] {
  const result = importBoard([{ name: 'board.csv', bytes: placementsCsv(boardWith(parts)) }]);
  if (!result.ok) throw new Error(result.problem.code);
  const { board, report } = result.value;
  expect(
    report.notes.filter(({ code }) => /^(rows-not-read|columns-not-known|unit-guessed|turn-not-read|side-)/.test(code)),
  ).toEqual([]);
  return board.parts.map((part) => ({ ...part, x: part.x - report.shift.xMm, y: part.y - report.shift.yMm }));
}

const part = fc.record({
  refdes: fc.oneof(
    fc.stringMatching(/^[A-Z]{1,3}[1-9][0-9]{0,3}(_1)?$/),
    fc.constantFrom('U***', '-IC1', '=1+1', 'Q1,2', '@7', "'=x", 'A"B'),
  ),
  side: fc.constantFrom('top' as const, 'bottom' as const),
  /** On the board: a whole bottom left of 0 would read as negated. */
  x: fc.double({ min: 0, max: 500, noNaN: true }),
  y: fc.double({ min: -500, max: 500, noNaN: true }),
  turn: fc.double({ min: 0, max: 359.9, noNaN: true }),
  value: fc.constantFrom('100n', '+3V3', '-5V', '=HYPERLINK("x")', '10 µF, 25 V', '"quoted"', '', '@home'),
  fitted: fc.boolean(),
});

test('what is written comes back: side, fitted, value; centre and turn to 0.001', () => {
  fc.assert(
    fc.property(fc.uniqueArray(part, { minLength: 2, maxLength: 30, selector: ({ refdes }) => refdes }), (given) => {
      const parts = given.map(({ refdes, ...fields }) => partNamed(refdes, fields));
      const known = new Map(back(parts).map((one) => [one.refdes, one]));
      expect(known.size).toBe(parts.length);
      for (const one of parts) {
        const other = known.get(one.refdes);
        expect(other, one.refdes).toMatchObject({ side: one.side, fitted: one.fitted, value: one.value });
        expect(other?.package).toMatchObject({ name: one.package.name, heightMm: one.package.heightMm });
        expect(Math.abs((other?.x ?? 0) - one.x)).toBeLessThan(0.001);
        expect(Math.abs((other?.y ?? 0) - one.y)).toBeLessThan(0.001);
        expect(Math.abs((other?.turn ?? 0) - one.turn)).toBeLessThan(0.001);
      }
    }),
    { numRuns: 100, seed: 4 },
  );
});
