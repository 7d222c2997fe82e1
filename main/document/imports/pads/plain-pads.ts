import type { GerberObject } from '../gerber/types.ts';
import { boxCentre, boxHeight, boxOfDiscs, boxWidth, type Disc, type Point } from '../plane.ts';
import { hullOf } from './collect.ts';

/** A pad of a layer without references: its middle, its sides, its hull. */
export interface PlainPad extends Point {
  readonly longMm: number;
  readonly shortMm: number;
  readonly hull: readonly Disc[];
}

const MAX_PAD_MM = 8;
const MIN_PAD_MM = 0.1;

/** Flashes and regions of pad size; strokes are text and drawings. */
export function plainPads(objects: readonly GerberObject[]): PlainPad[] {
  return objects.flatMap((object) => {
    if (!object.dark || object.kind === 'stroke') return [];
    const hull = hullOf(object);
    const box = boxOfDiscs(hull);
    const [width, height] = [boxWidth(box), boxHeight(box)];
    const longMm = Math.max(width, height);
    if (!(longMm > MIN_PAD_MM && longMm < MAX_PAD_MM)) return [];
    return [{ ...boxCentre(box), longMm, shortMm: Math.min(width, height), hull }];
  });
}

const SAME_SIZE_MM = 0.02;

export function sameSize(a: PlainPad, b: PlainPad): boolean {
  return Math.abs(a.longMm - b.longMm) < SAME_SIZE_MM && Math.abs(a.shortMm - b.shortMm) < SAME_SIZE_MM;
}
