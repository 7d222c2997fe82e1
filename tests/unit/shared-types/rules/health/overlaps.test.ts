import fc from 'fast-check';
import { intersection } from 'polyclip-ts';
import { expect, it } from 'vitest';
import { flattenContour, rectangleCorners } from '../../../../../shared-types/geometry.ts';
import { type FlatBody, flatBody, overlapDepth } from '../../../../../shared-types/rules/health/overlap-depth.ts';
import { MOST_PAIRS, overlapsOf } from '../../../../../shared-types/rules/health/overlaps.ts';
import { partNamed } from '../../../../support/boards.ts';

/** The body as a polygon of the general-purpose clipping library; a disc by chords 0.01 % inside it. */
function ringOf(body: FlatBody): [number, number][][] {
  if (body.shape === 'rectangle') return [rectangleCorners(body).map(({ x, y }) => [x, y])];
  const radius = body.lengthMm / 2;
  const half = { y: body.y, bulge: 1 };
  const disc = flattenContour(
    [
      { ...half, x: body.x - radius },
      { ...half, x: body.x + radius },
    ],
    radius * 1e-4,
  );
  return [disc.map(({ x, y }) => [x, y])];
}

function sharedArea(a: FlatBody, b: FlatBody): number {
  return intersection(ringOf(a), ringOf(b))
    .flat()
    .reduce((sum, ring) => {
      const twice = ring.slice(1).reduce((area, [x, y], index) => area + ring[index][0] * y - x * ring[index][1], 0);
      return sum + Math.abs(twice) / 2;
    }, 0);
}

const body = fc.record({
  shape: fc.constantFrom('rectangle' as const, 'round' as const),
  x: fc.integer({ min: -600, max: 600 }).map((value) => value / 100),
  y: fc.integer({ min: -600, max: 600 }).map((value) => value / 100),
  lengthMm: fc.integer({ min: 40, max: 900 }).map((value) => value / 100),
  widthMm: fc.integer({ min: 20, max: 500 }).map((value) => value / 100),
  turnDeg: fc.constantFrom(0, 90, 45, 22.5, -90, 137, 359.5),
});
const moved = (one: FlatBody, by: number, degrees: number): FlatBody => ({
  ...one,
  x: one.x + by * Math.cos((degrees * Math.PI) / 180),
  y: one.y + by * Math.sin((degrees * Math.PI) / 180),
});
const directions = Array.from({ length: 72 }, (_, index) => index * 5);

it('says that bodies overlap where a clipping library finds an area common to both', () => {
  fc.assert(
    fc.property(body, body, (a, b) => {
      const depth = overlapDepth(a, b);
      // Chords lie a little inside the disc: touching ones are left to the next test.
      if (depth > 0.01) expect(sharedArea(a, b)).toBeGreaterThan(0);
      if (depth === 0) expect(sharedArea(a, b)).toBeLessThan(1e-9);
      expect(overlapDepth(b, a)).toBeCloseTo(depth, 9);
    }),
    { numRuns: 300, seed: 11 },
  );
});

it('gives the shortest way apart: a little less leaves an area in every direction, that way itself leaves none in one', () => {
  fc.assert(
    fc.property(body, body, (a, b) => {
      const depth = overlapDepth(a, b);
      if (depth < 0.05) return;
      for (const degrees of directions) expect(sharedArea(moved(a, depth * 0.97, degrees), b)).toBeGreaterThan(0);
      // Among directions 5 degrees apart one leads out within 1 / cos(2.5 degrees) of the way of a flat edge; rounded corners need less.
      const lengths = directions.map((degrees) => sharedArea(moved(a, depth * 1.06 + 0.02, degrees), b));
      expect(Math.min(...lengths)).toBeLessThan(0.05);
    }),
    { numRuns: 20, seed: 12 },
  );
});

it('knows plain cases by hand', () => {
  const square = { shape: 'rectangle' as const, x: 0, y: 0, lengthMm: 2, widthMm: 2, turnDeg: 0 };
  expect(overlapDepth(square, { ...square, x: 1.5 })).toBeCloseTo(0.5, 12);
  expect(overlapDepth(square, { ...square, x: 2 })).toBe(0);
  // A square on its corner reaches sqrt 2 from its centre.
  expect(overlapDepth(square, { ...square, x: 2, turnDeg: 45 })).toBeCloseTo(Math.SQRT2 - 1, 12);
  expect(overlapDepth(square, { ...square, shape: 'round', x: 1.5 })).toBeCloseTo(0.5, 12);
  expect(overlapDepth(square, { ...square, shape: 'round', x: 1.6, y: 1.6 })).toBeCloseTo(1 - 0.6 * Math.SQRT2, 12);
  expect(overlapDepth({ ...square, shape: 'round' }, { ...square, shape: 'round', x: 1, y: 1 })).toBeCloseTo(
    2 - Math.SQRT2,
    12,
  );
});

const place = fc.record({
  body,
  side: fc.constantFrom('top' as const, 'bottom' as const),
});

it('finds the pairs that trying all of them finds, through its index', () => {
  fc.assert(
    fc.property(fc.array(place, { minLength: 2, maxLength: 60 }), (places) => {
      const parts = places.map(({ body: { shape, x, y, lengthMm, widthMm, turnDeg }, side }, index) =>
        partNamed(`U${index}`, {
          side,
          x: x * 8,
          y: y * 8,
          turn: turnDeg,
          package: { name: '', shape, lengthMm, widthMm, heightMm: 1 },
        }),
      );
      const all = parts.flatMap((first, index) =>
        parts
          .slice(index + 1)
          .filter((second) => first.side === second.side && overlapDepth(flatBody(first), flatBody(second)) > 0.1)
          .map((second) => `${first.refdes} ${second.refdes}`),
      );
      const found = overlapsOf(parts, 0.1).map(({ first, second }) => `${first.refdes} ${second.refdes}`);
      expect(found.toSorted()).toEqual(all.toSorted());
    }),
    { numRuns: 100, seed: 13 },
  );
});

it('ends soon on a heap of 20,000 parts on one spot', () => {
  const heap = Array.from({ length: 20_000 }, (_, index) => partNamed(`R${index}`));
  const begun = performance.now();
  expect(overlapsOf(heap, 0.1)).toHaveLength(MOST_PAIRS);
  expect(performance.now() - begun).toBeLessThan(3000);
});
