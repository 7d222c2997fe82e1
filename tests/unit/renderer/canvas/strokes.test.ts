import { describe, expect, it } from 'vitest';
import { closed, dashes, measured, wavy, withGaps } from '../../../../renderer/canvas/drawing/strokes.ts';

const square = [0, 0, 10, 0, 10, 10, 0, 10];

describe('measured lines', () => {
  it('find places and directions along them', () => {
    const line = measured(closed(square));
    expect(line.length).toBe(40);
    expect(line.at(15)).toEqual({ x: 10, y: 5, dx: 0, dy: 1 });
    expect(line.at(99)).toMatchObject({ x: 0, y: 0 });
  });

  it('give pieces with the corners inside them', () => {
    expect(measured(square).piece(5, 25)).toEqual([5, 0, 10, 0, 10, 10, 5, 10]);
  });
});

describe('dashes', () => {
  it('cover the line in the proportion asked for and go round corners', () => {
    const pieces = dashes(closed(square), 6, 4);
    expect(pieces).toHaveLength(4);
    expect(pieces.reduce((sum, piece) => sum + measured(piece).length, 0)).toBeCloseTo(24, 9);
    expect(pieces[1]).toEqual([10, 0, 10, 6]);
  });
});

describe('gaps', () => {
  it('leave what is outside them', () => {
    expect(
      withGaps(measured([0, 0, 100, 0]), [
        [0, 10],
        [40, 60],
      ]),
    ).toEqual([
      [10, 0, 40, 0],
      [60, 0, 100, 0],
    ]);
  });
});

describe('waves', () => {
  it('swing to both sides of the outline by the amplitude and close in whole waves', () => {
    const wave = wavy([0, 0, 60, 0, 60, 60, 0, 60], 2, 6);
    const above = wave.filter((_, i) => i % 2 === 1 && wave[i - 1] > 5 && wave[i - 1] < 55 && wave[i] < 10);
    expect(Math.min(...above)).toBeCloseTo(-1.73, 1);
    expect(Math.max(...above)).toBeCloseTo(1.73, 1);
    expect((wave.length / 2) % 6).toBe(0);
  });
});
