import type { Point } from '../../../shared-types/geometry.ts';

/** Geometry of drawn lines, on flat lists x, y, x, y in pixels. */

/** The same line with its first point again at the end. */
export const closed = (points: readonly number[]): number[] => [...points, points[0], points[1]];

export function lengthOf(points: readonly number[]): number {
  let length = 0;
  for (let i = 2; i < points.length; i += 2)
    length += Math.hypot(points[i] - points[i - 2], points[i + 1] - points[i - 1]);
  return length;
}

/** Point and direction (unit vector) at a length along a line. */
export function alongLine(points: readonly number[], at: number): Point & { dx: number; dy: number } {
  let left = at;
  for (let i = 2; i < points.length; i += 2) {
    const dx = points[i] - points[i - 2];
    const dy = points[i + 1] - points[i - 1];
    const length = Math.hypot(dx, dy);
    if (length === 0) continue;
    if (left <= length || i === points.length - 2) {
      const share = Math.min(1, left / length);
      return { x: points[i - 2] + dx * share, y: points[i - 1] + dy * share, dx: dx / length, dy: dy / length };
    }
    left -= length;
  }
  return { x: points[0], y: points[1], dx: 1, dy: 0 };
}

/** The stretch of a line between two lengths along it. */
export function stretch(points: readonly number[], from: number, to: number): number[] {
  const start = alongLine(points, Math.max(0, from));
  const piece = [start.x, start.y];
  let walked = 0;
  for (let i = 2; i < points.length; i += 2) {
    walked += Math.hypot(points[i] - points[i - 2], points[i + 1] - points[i - 1]);
    if (walked > from && walked < to) piece.push(points[i], points[i + 1]);
    if (walked >= to) break;
  }
  const end = alongLine(points, to);
  piece.push(end.x, end.y);
  return piece;
}

/** Cuts a line into dashes; corners inside a dash are kept. */
export function dashes(points: readonly number[], on: number, off: number): number[][] {
  const total = lengthOf(points);
  const pieces: number[][] = [];
  for (let at = 0; at < total; at += on + off) pieces.push(stretch(points, at, Math.min(total, at + on)));
  return pieces;
}

/** The line without the given stretches; `gaps` are [from, to] lengths along it, in order and apart. */
export function withGaps(points: readonly number[], gaps: readonly (readonly [number, number])[]): number[][] {
  const total = lengthOf(points);
  const pieces: number[][] = [];
  let at = 0;
  for (const [from, to] of gaps) {
    if (from > at) pieces.push(stretch(points, at, from));
    at = Math.max(at, to);
  }
  if (at < total) pieces.push(stretch(points, at, total));
  return pieces;
}

/** A closed line as a wave along it: whole waves, so that it closes on itself. */
export function wavy(points: readonly number[], amplitude: number, wanted: number): number[] {
  const ring = closed(points);
  const total = lengthOf(ring);
  const waves = Math.max(4, Math.round(total / wanted));
  const steps = waves * 6;
  const wave: number[] = [];
  for (let step = 0; step < steps; step++) {
    const at = alongLine(ring, (step / steps) * total);
    const out = amplitude * Math.sin((step / 6) * 2 * Math.PI);
    wave.push(at.x + at.dy * out, at.y - at.dx * out);
  }
  return wave;
}
