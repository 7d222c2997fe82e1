import type { PenStroke } from '../outline/graph.ts';
import { distance, type Point } from '../plane.ts';
import type { Segment } from '../segments.ts';
import { scaleBy } from './affine.ts';
import { curvePoints } from './curve-points.ts';
import { mapShape } from './shapes.ts';
import type { DrawnShape, Shape } from './types.ts';

type Ellipse = Extract<Shape, { kind: 'ellipse' }>;

/** Chords of curves that are no arcs stay within this of them. */
const CURVE_TOLERANCE_MM = 0.005;
const MAX_STROKES = 400_000;

/** Strokes in mm: lines and circular arcs as they are, other curves as chords. Null when there are too many. */
export function strokesOf(shapes: readonly DrawnShape[], mmPerUnit: number): PenStroke[] | null {
  const matrix = scaleBy(mmPerUnit, mmPerUnit);
  const strokes: PenStroke[] = [];
  for (const { shape } of shapes) {
    for (const segment of segmentsOf(mapShape(matrix, shape))) strokes.push({ segment, widthMm: 0 });
    if (strokes.length > MAX_STROKES) return null;
  }
  return strokes;
}

function segmentsOf(shape: Shape): Segment[] {
  if (shape.kind === 'line') return [shape];
  if (shape.kind === 'curve') return chords(curvePoints(shape, CURVE_TOLERANCE_MM));
  return isCircular(shape) ? [arcOf(shape)] : chords(ellipsePoints(shape));
}

function chords(points: readonly Point[]): Segment[] {
  return points.slice(1).map((to, index) => ({ kind: 'line', from: points[index], to }));
}

/** Axes square and equal to a ten-thousandth: the sums of mapped radii carry rounding dust. */
function isCircular({ u, v }: Ellipse): boolean {
  const [a, b] = [Math.hypot(u.x, u.y), Math.hypot(v.x, v.y)];
  return Math.abs(a - b) <= 1e-4 * a && Math.abs(u.x * v.x + u.y * v.y) <= 1e-4 * a * b;
}

const pointAt = ({ centre, u, v }: Ellipse, t: number): Point => ({
  x: centre.x + u.x * Math.cos(t) + v.x * Math.sin(t),
  y: centre.y + u.y * Math.cos(t) + v.y * Math.sin(t),
});

const FULL = 2 * Math.PI;

function arcOf(ellipse: Ellipse): Segment {
  const { centre, u, v, start, sweep } = ellipse;
  const from = pointAt(ellipse, start);
  const to = Math.abs(sweep) >= FULL - 1e-9 ? from : pointAt(ellipse, start + sweep);
  const mirrored = u.x * v.y - u.y * v.x < 0;
  return { kind: 'arc', from, to, centre, clockwise: sweep < 0 !== mirrored };
}

function ellipsePoints(ellipse: Ellipse): Point[] {
  const { u, v, start, sweep } = ellipse;
  const radius = Math.max(Math.hypot(u.x, u.y), Math.hypot(v.x, v.y));
  const step = 2 * Math.acos(Math.max(0.5, 1 - CURVE_TOLERANCE_MM / Math.max(radius, CURVE_TOLERANCE_MM)));
  const count = Math.min(2000, Math.max(2, Math.ceil(Math.abs(sweep) / step)));
  const points = Array.from({ length: count + 1 }, (_, index) => pointAt(ellipse, start + (sweep * index) / count));
  if (Math.abs(sweep) >= FULL - 1e-9) points[count] = points[0];
  return points.filter((point, index) => index === 0 || distance(point, points[index - 1]) > 0);
}
