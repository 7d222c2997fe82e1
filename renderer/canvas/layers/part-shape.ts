import { bodyOf, ownToBoard, type Part } from '../../../shared-types/board.ts';
import type { Point } from '../../../shared-types/geometry.ts';
import { classById } from '../../../shared-types/library/classes.ts';
import type { Mark } from '../drawing/marks.ts';
import { areaShape, crispArea } from '../drawing/outline.ts';
import { type Projection, project } from '../view/projection.ts';

export type BodyShape = Extract<Mark, { kind: 'rectangle' | 'polygon' | 'circle' }>;

/** From this height on a part carries a heavier edge, mm: tall enough to stand in a nozzle's way. */
const TALL_MM = 4;
/** Pin 1 is cut off a corner of bodies of at least this size on screen. */
const NOTCH_FROM_PX = 9;

export function isTall(part: Part): boolean {
  return (part.package.heightMm ?? classById(part.class).defaultHeightMm) >= TALL_MM;
}

/** Sides of a body on screen, CSS pixels. */
export const bodyPx = (part: Part, projection: Projection): { long: number; short: number } => {
  const length = part.package.lengthMm * projection.zoom;
  const width = part.package.widthMm * projection.zoom;
  return { long: Math.max(length, width), short: Math.min(length, width) };
};

/** A body as it is drawn: round, or a rectangle on whole pixels with the corner at pin 1 cut off. */
export function bodyShape(part: Part, projection: Projection, strokePx: number): BodyShape {
  if (part.package.shape === 'round') {
    const { x, y } = project(projection, part);
    return { kind: 'circle', x, y, radius: Math.max(0.5, (part.package.lengthMm * projection.zoom) / 2) };
  }
  const body = bodyOf(part);
  const { short } = bodyPx(part, projection);
  const corner = short >= NOTCH_FROM_PX ? pin1Corner(part) : null;
  if (corner === null) return areaShape(body, projection, strokePx);
  const points = crispArea(body, projection, strokePx);
  return { kind: 'polygon', points: notched(points, corner, Math.max(3.5, Math.min(0.2 * short, 9))) };
}

/** Index of the body's corner at pin 1 (order of rectangleCorners); null: not known, or pin 1 is no corner. */
export function pin1Corner(part: Part): number | null {
  if (!part.pin1 || isEndPin(part)) return null;
  const at = ownToBoard(part, part.pin1);
  const corners = cornerPoints(part);
  let nearest = 0;
  corners.forEach((corner, index) => {
    if (distance(corner, at) < distance(corners[nearest], at)) nearest = index;
  });
  return nearest;
}

/** True when pin 1 is one end of the part, as on chips, diodes and cells, not a corner. */
export function isEndPin(part: Part): boolean {
  if (!part.pin1) return false;
  const { x, y } = part.pin1;
  const along = Math.abs(x) / part.package.lengthMm;
  const across = Math.abs(y) / part.package.widthMm;
  return (across < 0.12 && along > 0.15) || (along < 0.12 && across > 0.15);
}

function cornerPoints(part: Part): Point[] {
  const { lengthMm: l, widthMm: w } = part.package;
  // The mirrored bottom part is the same rectangle: its corners in the order of rectangleCorners, unmirrored.
  const flip = part.side === 'bottom' ? -1 : 1;
  return [
    [-l / 2, -w / 2],
    [l / 2, -w / 2],
    [l / 2, w / 2],
    [-l / 2, w / 2],
  ].map(([x, y]) => ownToBoard(part, { x, y: flip * y }));
}

const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

/** A polygon with one corner cut off at `size` pixels from it. */
export function notched(points: readonly number[], corner: number, size: number): number[] {
  const count = points.length / 2;
  const at = (index: number) => ({ x: points[2 * (index % count)], y: points[2 * (index % count) + 1] });
  const tip = at(corner);
  const towards = (to: Point): [number, number] => {
    const length = distance(tip, to) || 1;
    const share = Math.min(0.5, size / length);
    return [tip.x + (to.x - tip.x) * share, tip.y + (to.y - tip.y) * share];
  };
  const cut = [...towards(at(corner + count - 1)), ...towards(at(corner + 1))];
  return [...points.slice(0, 2 * corner), ...cut, ...points.slice(2 * corner + 2)];
}
