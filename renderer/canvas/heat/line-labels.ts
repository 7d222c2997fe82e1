import type { Point } from '../../../shared-types/geometry.ts';
import { overlap, type PixelBox, textBox } from '../drawing/boxes.ts';
import { textWidth } from '../drawing/marks.ts';
import { type Measured, measured, type OnLine, withGaps } from '../drawing/strokes.ts';

/** A number on a line: where its middle stands and how it is turned, degrees clockwise on screen, never upside down. */
export type LineLabel = Point & { text: string; turnDeg: number };

const SPACING_PX = 320;

/**
 * Puts a number into a line (scene pixels) about every 320 px, each in a gap of the line, where the line is
 * straightest and no other number stands. `taken` gathers the boxes of the numbers. Short lines get none.
 */
export function labelLine(
  points: readonly number[],
  text: string,
  taken: PixelBox[],
  allowed: (at: Point) => boolean,
): { labels: LineLabel[]; pieces: number[][] } {
  const line = measured(points);
  const total = line.length;
  const gap = textWidth(text) + 8;
  const labels: LineLabel[] = [];
  const gaps: [number, number][] = [];
  const count = total < gap * 3 ? 0 : Math.max(1, Math.round(total / SPACING_PX));
  for (let i = 0; i < count; i++) {
    const best = bestPlace(line, ((i + 0.5) / count) * total, gap, (at) => {
      const box = textBox(at, text, Math.atan2(at.dy, at.dx));
      return roundAbout(at, gap / 2).every(allowed) && !taken.some((other) => overlap(box, other));
    });
    if (best === null) continue;
    const at = line.at(best);
    const angle = Math.atan2(at.dy, at.dx);
    taken.push(textBox(at, text, angle));
    labels.push({ x: at.x, y: at.y, text, turnDeg: uprightDegrees(angle) });
    gaps.push([best - gap / 2, best + gap / 2]);
  }
  return { labels, pieces: withGaps(line, gaps) };
}

/** The middle of a number, its two ends, and the places over and under it. */
const roundAbout = ({ x, y, dx, dy }: OnLine, half: number): Point[] => [
  { x, y },
  { x: x + dx * half, y: y + dy * half },
  { x: x - dx * half, y: y - dy * half },
  { x: x - dy * 8, y: y + dx * 8 },
  { x: x + dy * 8, y: y - dx * 8 },
];

/** The length along the line, near the wanted one, where the number's stretch bends least; null: no place is free. */
function bestPlace(line: Measured, wanted: number, gap: number, free: (at: OnLine) => boolean): number | null {
  let best: number | null = null;
  let leastBend = 0.9;
  for (const shift of [0, 18, -18, 40, -40, 70, -70, 105, -105, 150, -150]) {
    const at = wanted + shift;
    if (at < gap * 0.6 || at > line.length - gap * 0.6) continue;
    const before = line.at(at - gap / 2);
    const after = line.at(at + gap / 2);
    const bend = 1 - (before.dx * after.dx + before.dy * after.dy) + Math.abs(shift) / 2000;
    if (bend >= leastBend || !free(line.at(at))) continue;
    leastBend = bend;
    best = at;
  }
  return best;
}

function uprightDegrees(angle: number): number {
  const degrees = (angle * 180) / Math.PI;
  if (degrees > 90) return degrees - 180;
  return degrees <= -90 ? degrees + 180 : degrees;
}
