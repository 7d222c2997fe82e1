import type { Contour, Corner, Point } from '../../../shared-types/geometry.ts';

/** Contours as they are drawn. All run counter-clockwise; lengths in mm. */

/** Bulge of a quarter circle. */
const QUARTER = Math.tan(Math.PI / 8);

/** Upright rectangle between two opposite corners, its own corners rounded by up to half of its shorter side. */
export function rectangleContour(a: Point, b: Point, radiusMm = 0): Contour {
  const [x0, x1] = [Math.min(a.x, b.x), Math.max(a.x, b.x)];
  const [y0, y1] = [Math.min(a.y, b.y), Math.max(a.y, b.y)];
  const r = Math.max(0, Math.min(radiusMm, (x1 - x0) / 2, (y1 - y0) / 2));
  const places: [number, number, number, number][] = [
    [x1, y0, -1, 0],
    [x1, y1, 0, -1],
    [x0, y1, 1, 0],
    [x0, y0, 0, 1],
  ];
  const round = places.flatMap(([x, y, dx, dy]): Corner[] =>
    r === 0
      ? [{ x, y }]
      : [
          { x: x + dx * r, y: y + dy * r, bulge: QUARTER },
          { x: x + dy * r, y: y - dx * r },
        ],
  );
  // From the lower left on, as a rectangle is read.
  return withoutDoubles([round[round.length - 1], ...round.slice(0, -1)]);
}

/** Circle as two half arcs. */
export const circleContour = (centre: Point, radiusMm: number): Contour => [
  { x: centre.x - radiusMm, y: centre.y, bulge: 1 },
  { x: centre.x + radiusMm, y: centre.y, bulge: 1 },
];

/** Slot round the way between two centres: straight flanks, half circles at its ends. */
export function slotContour(a: Point, b: Point, widthMm: number): Contour {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  if (length === 0) return circleContour(a, widthMm / 2);
  const side = { x: ((b.y - a.y) / length) * (widthMm / 2), y: (-(b.x - a.x) / length) * (widthMm / 2) };
  return [
    { x: a.x + side.x, y: a.y + side.y },
    { x: b.x + side.x, y: b.y + side.y, bulge: 1 },
    { x: b.x - side.x, y: b.y - side.y },
    { x: a.x - side.x, y: a.y - side.y, bulge: 1 },
  ];
}

/** Corners that fall on the one before are taken out; where one was an arc's start, the arc is kept. */
export function withoutDoubles(contour: readonly Corner[]): Contour {
  return contour.filter((corner, index) => {
    const next = contour[(index + 1) % contour.length];
    return contour.length <= 2 || Math.hypot(next.x - corner.x, next.y - corner.y) > 1e-9;
  });
}

/** Bulge of the arc from one point to another through a third; 0 when the three lie on a line. */
export function bulgeThrough(from: Point, to: Point, through: Point): number {
  const u = { x: from.x - through.x, y: from.y - through.y };
  const v = { x: to.x - through.x, y: to.y - through.y };
  const cross = u.x * v.y - u.y * v.x;
  const lengths = Math.hypot(u.x, u.y) * Math.hypot(v.x, v.y);
  if (Math.abs(cross) < 1e-9 * lengths || lengths === 0) return 0;
  return -(lengths + u.x * v.x + u.y * v.y) / cross;
}

/** Bulge of the shorter arc of a radius over a chord, bent the way of `sign`; null: the chord is longer than 2 radii. */
export function bulgeOfRadius(chordMm: number, radiusMm: number, sign: number): number | null {
  const half = chordMm / 2 / radiusMm;
  if (!(half <= 1 + 1e-9)) return null;
  return Math.sign(sign || 1) * Math.tan(Math.asin(Math.min(1, half)) / 2);
}

/** Bulge of an arc that turns by so many degrees, below 360 either way. */
export const bulgeOfSweep = (degrees: number): number => Math.tan((degrees * Math.PI) / 180 / 4);
