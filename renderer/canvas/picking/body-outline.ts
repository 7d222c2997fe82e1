import { bodyOf, type Part } from '../../../shared-types/board.ts';
import { type Point, rectangleCorners, type TurnedRectangle, turnVector } from '../../../shared-types/geometry.ts';

/** True when a board point lies in a turned rectangle widened by a margin, mm. */
export function insideArea(at: Point, area: TurnedRectangle, marginMm = 0): boolean {
  const own = turnVector(at.x - area.x, at.y - area.y, -area.turnDeg);
  return Math.abs(own.x) <= area.lengthMm / 2 + marginMm && Math.abs(own.y) <= area.widthMm / 2 + marginMm;
}

/** Distance from a board point to a part's body, mm; 0 inside. */
export function distanceToBody(at: Point, part: Part): number {
  if (part.package.shape === 'round')
    return Math.max(0, Math.hypot(at.x - part.x, at.y - part.y) - part.package.lengthMm / 2);
  const own = turnVector(at.x - part.x, at.y - part.y, -part.turn);
  const dx = Math.max(0, Math.abs(own.x) - part.package.lengthMm / 2);
  const dy = Math.max(0, Math.abs(own.y) - part.package.widthMm / 2);
  return Math.hypot(dx, dy);
}

export const bodyCorners = (part: Part): Point[] => rectangleCorners(bodyOf(part));

/** True when two convex polygons touch (separating axes). */
export function convexTouch(first: readonly Point[], second: readonly Point[]): boolean {
  return !separated(first, second) && !separated(second, first);
}

function separated(first: readonly Point[], second: readonly Point[]): boolean {
  return first.some((a, index) => {
    const b = first[(index + 1) % first.length];
    const axis = { x: a.y - b.y, y: b.x - a.x };
    const along = (points: readonly Point[]) => points.map((point) => point.x * axis.x + point.y * axis.y);
    const one = along(first);
    const other = along(second);
    return Math.max(...one) < Math.min(...other) || Math.max(...other) < Math.min(...one);
  });
}
