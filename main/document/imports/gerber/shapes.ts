import { type Disc, turnPoint } from '../plane.ts';

export function circleDiscs(diameter: number): Disc[] {
  return [{ x: 0, y: 0, r: Math.abs(diameter) / 2 }];
}

export function rectangleDiscs(width: number, height: number): Disc[] {
  const x = width / 2;
  const y = height / 2;
  return [
    { x, y, r: 0 },
    { x: -x, y, r: 0 },
    { x: -x, y: -y, r: 0 },
    { x, y: -y, r: 0 },
  ];
}

/** A rectangle whose shorter sides are half circles. */
export function obroundDiscs(width: number, height: number): Disc[] {
  const r = Math.min(width, height) / 2;
  const x = width / 2 - r;
  const y = height / 2 - r;
  if (x === 0 && y === 0) return [{ x: 0, y: 0, r }];
  return [
    { x, y, r },
    { x: -x, y: -y, r },
  ];
}

/** Corners on a circle of the given diameter, the first on the positive x axis, turned by `degrees`. */
export function regularPolygonDiscs(diameter: number, vertices: number, degrees: number): Disc[] {
  const discs: Disc[] = [];
  for (let index = 0; index < vertices; index++) {
    const corner = turnPoint({ x: diameter / 2, y: 0 }, degrees + (360 * index) / vertices);
    discs.push({ ...corner, r: 0 });
  }
  return discs;
}

/** Drops discs that do not shape the hull: of discs of one radius only the convex hull of the centres counts. */
export function hullOfDiscs(discs: readonly Disc[]): Disc[] {
  if (discs.length <= 4) return [...discs];
  const byRadius = new Map<number, Disc[]>();
  for (const disc of discs) {
    const same = byRadius.get(disc.r);
    if (same) same.push(disc);
    else byRadius.set(disc.r, [disc]);
  }
  return [...byRadius.values()].flatMap(convexHull);
}

/** Andrew's monotone chain (A. M. Andrew, Information Processing Letters 9, 1979). */
function convexHull(discs: readonly Disc[]): Disc[] {
  if (discs.length <= 2) return [...discs];
  const sorted = [...discs].sort((a, b) => a.x - b.x || a.y - b.y);
  return [...halfHull(sorted), ...halfHull(sorted.reverse())];
}

function halfHull(sorted: readonly Disc[]): Disc[] {
  const hull: Disc[] = [];
  for (const disc of sorted) {
    while (hull.length >= 2 && turnsRight(hull[hull.length - 2], hull[hull.length - 1], disc)) hull.pop();
    hull.push(disc);
  }
  hull.pop();
  return hull.length === 0 ? sorted.slice(0, 1) : hull;
}

function turnsRight(a: Disc, b: Disc, c: Disc): boolean {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x) <= 0;
}
