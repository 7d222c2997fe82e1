import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  deleteCorner,
  edgeFigures,
  insertCorner,
  moveCorner,
  moveEdge,
  setAngle,
  setLength,
  setRadius,
} from '../../../../renderer/editing/contour/corners.ts';
import { largestRounding, roundCorners } from '../../../../renderer/editing/contour/rounding.ts';
import {
  bulgeThrough,
  circleContour,
  rectangleContour,
  slotContour,
} from '../../../../renderer/editing/contour/shapes.ts';
import {
  addCutout,
  faultOfChange,
  faultOfCutout,
  placeForCopy,
  setContour,
} from '../../../../renderer/editing/outline.ts';
import { areaOf, boxOfContour, edgeBetween, offCurve, withinEdge } from '../../../../shared-types/contour/edges.ts';
import { selfMeetings } from '../../../../shared-types/rules/contour-faults.ts';
import { tameContour } from '../../shared-types/contour/random-contours.ts';
import { smallDocument } from './sample-document.ts';

const at = (x: number, y: number) => ({ x, y });
const rectangle = rectangleContour(at(0, 0), at(60, 40));

test('shapes enclose what plane geometry says', () => {
  expect(rectangle).toEqual([at(0, 0), at(60, 0), at(60, 40), at(0, 40)]);
  expect(areaOf(rectangleContour(at(60, 40), at(0, 0), 3))).toBeCloseTo(2400 - (4 - Math.PI) * 9, 9);
  expect(areaOf(rectangleContour(at(0, 0), at(10, 4), 2))).toBeCloseTo(6 * 4 + Math.PI * 4, 9);
  expect(areaOf(circleContour(at(5, 5), 1.6))).toBeCloseTo(Math.PI * 1.6 ** 2, 9);
  expect(areaOf(slotContour(at(2, 2), at(8, 10), 3))).toBeCloseTo(10 * 3 + Math.PI * 2.25, 9);
  for (const shape of [rectangleContour(at(0, 0), at(9, 4), 2), slotContour(at(2, 2), at(8, 10), 3)])
    expect(selfMeetings(shape, 5)).toEqual([]);
});

test('an arc through three points goes through them', () => {
  const coordinate = fc.integer({ min: -50, max: 50 });
  fc.assert(
    fc.property(fc.array(fc.record({ x: coordinate, y: coordinate }), { minLength: 3, maxLength: 3 }), ([a, b, c]) => {
      const cross = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
      fc.pre(cross !== 0);
      const edge = edgeBetween(a, b, bulgeThrough(a, b, c));
      expect(Math.abs(offCurve(edge, c))).toBeLessThan(1e-6);
      expect(withinEdge(edge, c)).toBe(true);
    }),
  );
  expect(bulgeThrough(at(0, 0), at(10, 0), at(5, 0))).toBe(0);
  expect(bulgeThrough(at(0, 0), at(10, 0), at(5, -5))).toBeCloseTo(1, 12);
});

test('a length typed for a rectangle keeps it a rectangle, with rounded corners too', () => {
  const longer = setLength(rectangle, 0, 70);
  expect(longer).toEqual([at(0, 0), at(70, 0), at(70, 40), at(0, 40)]);
  const rounded = setLength(rectangleContour(at(0, 0), at(60, 40), 5), 0, 60);
  const box = boxOfContour(rounded);
  expect([box.minX, box.maxX, box.minY, box.maxY].map((value) => Math.round(value * 1e6) / 1e6 || 0)).toEqual([
    0, 70, 0, 40,
  ]);
  expect(edgeFigures(rounded, 1).radiusMm).toBeCloseTo(5, 9);
});

test('angle and radius of an edge are what was typed; a radius that cannot reach is refused', () => {
  const turned = setAngle(rectangle, 0, 10);
  expect(edgeFigures(turned, 0)).toMatchObject({ radiusMm: 0 });
  expect(edgeFigures(turned, 0).angleDeg).toBeCloseTo(10, 9);
  expect(edgeFigures(turned, 0).lengthMm).toBeCloseTo(60, 9);
  for (const radius of [40, -40, 30]) {
    const bent = setRadius(rectangle, 0, radius);
    expect(edgeFigures(bent ?? rectangle, 0).radiusMm).toBeCloseTo(radius, 9);
  }
  expect(areaOf(setRadius(rectangle, 1, 25) ?? [])).toBeGreaterThan(2400);
  expect(areaOf(setRadius(rectangle, 1, -25) ?? [])).toBeLessThan(2400);
  expect(setRadius(rectangle, 0, 29)).toBeNull();
});

