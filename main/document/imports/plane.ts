/** Plane geometry the importers share. Lengths are millimetres, x right, y up, angles in degrees counter-clockwise. */

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** A point with a radius: the hull of a few discs describes every pad shape (a corner is a disc of radius 0). */
export interface Disc extends Point {
  readonly r: number;
}

export const EMPTY_BOX: Box = {
  minX: Number.POSITIVE_INFINITY,
  minY: Number.POSITIVE_INFINITY,
  maxX: Number.NEGATIVE_INFINITY,
  maxY: Number.NEGATIVE_INFINITY,
};

export function joinBoxes(a: Box, b: Box): Box {
  return {
    minX: Math.min(a.minX, b.minX),
    minY: Math.min(a.minY, b.minY),
    maxX: Math.max(a.maxX, b.maxX),
    maxY: Math.max(a.maxY, b.maxY),
  };
}

export function growBox(box: Box, by: number): Box {
  return { minX: box.minX - by, minY: box.minY - by, maxX: box.maxX + by, maxY: box.maxY + by };
}

export function boxOfPoints(points: Iterable<Point>): Box {
  let { minX, minY, maxX, maxY } = EMPTY_BOX;
  for (const { x, y } of points) {
    if (x < minX) minX = x;
    if (y < minY) minY = y;
    if (x > maxX) maxX = x;
    if (y > maxY) maxY = y;
  }
  return { minX, minY, maxX, maxY };
}

export function boxOfDiscs(discs: Iterable<Disc>): Box {
  let { minX, minY, maxX, maxY } = EMPTY_BOX;
  for (const { x, y, r } of discs) {
    minX = Math.min(minX, x - r);
    minY = Math.min(minY, y - r);
    maxX = Math.max(maxX, x + r);
    maxY = Math.max(maxY, y + r);
  }
  return { minX, minY, maxX, maxY };
}

export function boxCentre(box: Box): Point {
  return { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
}

export function boxWidth(box: Box): number {
  return box.maxX - box.minX;
}

export function boxHeight(box: Box): number {
  return box.maxY - box.minY;
}

/** Turns `point` about the origin, counter-clockwise, by `degrees`; quarter turns are exact. */
export function turnPoint(point: Point, degrees: number): Point {
  const quarter = (((degrees % 360) + 360) % 360) / 90;
  if (quarter === 0) return point;
  if (quarter === 1) return { x: -point.y, y: point.x };
  if (quarter === 2) return { x: -point.x, y: -point.y };
  if (quarter === 3) return { x: point.y, y: -point.x };
  const angle = (degrees * Math.PI) / 180;
  const cosine = Math.cos(angle);
  const sine = Math.sin(angle);
  return { x: point.x * cosine - point.y * sine, y: point.x * sine + point.y * cosine };
}

/** `degrees` brought into 0 <= angle < 360, free of rounding dust such as 359.9999999. */
export function normalAngle(degrees: number): number {
  const turned = ((degrees % 360) + 360) % 360;
  const rounded = Math.round(turned * 1e6) / 1e6;
  return rounded >= 360 ? 0 : rounded;
}

/** The smallest absolute difference between two angles that count as equal every `period` degrees. */
export function angleDifference(a: number, b: number, period = 360): number {
  const difference = (((a - b) % period) + period) % period;
  return Math.min(difference, period - difference);
}

export function distance(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

export function median(values: readonly number[]): number {
  if (values.length === 0) return 0;
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
