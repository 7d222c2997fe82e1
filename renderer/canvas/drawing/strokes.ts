import type { Point } from '../../../shared-types/geometry.ts';

/** Geometry of drawn lines, on flat lists x, y, x, y in pixels. */

/** The same line with its first point again at the end. */
export const closed = (points: readonly number[]): number[] => [...points, points[0], points[1]];

/** A place on a line and the direction there (unit vector). */
export type OnLine = Point & { dx: number; dy: number };

/** A line with its lengths worked out once: places and pieces are found by halving. */
export type Measured = {
  length: number;
  /** Place at a length along the line; before the start or past the end: the end itself. */
  at(length: number): OnLine;
  /** The piece between two lengths; corners inside it are kept. */
  piece(from: number, to: number): number[];
};

export function measured(points: readonly number[]): Measured {
  const lengths = [0];
  for (let i = 2; i < points.length; i += 2)
    lengths.push(lengths[i / 2 - 1] + Math.hypot(points[i] - points[i - 2], points[i + 1] - points[i - 1]));
  const total = lengths[lengths.length - 1];
  /** Index of the last corner at or before a length, never the end corner. */
  const cornerBefore = (length: number): number => {
    let low = 0;
    let high = Math.max(0, lengths.length - 2);
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (lengths[middle] <= length) low = middle;
      else high = middle - 1;
    }
    return low;
  };
  const at = (length: number): OnLine => {
    const i = cornerBefore(Math.max(0, Math.min(total, length)));
    const edge = lengths[i + 1] - lengths[i];
    if (!(edge > 0)) return { x: points[2 * i], y: points[2 * i + 1], dx: 1, dy: 0 };
    const dx = (points[2 * i + 2] - points[2 * i]) / edge;
    const dy = (points[2 * i + 3] - points[2 * i + 1]) / edge;
    const on = Math.max(0, Math.min(edge, length - lengths[i]));
    return { x: points[2 * i] + dx * on, y: points[2 * i + 1] + dy * on, dx, dy };
  };
  return {
    length: total,
    at,
    piece(from, to) {
      const start = at(from);
      const piece = [start.x, start.y];
      for (let i = cornerBefore(from) + 1; i < lengths.length && lengths[i] < to; i++)
        if (lengths[i] > from) piece.push(points[2 * i], points[2 * i + 1]);
      const end = at(to);
      piece.push(end.x, end.y);
      return piece;
    },
  };
}

/** Cuts a line into dashes; corners inside a dash are kept. */
export function dashes(points: readonly number[], on: number, off: number): number[][] {
  const line = measured(points);
  const pieces: number[][] = [];
  for (let from = 0; from < line.length; from += on + off)
    pieces.push(line.piece(from, Math.min(line.length, from + on)));
  return pieces;
}

/** The line without the given stretches; `gaps` are [from, to] lengths along it, in order and apart. */
export function withGaps(line: Measured, gaps: readonly (readonly [number, number])[]): number[][] {
  const pieces: number[][] = [];
  let at = 0;
  for (const [from, to] of gaps) {
    if (from > at) pieces.push(line.piece(at, from));
    at = Math.max(at, to);
  }
  if (at < line.length) pieces.push(line.piece(at, line.length));
  return pieces;
}

/** A closed line as a wave along it: whole waves, so that it closes on itself. */
export function wavy(points: readonly number[], amplitude: number, wanted: number): number[] {
  const line = measured(closed(points));
  const waves = Math.max(4, Math.round(line.length / wanted));
  const steps = waves * 6;
  const wave: number[] = [];
  for (let step = 0; step < steps; step++) {
    const at = line.at((step / steps) * line.length);
    const out = amplitude * Math.sin((step / 6) * 2 * Math.PI);
    wave.push(at.x + at.dy * out, at.y - at.dx * out);
  }
  return wave;
}
