import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { randomBoard } from '../../../sample-boards/make/random-board.ts';
import { boardSchema } from '../../../shared-types/board.ts';
import { classById, isClassId } from '../../../shared-types/library/classes.ts';
import { boardFault } from '../../../shared-types/rules/board-faults.ts';
import { crowdedPairs, misplaced } from './boards.ts';

describe('random boards', () => {
  it('are the same for the same seed, others for another', () => {
    expect(randomBoard(42, 150)).toEqual(randomBoard(42, 150));
    expect(randomBoard(42, 150)).not.toEqual(randomBoard(43, 150));
  });

  it('have the wanted number of parts, an array to exchange, and nothing that overlaps or lies off the board', () => {
    const sizes = fc.oneof(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 13, max: 220 }));
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2 ** 31 }), sizes, (seed, count) => {
        const board = randomBoard(seed, count);
        expect(boardSchema.parse(board).parts).toHaveLength(count);
        expect(boardFault(board)).toBeNull();
        expect(classById(board.parts[0].class).arrayPart).toBe(true);
        expect(board.parts.every((part) => isClassId(part.class))).toBe(true);
        expect(crowdedPairs(board, 0.2)).toEqual([]);
        const { overEdge, inCutout } = misplaced(board);
        expect(inCutout).toEqual([]);
        expect(overEdge.every((part) => part.refdes.startsWith('J'))).toBe(true);
      }),
      { numRuns: 25 },
    );
  });

  it('keep off their mounting holes where parts are crowded', () => {
    for (let seed = 1; seed <= 12; seed++)
      expect(misplaced(randomBoard(seed, 220)).inCutout, `seed ${seed}`).toEqual([]);
  });

  it('use both sides and put bypass parts under the array', () => {
    const board = randomBoard(5, 200);
    const target = board.parts[0];
    const below = board.parts.filter(
      (part) =>
        part.side === 'bottom' &&
        part.class === 'chip-capacitor' &&
        Math.max(Math.abs(part.x - target.x), Math.abs(part.y - target.y)) < target.package.lengthMm / 2,
    );
    expect(below.length).toBeGreaterThan(8);
  });

  it('grow to thousands of parts', () => {
    const board = randomBoard(1, 3000);
    expect(board.parts).toHaveLength(3000);
    expect(new Set(board.parts.map((part) => part.refdes)).size).toBe(3000);
  });
});
