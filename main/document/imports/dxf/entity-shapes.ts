import { bezierShape, bulgeShape, circleShape } from '../drawing/shapes.ts';
import type { Shape } from '../drawing/types.ts';
import type { Point } from '../plane.ts';
import type { Entity } from './entities.ts';

const RADIANS = Math.PI / 180;
const FULL = 2 * Math.PI;
const MAX_DEGREE = 25;

/** Shapes of one entity in its own axes; null for kinds that draw no outline. */
export function entityShapes(entity: Entity): Shape[] | null {
  const draw = Object.hasOwn(DRAWERS, entity.kind) ? DRAWERS[entity.kind] : null;
  return draw ? draw(entity, (code, without = 0) => entity.figures.get(code) ?? without) : null;
}

type Figures = (code: number, without?: number) => number;

const DRAWERS: Readonly<Record<string, (entity: Entity, figure: Figures) => Shape[] | null>> = {
  LINE: (_, at) => [{ kind: 'line', from: { x: at(10), y: at(20) }, to: { x: at(11), y: at(21) } }],
  CIRCLE: (_, at) => (at(40) > 0 ? [circleShape({ x: at(10), y: at(20) }, at(40))] : []),
  ARC: (_, at) =>
    at(40) > 0
      ? [circleShape({ x: at(10), y: at(20) }, at(40), at(50) * RADIANS, forward(at(50) * RADIANS, at(51) * RADIANS))]
      : [],
  ELLIPSE: (_, at) => ellipse(at),
  LWPOLYLINE: (entity, at) => polyline(entity, (at(70) & 1) === 1),
  // Bits 16 and 64: a mesh.
  POLYLINE: (entity, at) => ((at(70) & 80) === 0 ? polyline(entity, (at(70) & 1) === 1) : null),
  SPLINE: spline,
};

/** Counter-clockwise from start to end; the same angle twice is a full turn. */
function forward(start: number, end: number): number {
  const sweep = (((end - start) % FULL) + FULL) % FULL;
  return sweep < 1e-12 ? FULL : sweep;
}

/** Centre, end of the larger axis from it, ratio of the axes, and parameters (not angles) of the ends. */
function ellipse(at: Figures): Shape[] {
  const [major, ratio] = [{ x: at(11), y: at(21) }, at(40, 1)];
  if (Math.hypot(major.x, major.y) === 0 || ratio === 0) return [];
  const minor = { x: -major.y * ratio, y: major.x * ratio };
  // The axis that points down turns the smaller axis round.
  const v = at(230, 1) < 0 ? { x: -minor.x, y: -minor.y } : minor;
  const start = at(41, 0);
  return [
    { kind: 'ellipse', centre: { x: at(10), y: at(20) }, u: major, v, start, sweep: forward(start, at(42, FULL)) },
  ];
}

function polyline({ points }: Entity, closed: boolean): Shape[] {
  const last = points.length - (closed ? 0 : 1);
  return Array.from({ length: Math.max(0, last) }, (_, index) =>
    bulgeShape(points[index], points[(index + 1) % points.length], points[index].bulge),
  );
}

function spline({ points, fitPoints, knots, weights }: Entity, at: Figures): Shape[] | null {
  const degree = at(71, 3);
  if (points.length === 0) return throughPoints(fitPoints, (at(70) & 1) === 1);
  if (degree < 1 || degree > MAX_DEGREE || points.length <= degree) return null;
  const sound =
    knots.length === points.length + degree + 1 &&
    knots.every((knot, index) => index === 0 || knot >= knots[index - 1]);
  const whole = weights.length === points.length && weights.every((weight) => weight > 0);
  return [
    {
      kind: 'curve',
      degree,
      knots: sound ? knots : evenKnots(points.length, degree),
      points: points.map(({ x, y }) => ({ x, y })),
      weights: whole ? weights : null,
    },
  ];
}

/** Knots that begin and end the curve at its first and last control point. */
function evenKnots(count: number, degree: number): number[] {
  return Array.from({ length: count + degree + 1 }, (_, index) =>
    Math.min(Math.max(0, index - degree), count - degree),
  );
}

/** A spline given by the points it passes: smooth cubic pieces through them (Catmull and Rom); the program that wrote it may bend them slightly otherwise. */
function throughPoints(points: readonly Point[], closed: boolean): Shape[] | null {
  const count = points.length;
  if (count < 2) return null;
  const near = (index: number): Point =>
    points[closed ? (index + count) % count : Math.min(count - 1, Math.max(0, index))];
  return Array.from({ length: closed ? count : count - 1 }, (_, index) => {
    const [before, from, to, after] = [near(index - 1), near(index), near(index + 1), near(index + 2)];
    const out = { x: from.x + (to.x - before.x) / 6, y: from.y + (to.y - before.y) / 6 };
    const back = { x: to.x - (after.x - from.x) / 6, y: to.y - (after.y - from.y) / 6 };
    return bezierShape([from, out, back, to]);
  });
}
