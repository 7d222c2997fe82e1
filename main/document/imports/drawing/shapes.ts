import type { Point } from '../plane.ts';
import { type Affine, mapPoint, mapVector } from './affine.ts';
import type { Shape } from './types.ts';

/** The shape after an affine map. */
export function mapShape(matrix: Affine, shape: Shape): Shape {
  const at = (point: Point): Point => mapPoint(matrix, point);
  if (shape.kind === 'line') return { kind: 'line', from: at(shape.from), to: at(shape.to) };
  if (shape.kind === 'curve') return { ...shape, points: shape.points.map(at) };
  return { ...shape, centre: at(shape.centre), u: mapVector(matrix, shape.u), v: mapVector(matrix, shape.v) };
}

/** Angles in radians, counter-clockwise with y up. */
export function circleShape(centre: Point, radius: number, start = 0, sweep = 2 * Math.PI): Shape {
  return { kind: 'ellipse', centre, u: { x: radius, y: 0 }, v: { x: 0, y: radius }, start, sweep };
}

/** A Bezier curve of any degree. */
export function bezierShape(points: readonly Point[]): Shape {
  const order = points.length;
  const knots = [...new Array<number>(order).fill(0), ...new Array<number>(order).fill(1)];
  return { kind: 'curve', degree: order - 1, knots, points, weights: null };
}

/** The arc or line from one vertex of a polyline to the next; `bulge` is tan of a quarter of the sweep (DXF reference, code 42). */
export function bulgeShape(from: Point, to: Point, bulge: number): Shape {
  if (Math.abs(bulge) < 1e-9) return { kind: 'line', from, to };
  const reach = (1 - bulge * bulge) / (4 * bulge);
  const centre = {
    x: (from.x + to.x) / 2 - (to.y - from.y) * reach,
    y: (from.y + to.y) / 2 + (to.x - from.x) * reach,
  };
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  return circleShape(centre, Math.hypot(from.x - centre.x, from.y - centre.y), start, 4 * Math.atan(bulge));
}

/** Every point that bounds the shape, not tightly: control points, and the frame of an ellipse. */
export function boundingPoints(shape: Shape): readonly Point[] {
  if (shape.kind === 'line') return [shape.from, shape.to];
  if (shape.kind === 'curve') return shape.points;
  const { centre, u, v } = shape;
  return [-1, 1].flatMap((s) =>
    [-1, 1].map((t) => ({ x: centre.x + s * u.x + t * v.x, y: centre.y + s * u.y + t * v.y })),
  );
}

/** True when every number of the shape is one that a drawing can hold. */
export function isFiniteShape(shape: Shape): boolean {
  const sound = boundingPoints(shape).every(({ x, y }) => Math.abs(x) < 1e9 && Math.abs(y) < 1e9);
  return sound && (shape.kind !== 'ellipse' || Number.isFinite(shape.start + shape.sweep));
}
