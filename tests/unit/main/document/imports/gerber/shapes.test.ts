import fc from 'fast-check';
import { expect, test } from 'vitest';
import { hullOfDiscs } from '../../../../../../main/document/imports/gerber/shapes.ts';
import { boxOfDiscs, type Disc, turnPoint } from '../../../../../../main/document/imports/plane.ts';

const disc = fc.record({
  x: fc.double({ min: -50, max: 50, noNaN: true }),
  y: fc.double({ min: -50, max: 50, noNaN: true }),
  r: fc.constantFrom(0, 0, 0.25, 1),
});

test('the hull has the same extents as all discs, seen from any direction', () => {
  fc.assert(
    fc.property(fc.array(disc, { minLength: 1, maxLength: 40 }), fc.integer({ min: 0, max: 359 }), (discs, degrees) => {
      const turned = (list: readonly Disc[]) =>
        boxOfDiscs(list.map((one) => ({ ...turnPoint(one, degrees), r: one.r })));
      const [all, hull] = [turned(discs), turned(hullOfDiscs(discs))];
      for (const key of ['minX', 'minY', 'maxX', 'maxY'] as const) expect(hull[key]).toBeCloseTo(all[key], 6);
    }),
    { numRuns: 300, seed: 11 },
  );
});
