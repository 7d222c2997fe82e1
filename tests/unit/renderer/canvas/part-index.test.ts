import { describe, expect, it } from 'vitest';
import { distanceToBody } from '../../../../renderer/canvas/picking/body-outline.ts';
import { partIndex } from '../../../../renderer/canvas/picking/part-index.ts';
import { boardWith, part } from './sample.ts';

/** Repeatable numbers between 0 and 1. */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1664525 + 1013904223) >>> 0;
    return state / 4294967296;
  };
}

describe('finding a part by place', () => {
  it('takes the smallest of the bodies that lie over each other', () => {
    const board = boardWith([part('U1', 50, 30, 20, 20), part('C1', 52, 31, 1, 0.5)]);
    const index = partIndex(board, 'top');
    expect(index.at({ x: 52, y: 31 }, 0.2)?.refdes).toBe('C1');
    expect(index.at({ x: 45, y: 31 }, 0.2)?.refdes).toBe('U1');
  });

  it('takes the nearest body within reach, and none beyond', () => {
    const index = partIndex(boardWith([part('C1', 10, 10, 2, 2), part('C2', 14, 10, 2, 2)]), 'top');
    expect(index.at({ x: 11.4, y: 10 }, 0.5)?.refdes).toBe('C1');
    expect(index.at({ x: 12.7, y: 10 }, 0.5)?.refdes).toBe('C2');
    expect(index.at({ x: 12, y: 10 }, 0.5)).toBeNull();
  });

  it('minds the turn of a body and the roundness of a can', () => {
    const long = part('J1', 50, 30, 20, 2, { turn: 45 });
    const round = part('C9', 20, 20, 10, 10);
    round.package.shape = 'round';
    const index = partIndex(boardWith([long, round]), 'top');
    expect(index.at({ x: 56, y: 36 }, 0)?.refdes).toBe('J1');
    expect(index.at({ x: 56, y: 30 }, 0)).toBeNull();
    expect(index.at({ x: 24.5, y: 24.5 }, 0)).toBeNull();
    expect(index.at({ x: 23, y: 23 }, 0)?.refdes).toBe('C9');
  });

  it('keeps the sides apart', () => {
    const board = boardWith([part('U1', 50, 30, 8, 8), part('U2', 50, 30, 8, 8, { side: 'bottom' })]);
    expect(partIndex(board, 'top').at({ x: 50, y: 30 }, 0)?.refdes).toBe('U1');
    expect(partIndex(board, 'bottom').at({ x: 50, y: 30 }, 0)?.refdes).toBe('U2');
  });

  it('agrees with looking at every one of 3,000 parts', () => {
    const next = numbers(5);
    const parts = Array.from({ length: 3000 }, (_, i) =>
      part(`P${i}`, next() * 100, next() * 60, 0.5 + next() * 3, 0.5 + next() * 2, { turn: next() * 360 }),
    );
    const index = partIndex(boardWith(parts), 'top');
    for (let i = 0; i < 300; i++) {
      const at = { x: next() * 100, y: next() * 60 };
      const area = (one: (typeof parts)[number]) => one.package.lengthMm * one.package.widthMm;
      const best = parts
        .map((one) => ({ one, off: distanceToBody(at, one) }))
        .filter(({ off }) => off <= 0.4)
        .sort((a, b) => a.off - b.off || area(a.one) - area(b.one))[0];
      expect(index.at(at, 0.4)?.refdes ?? null).toBe(best?.one.refdes ?? null);
    }
  });

  it('gathers what a marquee touches, also one turned against the bodies', () => {
    const index = partIndex(
      boardWith([part('A', 10, 10, 4, 4), part('B', 20, 10, 4, 4), part('C', 40, 40, 4, 4)]),
      'top',
    );
    const upright = [
      { x: 11.5, y: 0 },
      { x: 18.5, y: 0 },
      { x: 18.5, y: 20 },
      { x: 11.5, y: 20 },
    ];
    expect(index.touching(upright).map((one) => one.refdes)).toEqual(['A', 'B']);
    const diamond = [
      { x: 8, y: 18 },
      { x: 15, y: 11 },
      { x: 22, y: 18 },
      { x: 15, y: 25 },
    ];
    // Its box holds both, but its slanting edges pass A and B by.
    expect(index.touching(diamond).map((one) => one.refdes)).toEqual([]);
  });
});
