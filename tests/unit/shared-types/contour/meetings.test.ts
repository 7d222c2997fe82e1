import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  areaOf,
  boxOfContour,
  distanceToEdge,
  type Edge,
  edgeBetween,
  edgesOf,
  insideContour,
  lengthOf,
  middleOf,
  offCurve,
} from '../../../../shared-types/contour/edges.ts';
import { meetingsOf } from '../../../../shared-types/contour/meetings.ts';
import { boxOf, flattenContour, insidePolygon, signedArea } from '../../../../shared-types/geometry.ts';
import { selfMeetings } from '../../../../shared-types/rules/contour-faults.ts';
import { crossingsByForce, tameContour, wildContour } from './random-contours.ts';

test('crossings of wild contours are those that brute force finds on chords', () => {
  fc.assert(
    fc.property(fc.oneof(wildContour, tameContour), (contour) => {
      const exact = [...new Set(selfMeetings(contour, 999, true).map(({ edges }) => edges.join(' ')))].sort();
      const forced = crossingsByForce(contour, 1e-3);
      // What chords of a micrometre cannot settle is asked again with finer ones.
      if (exact.join() !== forced.join()) expect(exact).toEqual(crossingsByForce(contour, 1e-6));
      else expect(exact).toEqual(forced);
    }),
    { numRuns: 200 },
  );
});

test('touching, lying on one another and tangents are meetings, but no crossings', () => {
  const base = edgeBetween({ x: 0, y: 0 }, { x: 10, y: 0 }, 0);
  const touches = (edge: Edge) => meetingsOf(base, edge).map(({ at, crosses }) => [at.x, at.y, crosses]);
  expect(touches(edgeBetween({ x: 4, y: 0 }, { x: 4, y: 5 }, 0))).toEqual([[4, 0, false]]);
  expect(touches(edgeBetween({ x: 6, y: 0 }, { x: 14, y: 0 }, 0)).every(([, , crosses]) => !crosses)).toBe(true);
  expect(touches(edgeBetween({ x: 6, y: 0 }, { x: 14, y: 0 }, 0)).length).toBeGreaterThan(0);
  // A half circle of radius 2 whose lowest point is at (5, 0).
  const tangent = touches(edgeBetween({ x: 3, y: 2 }, { x: 7, y: 2 }, 1));
  expect(tangent).toHaveLength(1);
  expect(tangent[0][0]).toBeCloseTo(5, 9);
  expect(tangent[0][2]).toBe(false);
  expect(meetingsOf(base, edgeBetween({ x: 3, y: 2 }, { x: 7, y: 2 }, 0.9999))).toEqual([]);
  expect(meetingsOf(base, edgeBetween({ x: 3, y: 1.9999 }, { x: 7, y: 1.9999 }, 1))).toHaveLength(2);
});

test('a rounded rectangle, whose arcs leave its edges along them, does not meet itself', () => {
  const quarter = Math.tan(Math.PI / 8);
  for (const radius of [0.001, 0.5, 3, 19.999]) {
    const contour = [
      { x: radius, y: 0 },
      { x: 60 - radius, y: 0, bulge: quarter },
      { x: 60, y: radius },
      { x: 60, y: 40 - radius, bulge: quarter },
      { x: 60 - radius, y: 40 },
      { x: radius, y: 40, bulge: quarter },
      { x: 0, y: 40 - radius },
      { x: 0, y: radius, bulge: quarter },
    ];
    expect(selfMeetings(contour, 9)).toEqual([]);
    // Plane geometry: a rectangle less the four corners that a circle leaves over.
    expect(areaOf(contour)).toBeCloseTo(2400 - (4 - Math.PI) * radius ** 2, 9);
  }
});

test('a spike, an arc traced back and a figure of eight are found', () => {
  const spike = [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
    { x: 4, y: 0 },
    { x: 4, y: 5 },
  ];
  expect(selfMeetings(spike)).toHaveLength(1);
  expect(
    selfMeetings([
      { x: 0, y: 0, bulge: 0.5 },
      { x: 10, y: 0, bulge: -0.5 },
    ]),
  ).toHaveLength(1);
  const circle = [
    { x: 0, y: 0, bulge: 1 },
    { x: 10, y: 0, bulge: 1 },
  ];
  expect(selfMeetings(circle)).toEqual([]);
  expect(areaOf(circle)).toBeCloseTo(Math.PI * 25, 9);
  const eight = [
    { x: 0, y: 0 },
    { x: 10, y: 10 },
    { x: 10, y: 0 },
    { x: 0, y: 10 },
  ];
  expect(selfMeetings(eight)).toEqual([{ at: { x: 5, y: 5 }, crosses: true, edges: [0, 2] }]);
});

test('area, box, inside and lengths of arcs agree with the contour cut into chords', () => {
  fc.assert(
    fc.property(tameContour, fc.integer({ min: 0, max: 100 }), fc.integer({ min: 0, max: 100 }), (contour, x, y) => {
      const polygon = flattenContour(contour, 1e-5);
      expect(Math.abs(areaOf(contour) - signedArea(polygon))).toBeLessThan(0.02);
      const box = boxOfContour(contour);
      const rough = boxOf(polygon);
      for (const name of ['minX', 'minY', 'maxX', 'maxY'] as const)
        expect(Math.abs(box[name] - rough[name])).toBeLessThan(2e-5);
      const at = { x: x + 0.123, y: y + 0.321 };
      const near = edgesOf(contour).some((edge) => distanceToEdge(edge, at) < 1e-4);
      if (!near) expect(insideContour(at, contour)).toBe(insidePolygon(at, polygon));
      for (const edge of edgesOf(contour)) {
        expect(Math.abs(offCurve(edge, middleOf(edge)))).toBeLessThan(1e-9);
        const chords = flattenContour([contour[edge.index], edge.to], 1e-6).slice(0, -1);
        const length = [...chords, edge.to].reduce(
          (sum, point, index, all) =>
            index === 0 ? 0 : sum + Math.hypot(point.x - all[index - 1].x, point.y - all[index - 1].y),
          0,
        );
        expect(Math.abs(lengthOf(edge) - length)).toBeLessThan(1e-4);
      }
    }),
    { numRuns: 150 },
  );
});
