import { distance, type Point } from '../plane.ts';
import type { Segment } from '../segments.ts';

const SAME_POINT_MM = 1e-4;

export interface ContourStep {
  readonly to: Point;
  /** Centre and sense of an arc; null for a straight step. */
  readonly arc: { readonly centre: Point; readonly clockwise: boolean } | null;
}

/** Segments of a closed contour: steps of no length are left out, an open end is closed by a line. */
export function contourSegments(start: Point, steps: readonly ContourStep[]): Segment[] {
  const segments: Segment[] = [];
  let from = start;
  for (const { to, arc } of steps) {
    if (arc) segments.push({ kind: 'arc', from, to, centre: arc.centre, clockwise: arc.clockwise });
    else if (distance(from, to) <= SAME_POINT_MM) continue;
    else segments.push({ kind: 'line', from, to });
    from = to;
  }
  if (distance(from, start) > SAME_POINT_MM) segments.push({ kind: 'line', from, to: start });
  return segments;
}
