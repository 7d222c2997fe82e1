import { describe, expect, it } from 'vitest';
import { createView, fittingScale } from '../../../../main/work-map/drawing/view.ts';

const frame = { x0: 0, y0: 0, x1: 200, y1: 100 };
/** A point is 1/72 inch (ISO 32000-1, 8.3.2.3), an inch 25.4 mm. */
const PER_MM = 72 / 25.4;

describe('how a board lies on the page', () => {
  it('draws 10 mm of board as 25 mm of paper at 2.5 to 1', () => {
    const view = createView('top', 0, 2.5, frame, { x: 50, y: 40 });
    const a = view.toPage({ x: 50, y: 40 });
    const b = view.toPage({ x: 60, y: 40 });
    expect(a).toEqual({ x: 100, y: 50 });
    expect(b.x - a.x).toBeCloseTo(25 * PER_MM, 9);
    expect(b.y).toBeCloseTo(a.y, 9);
  });

  it('has y upwards on the board and downwards on the page', () => {
    const view = createView('top', 0, 1, frame, { x: 0, y: 0 });
    expect(view.toPage({ x: 0, y: 1 }).y).toBeCloseTo(50 - PER_MM, 9);
  });

  it('mirrors the bottom once: what is right from above is left from below', () => {
    const view = createView('bottom', 0, 1, frame, { x: 0, y: 0 });
    expect(view.toPage({ x: 1, y: 0 }).x).toBeCloseTo(100 - PER_MM, 9);
    expect(view.toPage({ x: 0, y: 1 }).y).toBeCloseTo(50 - PER_MM, 9);
  });

  it('turns counter-clockwise as seen, on both sides', () => {
    const top = createView('top', 90, 1, frame, { x: 0, y: 0 }).toPage({ x: 1, y: 0 });
    expect(top.x).toBeCloseTo(100, 9);
    expect(top.y).toBeCloseTo(50 - PER_MM, 9);
    const bottom = createView('bottom', 90, 1, frame, { x: 0, y: 0 }).toPage({ x: 1, y: 0 });
    expect(bottom.x).toBeCloseTo(100, 9);
    expect(bottom.y).toBeCloseTo(50 + PER_MM, 9);
  });

  it('takes the largest scale that fits, and the smallest when none does', () => {
    const space = { width: 20 * PER_MM, height: 20 * PER_MM };
    expect(fittingScale([3, 2, 1], { widthMm: 10, heightMm: 5 }, space)).toBe(2);
    expect(fittingScale([3, 2, 1], { widthMm: 100, heightMm: 5 }, space)).toBe(1);
  });
});
