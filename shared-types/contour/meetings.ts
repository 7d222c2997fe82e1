import type { Point } from '../geometry.ts';
import { distanceToEdge, type Edge, isStraight, middleOf, offCurve, TOUCH_MM, withinEdge } from './edges.ts';

/** Where two edges meet. `crosses`: they go through each other; else they only touch or lie on one another. */
export type Meeting = { at: Point; crosses: boolean };

/**
 * Every place where two edges meet, straight or arcs; `shared`: corners that both have as neighbours, which do not count.
 * Exact up to rounding: lines and circles are solved, not cut into chords.
 */
export function meetingsOf(first: Edge, second: Edge, shared: readonly Point[] = []): Meeting[] {
  const found: Meeting[] = [];
  const bend = Math.abs(first.k) + Math.abs(second.k);
  const isShared = (at: Point) =>
    shared.some((corner) => {
      const off = Math.hypot(corner.x - at.x, corner.y - at.y);
      // Two curves that leave a corner side by side stay within a lens; a lens thinner than a touch is no crossing.
      return off < 2 * TOUCH_MM || (bend * off * off) / 8 < TOUCH_MM / 10;
    });
  const add = (at: Point, crosses: boolean) => {
    if (!isShared(at) && found.every((one) => Math.hypot(one.at.x - at.x, one.at.y - at.y) > 2 * TOUCH_MM))
      found.push({ at, crosses });
  };
  for (const { at, crosses } of curvesMeet(first, second))
    if (withinEdge(first, at) && withinEdge(second, at))
      add(at, crosses && !atAnEnd(first, at) && !atAnEnd(second, at));
  for (const [one, other] of [
    [first, second],
    [second, first],
  ])
    for (const at of [one.from, one.to, middleOf(one)]) if (distanceToEdge(other, at) < TOUCH_MM) add(at, false);
  return found;
}

const atAnEnd = ({ from, to }: Edge, at: Point): boolean =>
  Math.min(Math.hypot(from.x - at.x, from.y - at.y), Math.hypot(to.x - at.x, to.y - at.y)) < 2 * TOUCH_MM;

/** Places where the whole curves of two edges meet. */
function curvesMeet(first: Edge, second: Edge): Meeting[] {
  if (isStraight(first)) return lineMeets(first.from, wayOf(first), second);
  if (isStraight(second)) return lineMeets(second.from, wayOf(second), first);
  return arcsMeet(first, second);
}

function wayOf({ from, to }: Edge): Point {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}

/** A line (a point and a unit vector) against an edge's curve. */
function lineMeets(start: Point, way: Point, edge: Edge): Meeting[] {
  const slope = (at: Point) =>
    way.x * (edge.k * (at.x - edge.origin.x) + edge.l) + way.y * (edge.k * (at.y - edge.origin.y) + edge.m);
  const a = isStraight(edge) ? 0 : edge.k / 2;
  const b = slope(start);
  const c = offCurve(edge, start);
  const on = (t: number, crosses: boolean): Meeting => ({
    at: { x: start.x + way.x * t, y: start.y + way.y * t },
    crosses,
  });
  if (a === 0) return Math.abs(b) < 1e-12 ? [] : [on(-c / b, true)];
  // How deep the line dips into the circle (negative of the distance where it passes by).
  const depth = (b * b) / (4 * Math.abs(a)) - c * Math.sign(a);
  if (Math.abs(depth) < TOUCH_MM) return [on(-b / (2 * a), false)];
  if (depth < 0) return [];
  const root = Math.sqrt(b * b - 4 * a * c);
  const q = -(b + (b < 0 ? -root : root)) / 2;
  return [on(q / a, true), ...(q === 0 ? [] : [on(c / q, true)])];
}

/** Two circles: their common chord's line against the more bent of them. */
function arcsMeet(first: Edge, second: Edge): Meeting[] {
  const bent = Math.abs(first.k) >= Math.abs(second.k) ? first : second;
  const other = bent === first ? second : first;
  // Both curves seen from the middle of the bent one's chord.
  const dx = other.origin.x - bent.origin.x;
  const dy = other.origin.y - bent.origin.y;
  const l = other.l - other.k * dx;
  const m = other.m - other.k * dy;
  const n = other.n + (other.k / 2) * (dx * dx + dy * dy) - other.l * dx - other.m * dy;
  const share = other.k / bent.k;
  const line = { l: l - share * bent.l, m: m - share * bent.m, n: n - share * bent.n };
  const size = Math.hypot(line.l, line.m);
  if (size < 1e-12) return [];
  const foot = {
    x: bent.origin.x - (line.l * line.n) / (size * size),
    y: bent.origin.y - (line.m * line.n) / (size * size),
  };
  return lineMeets(foot, { x: -line.m / size, y: line.l / size }, bent);
}
