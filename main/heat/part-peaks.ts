import type { PeakC } from '../../shared-types/evaluation.ts';
import type { HeatState } from './heat-state.ts';
import { fillBodyPoints, POINT_NUMBERS } from './interpolation.ts';
import type { SceneBody } from './scene.ts';

/** Peaks of one body in one run, from its cells by interpolation at 16 x 16 points; °C. */
export type BodyPeaks = {
  body: PeakC;
  skin: PeakC;
  joint: PeakC;
  /** The same body under its trial shield; its own peaks where it has none. */
  shieldedBodyC: number;
  shieldedSkinC: number;
};

/** Working arrays, reused from body to body. */
export type PeakScratch = {
  /** Per cell: the entry of the body at hand, -1 without one. */
  entryOf: Int32Array;
  points: Float64Array;
};

export function createPeakScratch(state: HeatState): PeakScratch {
  return {
    entryOf: new Int32Array(state.grid.cellCount).fill(-1),
    points: new Float64Array(POINT_NUMBERS),
  };
}

type Range = { max: number; min: number };
type Found = { body: Range; skin: Range; joint: Range; shadowMax: number; shadowSkinMax: number };

/**
 * Highest and lowest interpolated values over the first `numbers` / 2 points; cells without a value are left out and the
 * rest is scaled up. One loop with plain sums: a board of 3,000 parts has some three million corners to read.
 */
function extremes(state: HeatState, scratch: PeakScratch, faceOffset: number, numbers: number): Found {
  const { grid, body, peak: facePeak } = state;
  const { peak, peakSkin, shadowPeak, shadowPeakSkin } = body;
  const { entryOf, points } = scratch;
  const { exists, columns, rows, cellM, originXM, originYM } = grid;
  const found: Found = { body: none(), skin: none(), joint: none(), shadowMax: -Infinity, shadowSkinMax: -Infinity };
  for (let point = 0; point < numbers; point += 2) {
    const along = (points[point]! - originXM) / cellM - 0.5;
    const across = (points[point + 1]! - originYM) / cellM - 0.5;
    const column = Math.floor(along);
    const row = Math.floor(across);
    let onBody = 0;
    let onBoard = 0;
    let bodySum = 0;
    let skin = 0;
    let shadow = 0;
    let shadowSkin = 0;
    let joint = 0;
    for (let corner = 0; corner < 4; corner++) {
      const i = column + (corner & 1);
      const j = row + (corner >> 1);
      if (i < 0 || j < 0 || i >= columns || j >= rows) continue;
      const weight = (1 - Math.abs(along - i)) * (1 - Math.abs(across - j));
      if (weight <= 0) continue;
      const cell = j * columns + i;
      if (exists[cell]) {
        onBoard += weight;
        joint += weight * facePeak[cell + faceOffset]!;
      }
      const entry = entryOf[cell]!;
      if (entry < 0) continue;
      onBody += weight;
      bodySum += weight * peak[entry]!;
      skin += weight * peakSkin[entry]!;
      shadow += weight * shadowPeak[entry]!;
      shadowSkin += weight * shadowPeakSkin[entry]!;
    }
    if (onBody === 0) continue;
    widen(found.body, bodySum / onBody);
    widen(found.skin, skin / onBody);
    widen(found.joint, joint / onBoard);
    if (shadow / onBody > found.shadowMax) found.shadowMax = shadow / onBody;
    if (shadowSkin / onBody > found.shadowSkinMax) found.shadowSkinMax = shadowSkin / onBody;
  }
  return found;
}

const none = (): Range => ({ max: Number.NEGATIVE_INFINITY, min: Number.POSITIVE_INFINITY });

function widen(range: Range, value: number): void {
  if (value > range.max) range.max = value;
  if (value < range.min) range.min = value;
}

/** Peaks of the body that has place `order` in the entries. */
export function bodyPeaks(state: HeatState, scratch: PeakScratch, body: SceneBody, order: number): BodyPeaks {
  const { entries, grid } = state;
  const { entryOf, points } = scratch;
  const first = entries.bodyStart[order]!;
  const end = entries.bodyStart[order + 1]!;
  for (let entry = first; entry < end; entry++) entryOf[entries.cell[entry]!] = entry;
  const faceOffset = first < entries.upperEnd ? 0 : grid.cellCount;
  const found = extremes(state, scratch, faceOffset, fillBodyPoints(body, points));
  for (let entry = first; entry < end; entry++) entryOf[entries.cell[entry]!] = -1;
  const mean = (values: Float64Array, onFaces: boolean) => meanOf(state, first, end, values, onFaces);
  const trial = body.trialShield !== null && !body.metal;
  return {
    body: { maxC: found.body.max, minC: found.body.min, meanC: mean(state.body.peak, false) },
    skin: { maxC: found.skin.max, minC: found.skin.min, meanC: mean(state.body.peakSkin, false) },
    joint: { maxC: found.joint.max, minC: found.joint.min, meanC: mean(state.peak, true) },
    shieldedBodyC: trial ? found.shadowMax : found.body.max,
    shieldedSkinC: trial ? found.shadowSkinMax : found.skin.max,
  };
}

/** Share-weighted mean of a body's per-cell peaks. */
function meanOf(state: HeatState, first: number, end: number, values: Float64Array, onFaces: boolean): number {
  const { share, face } = state.entries;
  let weighted = 0;
  let weight = 0;
  for (let entry = first; entry < end; entry++) {
    weighted += share[entry]! * values[onFaces ? face[entry]! : entry]!;
    weight += share[entry]!;
  }
  return weighted / weight;
}
