import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createLabelField, lineEntersBox, placeNear } from '../../../../main/work-map/drawing/label-field.ts';
import { boxesOverlap, boxInside } from '../../../../main/work-map/paper.ts';

const frame = { x0: 0, y0: 0, x1: 500, y1: 400 };
const sizes = { width: fc.integer({ min: 8, max: 60 }), height: fc.integer({ min: 8, max: 30 }) };
const bodies = fc.array(
  fc.record({ x: fc.integer({ min: 0, max: 495 }), y: fc.integer({ min: 0, max: 395 }), ...sizes }),
  { minLength: 1, maxLength: 80 },
);

describe('placing labels', () => {
  it('never lets two labels overlap or leave the frame', () => {
    fc.assert(
      fc.property(bodies, (list) => {
        const field = createLabelField(frame);
        const taken = list.flatMap(({ x, y, width, height }) => {
          const body = { x0: x, y0: y, x1: x + 4, y1: y + 4 };
          const spot = placeNear(field, body, { width, height }, 420);
          if (!spot) return [];
          const box = { x0: spot.x, y0: spot.y, x1: spot.x + width, y1: spot.y + height };
          field.take(box);
          return [box];
        });
        expect(taken.every((box) => boxInside(box, frame))).toBe(true);
        for (const [i, a] of taken.entries())
          for (const b of taken.slice(i + 1)) expect(boxesOverlap(a, b)).toBe(false);
      }),
      { numRuns: 60, seed: 11 },
    );
  });

  it('stays beside its body while there is room, and off a body marked to be left visible', () => {
    const field = createLabelField(frame);
    const body = { x0: 200, y0: 200, x1: 210, y1: 210 };
    const first = placeNear(field, body, { width: 30, height: 13 }, 200);
    expect(first?.distance).toBe(2);
    expect(first?.x).toBeCloseTo(212, 6);
    field.avoid({ x0: 212, y0: 190, x1: 260, y1: 220 });
    const second = placeNear(field, body, { width: 30, height: 13 }, 200);
    expect(second && second.x + 30).toBeLessThanOrEqual(200);
  });

  it('goes no further than it may', () => {
    const field = createLabelField(frame);
    field.take({ x0: 150, y0: 150, x1: 260, y1: 260 });
    const body = { x0: 200, y0: 200, x1: 210, y1: 210 };
    expect(placeNear(field, body, { width: 30, height: 13 }, 10)).toBeNull();
    expect(placeNear(field, body, { width: 30, height: 13 }, 200)).toBeNull();
  });

  it('does not cross another leader line where it can help it', () => {
    const field = createLabelField(frame);
    field.takeLeader({ from: { x: 216, y: 100 }, to: { x: 216, y: 300 } });
    const spot = placeNear(field, { x0: 200, y0: 200, x1: 210, y1: 210 }, { width: 30, height: 13 }, 200);
    expect(spot && spot.x + 30).toBeLessThanOrEqual(216);
  });

  it('knows when a line enters a box', () => {
    const box = { x0: 10, y0: 10, x1: 20, y1: 20 };
    expect(lineEntersBox({ from: { x: 0, y: 0 }, to: { x: 30, y: 30 } }, box)).toBe(true);
    expect(lineEntersBox({ from: { x: 0, y: 0 }, to: { x: 9, y: 9 } }, box)).toBe(false);
    expect(lineEntersBox({ from: { x: 0, y: 15 }, to: { x: 30, y: 15 } }, box)).toBe(true);
    expect(lineEntersBox({ from: { x: 0, y: 25 }, to: { x: 30, y: 25 } }, box)).toBe(false);
  });
});
