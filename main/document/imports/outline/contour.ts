import type { Contour } from '../../../../shared-types/geometry.ts';
import { arcSweep, isFullCircle, type Segment } from '../segments.ts';

/** A loop as the board's contour, moved by (dx, dy); arcs stay arcs (bulge = tan of a quarter of the sweep). */
export function contourOf(segments: readonly Segment[], dx: number, dy: number): Contour {
  return segments.flatMap(splitWide).map((segment) => {
    const corner = { x: tidy(segment.from.x + dx), y: tidy(segment.from.y + dy) };
    if (segment.kind === 'line') return corner;
    return { ...corner, bulge: Math.tan(arcSweep(segment) / 4) };
  });
}

/** A full circle has no chord: it is split into halves; so are arcs close to it, whose bulge would be huge. */
function splitWide(segment: Segment): Segment[] {
  if (segment.kind === 'line') return [segment];
  const sweep = arcSweep(segment);
  if (!isFullCircle(segment) && Math.abs(sweep) < 1.5 * Math.PI) return [segment];
  const { from, to, centre, clockwise } = segment;
  const radius = Math.hypot(from.x - centre.x, from.y - centre.y);
  const angle = Math.atan2(from.y - centre.y, from.x - centre.x) + sweep / 2;
  const middle = { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
  return [
    { kind: 'arc', from, to: middle, centre, clockwise },
    { kind: 'arc', from: middle, to, centre, clockwise },
  ];
}

/** Nanometre grid: finer digits are rounding dust of the unit conversion. */
export function tidy(mm: number): number {
  const rounded = Math.round(mm * 1e6) / 1e6;
  return rounded === 0 ? 0 : rounded;
}
