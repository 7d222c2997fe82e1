import { describe, expect, test } from 'vitest';
import { ownToBoard } from '../../../shared-types/board.ts';
import {
  arcOfEdge,
  flattenContour,
  gapBetween,
  insidePolygon,
  perimeterOf,
  rectangleCorners,
  signedArea,
  turnVector,
} from '../../../shared-types/geometry.ts';

/** A circle of radius 5 as two half arcs: the bulge of a half circle is tan(90/2) = 1 (DXF reference, group code 42). */
const circle = [
  { x: -5, y: 0, bulge: 1 },
  { x: 5, y: 0, bulge: 1 },
];

describe('contours', () => {
  test('a half-circle bulge turns counter-clockwise about the middle of its chord', () => {
    expect(arcOfEdge(circle[0], circle[1])).toMatchObject({ x: 0, y: 0, radius: 5, sweep: Math.PI });
    expect(signedArea(flattenContour(circle, 0.001))).toBeCloseTo(25 * Math.PI, 1);
    expect(perimeterOf(flattenContour(circle, 0.001))).toBeCloseTo(10 * Math.PI, 2);
  });

  test('a quarter arc has its centre where the radii meet', () => {
    const arc = arcOfEdge({ x: 10, y: 0, bulge: Math.tan(Math.PI / 8) }, { x: 0, y: 10 });
    expect(arc.x).toBeCloseTo(0);
    expect(arc.y).toBeCloseTo(0);
    expect(arc.radius).toBeCloseTo(10);
  });

  test('chords stay within the tolerance of the arc', () => {
    for (const tolerance of [0.5, 0.05, 0.005]) {
      const polygon = flattenContour(circle, tolerance);
      const middles = polygon.map((a, i) => {
        const b = polygon[(i + 1) % polygon.length];
        return 5 - Math.hypot((a.x + b.x) / 2, (a.y + b.y) / 2);
      });
      expect(Math.max(...middles)).toBeLessThanOrEqual(tolerance);
    }
  });
});

describe('parts', () => {
  test('a turn is counter-clockwise', () => {
    expect(turnVector(1, 0, 90).y).toBeCloseTo(1);
    const [corner] = rectangleCorners({ x: 10, y: 10, lengthMm: 4, widthMm: 2, turnDeg: 90 });
    expect(corner.x).toBeCloseTo(11);
    expect(corner.y).toBeCloseTo(8);
  });

  test('a bottom part is mirrored before it is turned', () => {
    const at = ownToBoard({ x: 0, y: 0, turn: 90, side: 'bottom' }, { x: 1, y: 2 });
    expect(at.x).toBeCloseTo(2);
    expect(at.y).toBeCloseTo(1);
    const top = ownToBoard({ x: 0, y: 0, turn: 90, side: 'top' }, { x: 1, y: 2 });
    expect(top.x).toBeCloseTo(-2);
  });
});

describe('distances', () => {
  const square = (x: number, y: number) => rectangleCorners({ x, y, lengthMm: 2, widthMm: 2, turnDeg: 0 });
  test('gap of two bodies is the shortest way between their borders', () => {
    expect(gapBetween(square(0, 0), square(5, 0))).toBeCloseTo(3);
    expect(gapBetween(square(0, 0), square(5, 6))).toBeCloseTo(5);
    expect(gapBetween(square(0, 0), square(1, 1))).toBe(0);
    expect(gapBetween(square(0, 0), rectangleCorners({ x: 0, y: 0, lengthMm: 0.5, widthMm: 9, turnDeg: 45 }))).toBe(0);
  });
  test('inside follows the even-odd rule', () => {
    expect(insidePolygon({ x: 0, y: 0 }, square(0, 0))).toBe(true);
    expect(insidePolygon({ x: 3, y: 0 }, square(0, 0))).toBe(false);
  });
});
