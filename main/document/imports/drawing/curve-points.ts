import type { Point } from '../plane.ts';
import type { Shape } from './types.ts';

type Curve = Extract<Shape, { kind: 'curve' }>;

const MAX_HALVINGS = 9;

/** Points along the curve, both ends included; chords stay within `tolerance` of it, as tested at a quarter, the middle and three quarters of each. */
export function curvePoints(curve: Curve, tolerance: number): Point[] {
  const { degree, knots, points } = curve;
  if (degree === 1) return [...points];
  const result: Point[] = [];
  for (let span = degree; span < points.length; span++) {
    const [from, to] = [knots[span], knots[span + 1]];
    if (!(to > from)) continue;
    const at = (t: number): Point => pointInSpan(curve, span, t);
    if (result.length === 0) result.push(at(from));
    // An S may have its middle on the chord: each span begins with two pieces.
    const middle = (from + to) / 2;
    halve(at, from, middle, tolerance, MAX_HALVINGS, result);
    halve(at, middle, to, tolerance, MAX_HALVINGS, result);
  }
  return result;
}

function halve(
  at: (t: number) => Point,
  from: number,
  to: number,
  tolerance: number,
  left: number,
  result: Point[],
): void {
  const [a, b] = [at(from), at(to)];
  const flat = [0.25, 0.5, 0.75].every((share) => offChord(at(from + (to - from) * share), a, b) <= tolerance);
  if (flat || left === 0) {
    result.push(b);
    return;
  }
  const middle = (from + to) / 2;
  halve(at, from, middle, tolerance, left - 1, result);
  halve(at, middle, to, tolerance, left - 1, result);
}

function offChord(point: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const square = dx * dx + dy * dy;
  const share = square === 0 ? 0 : Math.min(1, Math.max(0, ((point.x - a.x) * dx + (point.y - a.y) * dy) / square));
  return Math.hypot(point.x - a.x - share * dx, point.y - a.y - share * dy);
}

/** De Boor's scheme on homogeneous points: exact for rational curves too (source: de Boor, On calculating with B-splines, 1972). */
function pointInSpan({ degree, knots, points, weights }: Curve, span: number, t: number): Point {
  const work = Array.from({ length: degree + 1 }, (_, index) => {
    const { x, y } = points[span - degree + index];
    const w = weights?.[span - degree + index] ?? 1;
    return { x: x * w, y: y * w, w };
  });
  for (let level = 1; level <= degree; level++) {
    for (let index = degree; index >= level; index--) {
      const low = knots[span - degree + index];
      const high = knots[span + 1 + index - level];
      const share = high > low ? (t - low) / (high - low) : 0;
      const [a, b] = [work[index - 1], work[index]];
      work[index] = { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share, w: a.w + (b.w - a.w) * share };
    }
  }
  const { x, y, w } = work[degree];
  return w === 0 ? { x, y } : { x: x / w, y: y / w };
}
