import { z } from 'zod';
import { degreesToRadians } from './units.ts';

/** A point on the board, mm, x right, y up, seen from the top. */
export const pointSchema = z.strictObject({ x: z.number(), y: z.number() });
export type Point = z.infer<typeof pointSchema>;

/**
 * A corner of a contour. `bulge` bends the edge from this corner to the next one into an arc:
 * tan(quarter of the included angle), positive when the arc runs counter-clockwise; 0 or absent is a straight edge.
 * The same measure as in the DXF reference (group code 42).
 */
export const cornerSchema = z.strictObject({ x: z.number(), y: z.number(), bulge: z.number().optional() });
export type Corner = z.infer<typeof cornerSchema>;

/** A closed contour of straight and arc edges; the last corner joins the first. At least three corners, or two with an arc. */
export const contourSchema = z.array(cornerSchema).min(2).max(20000);
export type Contour = z.infer<typeof contourSchema>;

export type Side = 'top' | 'bottom';
export const sideSchema = z.enum(['top', 'bottom']);
export const otherSide = (side: Side): Side => (side === 'top' ? 'bottom' : 'top');

/** A rectangle turned about its centre: length along its own x, width along its own y before turning. */
export type TurnedRectangle = { x: number; y: number; lengthMm: number; widthMm: number; turnDeg: number };
export type Box = { minX: number; minY: number; maxX: number; maxY: number };

/** Turns a vector counter-clockwise. */
export function turnVector(x: number, y: number, degrees: number): Point {
  const angle = degreesToRadians(degrees);
  const cosine = Math.cos(angle);
  const sine = Math.sin(angle);
  return { x: x * cosine - y * sine, y: x * sine + y * cosine };
}

/** The four corners of a turned rectangle, counter-clockwise from its own lower left. */
export function rectangleCorners(rectangle: TurnedRectangle): Point[] {
  const { lengthMm: l, widthMm: w } = rectangle;
  const signs = [
    [-0.5, -0.5],
    [0.5, -0.5],
    [0.5, 0.5],
    [-0.5, 0.5],
  ];
  return signs.map(([sx, sy]) => {
    const turned = turnVector(sx * l, sy * w, rectangle.turnDeg);
    return { x: rectangle.x + turned.x, y: rectangle.y + turned.y };
  });
}

/** Bounding box of points; an empty list gives an inverted box (min > max). */
export function boxOf(points: readonly Point[]): Box {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const point of points) {
    box.minX = Math.min(box.minX, point.x);
    box.minY = Math.min(box.minY, point.y);
    box.maxX = Math.max(box.maxX, point.x);
    box.maxY = Math.max(box.maxY, point.y);
  }
  return box;
}

/** Centre, radius and sweep of the arc of an edge with a bulge. */
export function arcOfEdge(
  from: Corner,
  to: Point,
): { x: number; y: number; radius: number; start: number; sweep: number } {
  const bulge = from.bulge ?? 0;
  const sweep = 4 * Math.atan(bulge);
  const chordX = to.x - from.x;
  const chordY = to.y - from.y;
  const offset = (1 - bulge * bulge) / (4 * bulge);
  const x = (from.x + to.x) / 2 - chordY * offset;
  const y = (from.y + to.y) / 2 + chordX * offset;
  return { x, y, radius: Math.hypot(from.x - x, from.y - y), start: Math.atan2(from.y - y, from.x - x), sweep };
}

/** A contour as a polygon; arcs become chords that stay within `toleranceMm` of the arc. */
export function flattenContour(contour: Contour, toleranceMm = 0.01): Point[] {
  const polygon: Point[] = [];
  contour.forEach((corner, index) => {
    const next = contour[(index + 1) % contour.length];
    polygon.push({ x: corner.x, y: corner.y });
    if (!corner.bulge || (corner.x === next.x && corner.y === next.y)) return;
    const arc = arcOfEdge(corner, next);
    const largest = 2 * Math.acos(Math.max(0.5, 1 - toleranceMm / arc.radius));
    const pieces = Math.max(1, Math.ceil(Math.abs(arc.sweep) / largest));
    for (let piece = 1; piece < pieces; piece++) {
      const angle = arc.start + (arc.sweep * piece) / pieces;
      polygon.push({ x: arc.x + arc.radius * Math.cos(angle), y: arc.y + arc.radius * Math.sin(angle) });
    }
  });
  return polygon;
}

/** Signed area of a polygon, mm2, positive when its corners run counter-clockwise. */
export function signedArea(polygon: readonly Point[]): number {
  let twice = 0;
  polygon.forEach((a, index) => {
    const b = polygon[(index + 1) % polygon.length];
    twice += a.x * b.y - b.x * a.y;
  });
  return twice / 2;
}

/** Length of a polygon's border, mm. */
export function perimeterOf(polygon: readonly Point[]): number {
  return polygon.reduce((sum, a, index) => {
    const b = polygon[(index + 1) % polygon.length];
    return sum + Math.hypot(b.x - a.x, b.y - a.y);
  }, 0);
}

/** True when the point is inside the polygon by the even-odd rule; a point on the border may fall either way. */
export function insidePolygon(point: Point, polygon: readonly Point[]): boolean {
  let inside = false;
  for (let i = 0, j = polygon.length - 1; i < polygon.length; j = i++) {
    const a = polygon[i];
    const b = polygon[j];
    if (a.y > point.y !== b.y > point.y && point.x < ((b.x - a.x) * (point.y - a.y)) / (b.y - a.y) + a.x)
      inside = !inside;
  }
  return inside;
}

/** Distance from a point to the segment a-b, mm. */
export function distanceToSegment(point: Point, a: Point, b: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const square = dx * dx + dy * dy;
  const share = square === 0 ? 0 : Math.max(0, Math.min(1, ((point.x - a.x) * dx + (point.y - a.y) * dy) / square));
  return Math.hypot(point.x - a.x - share * dx, point.y - a.y - share * dy);
}

/** Distance from a point to a polygon's border, mm. */
export function distanceToPolygon(point: Point, polygon: readonly Point[]): number {
  return polygon.reduce(
    (least, a, index) => Math.min(least, distanceToSegment(point, a, polygon[(index + 1) % polygon.length])),
    Infinity,
  );
}

/** Gap between two polygons, mm; 0 where they touch, overlap or one holds the other. */
export function gapBetween(first: readonly Point[], second: readonly Point[]): number {
  if (first.some((point) => insidePolygon(point, second)) || second.some((point) => insidePolygon(point, first)))
    return 0;
  if (polygonsCross(first, second)) return 0;
  const oneWay = Math.min(...first.map((point) => distanceToPolygon(point, second)));
  return Math.min(oneWay, ...second.map((point) => distanceToPolygon(point, first)));
}

function polygonsCross(first: readonly Point[], second: readonly Point[]): boolean {
  return first.some((a, i) =>
    second.some((c, j) => segmentsCross(a, first[(i + 1) % first.length], c, second[(j + 1) % second.length])),
  );
}

/** True when the open segments a-b and c-d cross at an inner point. */
export function segmentsCross(a: Point, b: Point, c: Point, d: Point): boolean {
  const side = (p: Point, q: Point, r: Point) => Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}