test('a corner put into an edge changes nothing, and taken out again everything is as before', () => {
  fc.assert(
    fc.property(tameContour, fc.nat({ max: 8 }), (contour, index) => {
      const more = insertCorner(contour, index);
      expect(more).toHaveLength(contour.length + 1);
      expect(areaOf(more)).toBeCloseTo(areaOf(contour), 6);
    }),
  );
  expect(deleteCorner(insertCorner(rectangle, 2), 3)).toEqual(rectangle);
  expect(deleteCorner([at(0, 0), at(1, 0), at(0, 1)], 1)).toBeNull();
});

test('rounding takes the corners off and no more; the largest radius fits, a larger one does not', () => {
  const all = [0, 1, 2, 3];
  expect(areaOf(roundCorners(rectangle, all, 4) ?? [])).toBeCloseTo(2400 - (4 - Math.PI) * 16, 9);
  expect(largestRounding(rectangle, all)).toBeCloseTo(20, 9);
  expect(roundCorners(rectangle, all, 20)?.length).toBe(6);
  expect(roundCorners(rectangle, all, 20.1)).toBeNull();
  expect(largestRounding(rectangle, [0])).toBeCloseTo(40, 9);
  const concave = [at(0, 0), at(60, 0), at(60, 20), at(30, 20), at(30, 40), at(0, 40)];
  expect(areaOf(roundCorners(concave, [3], 5) ?? [])).toBeCloseTo(areaOf(concave) + 25 * (1 - Math.PI / 4), 9);
});

test('crossings, cutouts outside, across or in one another are refused and said where', () => {
  const document = smallDocument();
  const { board } = document;
  const crossed = moveCorner(board.outline, 1, at(-20, 55));
  expect(faultOfChange(board, 'outline', crossed)).toMatchObject({ kind: 'self', id: 'outline', crosses: true });
  expect(setContour(document, 'outline', crossed)).toBe(document);
  const hole = circleContour(at(20, 20), 3);
  expect(faultOfCutout(board, circleContour(at(-20, 20), 3))).toMatchObject({ kind: 'outside' });
  expect(faultOfCutout(board, circleContour(at(1, 20), 3))).toMatchObject({ kind: 'pair', other: 'outline' });
  expect(faultOfCutout(board, circleContour(at(3, 20), 3))).toMatchObject({ kind: 'pair', crosses: false });
  const one = addCutout(document, hole);
  expect(one.board.cutouts).toEqual([hole]);
  expect(faultOfCutout(one.board, circleContour(at(21, 20), 3))).toMatchObject({
    kind: 'pair',
    other: 0,
    crosses: true,
  });
  expect(faultOfCutout(one.board, circleContour(at(20, 20), 1))).toMatchObject({ kind: 'nested', other: 0 });
  expect(faultOfCutout(one.board, circleContour(at(20, 20), 9))).toMatchObject({ kind: 'nested', other: 0 });
  expect(addCutout(one, circleContour(at(20, 20), 9))).toBe(one);
  // The outline drawn in over a cutout is refused for the cutout's sake.
  expect(faultOfChange(one.board, 'outline', moveEdge(one.board.outline, 3, at(30, 0)))).toMatchObject({
    kind: 'outside',
    id: 0,
  });
});

test('a fault that came with the file does not stop other work on its contour', () => {
  const document = smallDocument();
  const touching = { ...document.board, cutouts: [rectangleContour(at(0, 10), at(5, 15))] };
  expect(faultOfChange(touching, 0, rectangleContour(at(0, 10), at(6, 15)))).toBeNull();
  expect(faultOfChange(touching, 0, rectangleContour(at(10, 10), at(16, 15)))).toBeNull();
  expect(faultOfChange(touching, 0, rectangleContour(at(90, 10), at(96, 15)))).toMatchObject({ kind: 'outside' });
});

test('a copy of a cutout finds room beside it', () => {
  const one = addCutout(smallDocument(), circleContour(at(76, 30), 2));
  const copy = placeForCopy(one.board, 0, 2);
  expect(copy && faultOfCutout(one.board, copy)).toBeNull();
  expect(copy?.[0].x).toBeLessThan(74);
});
