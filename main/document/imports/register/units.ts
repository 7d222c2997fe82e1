import type { LengthWord } from '../placements/columns.ts';
import { boxHeight, boxOfPoints, boxWidth, distance, median, type Point } from '../plane.ts';

/** Units that placement files leave unsaid, likeliest first. */
export const UNSAID_UNITS: readonly LengthWord[] = ['mm', 'mil', 'inch'];

const MIN_BOARD_MM = 5;
const MAX_BOARD_MM = 800;
const MIN_PITCH_MM = 0.4;
const MAX_PITCH_MM = 25;
const SAMPLE = 400;

/** True when parts this far apart on a board this large make sense in millimetres. Common practice, no source. */
export function plausibleMm(points: readonly Point[]): boolean {
  if (points.length < 2) return true;
  const box = boxOfPoints(points);
  const size = Math.max(boxWidth(box), boxHeight(box));
  const pitch = typicalPitch(points);
  return size >= MIN_BOARD_MM && size <= MAX_BOARD_MM && pitch >= MIN_PITCH_MM && pitch <= MAX_PITCH_MM;
}

/** Median distance from a part to its nearest neighbour, mm. */
export function typicalPitch(points: readonly Point[]): number {
  const step = Math.max(1, Math.floor(points.length / SAMPLE));
  const nearest: number[] = [];
  for (let index = 0; index < points.length; index += step) {
    let best = Number.POSITIVE_INFINITY;
    for (let other = 0; other < points.length; other++) {
      const gap = distance(points[index], points[other]);
      if (other !== index && gap > 0 && gap < best) best = gap;
    }
    if (best < Number.POSITIVE_INFINITY) nearest.push(best);
  }
  return median(nearest);
}
