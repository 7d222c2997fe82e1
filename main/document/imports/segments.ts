import { type Box, boxOfPoints, distance, EMPTY_BOX, joinBoxes, type Point } from './plane.ts';

/** A straight line or a circular arc in millimetres. An arc whose ends coincide is a full circle. */
export type Segment =
  | { readonly kind: 'line'; readonly from: Point; readonly to: Point }
  | {
      readonly kind: 'arc';
      readonly from: Point;
      readonly to: Point;
      readonly centre: Point;
      readonly clockwise: boolean;
    };

type Arc = Extract<Segment, { kind: 'arc' }>;

const FULL = 2 * Math.PI;
const SAME_POINT_MM = 1e-6;

export function isFullCircle(segment: Segment): boolean {
  return segment.kind === 'arc' && distance(segment.from, segment.to) <= SAME_POINT_MM;
}

export function reverseSegment(segment: Segment): Segment {
  if (segment.kind === 'line') return { kind: 'line', from: segment.to, to: segment.from };
  return { ...segment, from: segment.to, to: segment.from, clockwise: !segment.clockwise };
}

/** Applies a similarity to a segment; `mirrored` says that the map turns clockwise into counter-clockwise. */
export function mapSegment(segment: Segment, map: (point: Point) => Point, mirrored: boolean): Segment {
  const from = map(segment.from);
  const to = map(segment.to);
  if (segment.kind === 'line') return { kind: 'line', from, to };
  return { kind: 'arc', from, to, centre: map(segment.centre), clockwise: segment.clockwise !== mirrored };
}

/** Signed sweep in radians: positive counter-clockwise, never 0 (ends that coincide make a full circle). */
export function arcSweep(arc: Arc): number {
  const start = Math.atan2(arc.from.y - arc.centre.y, arc.from.x - arc.centre.x);
  const end = Math.atan2(arc.to.y - arc.centre.y, arc.to.x - arc.centre.x);
  if (isFullCircle(arc)) return arc.clockwise ? -FULL : FULL;
  const forward = (((end - start) % FULL) + FULL) % FULL;
  if (forward === 0) return arc.clockwise ? -FULL : FULL;
  return arc.clockwise ? forward - FULL : forward;
}

export function arcRadius(arc: Arc): number {
  return (distance(arc.from, arc.centre) + distance(arc.to, arc.centre)) / 2;
}

/** The point half-way along the segment. */
export function segmentMiddle(segment: Segment): Point {
  if (segment.kind === 'line') {
    return { x: (segment.from.x + segment.to.x) / 2, y: (segment.from.y + segment.to.y) / 2 };
  }
  const start = Math.atan2(segment.from.y - segment.centre.y, segment.from.x - segment.centre.x);
  const angle = start + arcSweep(segment) / 2;
  const radius = arcRadius(segment);
  return { x: segment.centre.x + radius * Math.cos(angle), y: segment.centre.y + radius * Math.sin(angle) };
}

/** Exact extents of the centre line: for arcs the quadrant points that the sweep passes count. */
export function segmentBox(segment: Segment): Box {
  const ends = boxOfPoints([segment.from, segment.to]);
  if (segment.kind === 'line') return ends;
  const start = Math.atan2(segment.from.y - segment.centre.y, segment.from.x - segment.centre.x);
  const sweep = arcSweep(segment);
  const radius = arcRadius(segment);
  const passed: Point[] = [];
  for (let quarter = 0; quarter < 4; quarter++) {
    const angle = (quarter * Math.PI) / 2;
    const ahead = sweep > 0 ? angle - start : start - angle;
    if (((ahead % FULL) + FULL) % FULL <= Math.abs(sweep)) {
      passed.push({
        x: segment.centre.x + radius * Math.round(Math.cos(angle)),
        y: segment.centre.y + radius * Math.round(Math.sin(angle)),
      });
    }
  }
  return joinBoxes(ends, boxOfPoints(passed));
}

export function segmentsBox(segments: readonly Segment[]): Box {
  return segments.reduce((box, segment) => joinBoxes(box, segmentBox(segment)), EMPTY_BOX);
}

/** Points along the segment without its last one; chords stay within `toleranceMm` of the arc. */
export function flattenSegment(segment: Segment, toleranceMm: number): Point[] {
  if (segment.kind === 'line') return [segment.from];
  const radius = arcRadius(segment);
  const sweep = arcSweep(segment);
  const step = 2 * Math.acos(Math.max(0.5, 1 - toleranceMm / Math.max(radius, toleranceMm)));
  const count = Math.min(720, Math.max(2, Math.ceil(Math.abs(sweep) / step)));
  const start = Math.atan2(segment.from.y - segment.centre.y, segment.from.x - segment.centre.x);
  const points: Point[] = [segment.from];
  for (let index = 1; index < count; index++) {
    const angle = start + (sweep * index) / count;
    points.push({ x: segment.centre.x + radius * Math.cos(angle), y: segment.centre.y + radius * Math.sin(angle) });
  }
  return points;
}

/** A closed chain of segments as a polygon, each vertex once. */
export function flattenLoop(segments: readonly Segment[], toleranceMm: number): Point[] {
  return segments.flatMap((segment) => flattenSegment(segment, toleranceMm));
}

/** Signed area (shoelace): positive for counter-clockwise polygons. */
export function polygonArea(points: readonly Point[]): number {
  let twice = 0;
  for (let index = 0; index < points.length; index++) {
    const a = points[index]!;
    const b = points[(index + 1) % points.length]!;
    twice += a.x * b.y - b.x * a.y;
  }
  return twice / 2;
}

/** Even-odd rule; a point on the border may fall on either side. */
export function polygonHolds(points: readonly Point[], { x, y }: Point): boolean {
  let inside = false;
  for (let index = 0, last = points.length - 1; index < points.length; last = index++) {
    const a = points[index]!;
    const b = points[last]!;
    if (a.y > y !== b.y > y && x < ((b.x - a.x) * (y - a.y)) / (b.y - a.y) + a.x) inside = !inside;
  }
  return inside;
}
