import { type PlainPad, sameSize } from '../pads/plain-pads.ts';
import { distance, type Point } from '../plane.ts';

const MAX_PAIR_MM = 7;
const CELL_MM = 7;
const MAX_NEIGHBOURS = 5;

/** Midpoints of neighbouring pads of one size: the middles of two-pad parts are among them. */
export function pairMidpoints(pads: readonly PlainPad[]): Point[] {
  const cells = new Map<string, PlainPad[]>();
  const keyOf = (column: number, row: number) => `${column} ${row}`;
  for (const pad of pads) {
    const key = keyOf(Math.floor(pad.x / CELL_MM), Math.floor(pad.y / CELL_MM));
    cells.set(key, [...(cells.get(key) ?? []), pad]);
  }
  return pads.flatMap((pad) => {
    const near: PlainPad[] = [];
    for (let dx = -1; dx <= 1; dx++) {
      for (let dy = -1; dy <= 1; dy++) {
        near.push(...(cells.get(keyOf(Math.floor(pad.x / CELL_MM) + dx, Math.floor(pad.y / CELL_MM) + dy)) ?? []));
      }
    }
    return nearestTwins(pad, near).map((other) => ({ x: (pad.x + other.x) / 2, y: (pad.y + other.y) / 2 }));
  });
}

/** Each pair once: only partners further right (or above). */
function nearestTwins(pad: PlainPad, near: readonly PlainPad[]): PlainPad[] {
  return near
    .filter((other) => other !== pad && sameSize(pad, other))
    .map((other) => ({ other, gap: distance(pad, other) }))
    .filter(({ gap }) => gap > 0.05 && gap <= MAX_PAIR_MM)
    .sort((a, b) => a.gap - b.gap)
    .slice(0, MAX_NEIGHBOURS)
    .map(({ other }) => other)
    .filter((other) => other.x > pad.x || (other.x === pad.x && other.y > pad.y));
}
