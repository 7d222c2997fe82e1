import { difference } from 'polyclip-ts';
import { describe, expect, it, test } from 'vitest';
import { withNotch } from '../../../../renderer/editing/contour/notch.ts';
import { circleContour, rectangleContour, slotContour } from '../../../../renderer/editing/contour/shapes.ts';
import { areaOf } from '../../../../shared-types/contour/edges.ts';
import { type Contour, flattenContour } from '../../../../shared-types/geometry.ts';
import { selfMeetings } from '../../../../shared-types/rules/contour-faults.ts';

const board = rectangleContour({ x: 0, y: 0 }, { x: 70, y: 45 }, 4);

/** Area of a difference by a general-purpose polygon library, on fine chords. */
function clippedArea(outline: Contour, shape: Contour): number {
  const ring = (contour: Contour) => flattenContour(contour, 1e-4).map(({ x, y }): [number, number] => [x, y]);
  const rest = difference([ring(outline)], [ring(shape)]);
  const area = (points: readonly (readonly number[])[]) =>
    points.reduce((sum, [x, y], index) => {
      const [nextX, nextY] = points[(index + 1) % points.length];
      return sum + (x * nextY - nextX * y) / 2;
    }, 0);
  return rest.reduce(
    (sum, [outer, ...holes]) =>
      sum + Math.abs(area(outer)) - holes.reduce((all, hole) => all + Math.abs(area(hole)), 0),
    0,
  );
}

describe('a shape over the edge of the outline', () => {
  it('leaves a half-round bay, its corners where the two meet', () => {
    const notched = withNotch(board, circleContour({ x: 0, y: 10 }, 2)) as Contour;
    expect(notched).toHaveLength(board.length + 3);
    // Plane geometry: half a circle of radius 2 is gone.
    expect(Math.abs(areaOf(notched))).toBeCloseTo(Math.abs(areaOf(board)) - 2 * Math.PI, 9);
    const at = (y: number) => notched.some((corner) => Math.abs(corner.x) < 1e-9 && Math.abs(corner.y - y) < 1e-9);
    expect([at(12), at(8)]).toEqual([true, true]);
  });

  test.each([
    ['a hole over the foot, its corners on the edge', circleContour({ x: 30, y: 0 }, 3)],
    ['a hole over the head', circleContour({ x: 30, y: 45.5 }, 3)],
    ['a slot over the right edge', slotContour({ x: 64, y: 20 }, { x: 74, y: 24 }, 3)],
    ['a rectangle over a rounded corner', rectangleContour({ x: 60, y: 38 }, { x: 80, y: 60 }, 2)],
    ['a circle over a rounded corner', circleContour({ x: 0.5, y: 0.5 }, 6)],
  ])('%s takes what a general-purpose library takes', (_name, shape) => {
    for (const outline of [
      board,
      [...board].reverse().map(({ x, y }, index, all) => {
        const { bulge } = board[(2 * all.length - 2 - index) % all.length];
        return { x, y, ...(bulge ? { bulge: -bulge } : {}) };
      }),
    ]) {
      const notched = withNotch(outline, shape) as Contour;
      expect(Math.abs(areaOf(notched))).toBeCloseTo(clippedArea(outline, shape), 2);
      expect(selfMeetings(notched)).toEqual([]);
      expect(Math.sign(areaOf(notched))).toBe(Math.sign(areaOf(outline)));
    }
  });

  it('is refused where it only touches, lies inside or outside, or crosses more than twice', () => {
    for (const shape of [
      circleContour({ x: 30, y: 20 }, 3),
      circleContour({ x: 90, y: 20 }, 3),
      circleContour({ x: 30, y: 3 }, 3),
      rectangleContour({ x: 30, y: -5 }, { x: 40, y: 50 }, 0),
    ])
      expect(withNotch(board, shape)).toBeNull();
  });
});
