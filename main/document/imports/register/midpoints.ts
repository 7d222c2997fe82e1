import type { GerberObject } from '../gerber/types.ts';
import { hullOf } from '../pads/collect.ts';
import { boxCentre, boxHeight, boxOfDiscs, boxWidth, distance, type Point } from '../plane.ts';

interface PlainPad extends Point {
  readonly longMm: number;
  readonly shortMm: number;
}

const MAX_PAD_MM = 8;
const MAX_PAIR_MM = 7;
const CELL_MM = 7;
const MAX_NEIGHBOURS = 5;

/** Pads of a layer without references: flashes and regions of pad size. */
function plainPads(objects: readonly GerberObject[]): PlainPad[] {
  return objects.flatMap((object) => {
    if (!object.dark || object.kind === 'stroke') return [];
    const box = boxOfDiscs(hullOf(object));
    const [width, height] = [boxWidth(box), boxHeight(box)];
    const longMm = Math.max(width, height);
    if (!(longMm > 0.1 && longMm < MAX_PAD_MM)) return [];
    return [{ ...boxCentre(box), longMm, shortMm: Math.min(width, height) }];
  });
}

/** Midpoints of neighbouring pads of one size: the middles of two-pad parts are among them. */
export function pairMidpoints(objects: readonly GerberObject[]): Point[] {
  const pads = plainPads(objects);
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
    .filter(
      (other) =>
        other !== pad && Math.abs(other.longMm - pad.longMm) < 0.02 && Math.abs(other.shortMm - pad.shortMm) < 0.02,
    )
    .map((other) => ({ other, gap: distance(pad, other) }))
    .filter(({ gap }) => gap > 0.05 && gap <= MAX_PAIR_MM)
    .sort((a, b) => a.gap - b.gap)
    .slice(0, MAX_NEIGHBOURS)
    .map(({ other }) => other)
    .filter((other) => other.x > pad.x || (other.x === pad.x && other.y > pad.y));
}
