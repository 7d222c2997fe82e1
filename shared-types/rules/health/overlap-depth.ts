import { bodyOf, type Part } from '../../board.ts';
import { type Point, rectangleCorners, type TurnedRectangle, turnVector } from '../../geometry.ts';

/** A body as seen from above: a turned rectangle, or a disc of the diameter `lengthMm`. */
export type FlatBody = TurnedRectangle & { shape: 'rectangle' | 'round' };

export const flatBody = (part: Part): FlatBody => ({ ...bodyOf(part), shape: part.package.shape });

/**
 * How deep two bodies reach into each other, mm: the shortest way one must be moved until they only touch; 0 when they
 * are apart. Exact for rectangles and discs: two convex bodies part soonest along the normal of an edge of one of them
 * (separating axes), a disc and a rectangle along the way from the disc's centre to the rectangle's border.
 */
export function overlapDepth(a: FlatBody, b: FlatBody): number {
  if (a.shape === 'round' && b.shape === 'round')
    return Math.max(0, (a.lengthMm + b.lengthMm) / 2 - Math.hypot(a.x - b.x, a.y - b.y));
  if (a.shape === 'round') return discInRectangle(a, b);
  if (b.shape === 'round') return discInRectangle(b, a);
  return rectanglesDepth(a, b);
}

function discInRectangle(disc: FlatBody, rectangle: FlatBody): number {
  return Math.max(0, disc.lengthMm / 2 - outsideBy(disc, rectangle));
}

/** Distance from a point to a rectangle's border, mm: positive outside, negative inside. */
function outsideBy(at: Point, rectangle: TurnedRectangle): number {
  const own = turnVector(at.x - rectangle.x, at.y - rectangle.y, -rectangle.turnDeg);
  const dx = Math.abs(own.x) - rectangle.lengthMm / 2;
  const dy = Math.abs(own.y) - rectangle.widthMm / 2;
  return dx > 0 || dy > 0 ? Math.hypot(Math.max(0, dx), Math.max(0, dy)) : Math.max(dx, dy);
}

function rectanglesDepth(a: TurnedRectangle, b: TurnedRectangle): number {
  const corners = [rectangleCorners(a), rectangleCorners(b)];
  let least = Infinity;
  for (const degrees of [a.turnDeg, a.turnDeg + 90, b.turnDeg, b.turnDeg + 90]) {
    const axis = turnVector(1, 0, degrees);
    const [one, other] = corners.map((points) => shadow(points, axis));
    least = Math.min(least, one.to - other.from, other.to - one.from);
    if (least <= 0) return 0;
  }
  return least;
}

function shadow(points: readonly Point[], axis: Point): { from: number; to: number } {
  const along = points.map((point) => point.x * axis.x + point.y * axis.y);
  return { from: Math.min(...along), to: Math.max(...along) };
}

/** True when a board point lies in the body, its border included. */
export function bodyHolds(body: FlatBody, at: Point): boolean {
  if (body.shape === 'round') return Math.hypot(at.x - body.x, at.y - body.y) <= body.lengthMm / 2;
  return outsideBy(at, body) <= 0;
}
