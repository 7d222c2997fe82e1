import type { PeakC } from '../../shared-types/evaluation.ts';
import type { HeatState } from './heat-state.ts';
import { createStencil, fillBodyPoints, fillStencil, POINT_NUMBERS, type Stencil } from './interpolation.ts';
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
  stencil: Stencil;
  points: Float64Array;
};

export function createPeakScratch(state: HeatState): PeakScratch {
  return {
    entryOf: new Int32Array(state.grid.cellCount).fill(-1),
    stencil: createStencil(),
    points: new Float64Array(POINT_NUMBERS),
  };
}

type Extremes = { max: number; min: number };

function fold(extremes: Extremes, value: number): void {
  if (value > extremes.max) extremes.max = value;
  if (value < extremes.min) extremes.min = value;
}

const empty = (): Extremes => ({ max: Number.NEGATIVE_INFINITY, min: Number.POSITIVE_INFINITY });

type Found = Record<'body' | 'skin' | 'joint' | 'shadow' | 'shadowSkin', Extremes>;

/** Folds the interpolated values at one point in; cells without a value are left out and the rest is scaled up. */
function foldPoint(state: HeatState, { stencil, entryOf }: PeakScratch, faceOffset: number, found: Found): void {
  const { peak, peakSkin, shadowPeak, shadowPeakSkin } = state.body;
  let onBody = 0;
  let onBoard = 0;
  let body = 0;
  let skin = 0;
  let shadow = 0;
  let shadowSkin = 0;
  let joint = 0;
  for (let place = 0; place < stencil.count; place++) {
    const cell = stencil.cells[place]!;
    const weight = stencil.weights[place]!;
    if (state.grid.exists[cell]) {
      onBoard += weight;
      joint += weight * state.peak[cell + faceOffset]!;
    }
    const entry = entryOf[cell]!;
    if (entry < 0) continue;
    onBody += weight;
    body += weight * peak[entry]!;
    skin += weight * peakSkin[entry]!;
    shadow += weight * shadowPeak[entry]!;
    shadowSkin += weight * shadowPeakSkin[entry]!;
  }
  if (onBody === 0) return;
  fold(found.body, body / onBody);
  fold(found.skin, skin / onBody);
  fold(found.shadow, shadow / onBody);
  fold(found.shadowSkin, shadowSkin / onBody);
  fold(found.joint, joint / onBoard);
}

/** Peaks of the body that has place `order` in the entries. */
export function bodyPeaks(state: HeatState, scratch: PeakScratch, body: SceneBody, order: number): BodyPeaks {
  const { entries, grid } = state;
  const { entryOf, stencil, points } = scratch;
  const first = entries.bodyStart[order]!;
  const end = entries.bodyStart[order + 1]!;
  for (let entry = first; entry < end; entry++) entryOf[entries.cell[entry]!] = entry;
  const faceOffset = first < entries.upperEnd ? 0 : grid.cellCount;
  const found: Found = { body: empty(), skin: empty(), joint: empty(), shadow: empty(), shadowSkin: empty() };
  const numbers = fillBodyPoints(body, points);
  for (let point = 0; point < numbers; point += 2) {
    fillStencil(stencil, grid, points[point]!, points[point + 1]!);
    foldPoint(state, scratch, faceOffset, found);
  }
  for (let entry = first; entry < end; entry++) entryOf[entries.cell[entry]!] = -1;
  const mean = (values: Float64Array, onFaces: boolean) => meanOf(state, first, end, values, onFaces);
  const trial = body.trialShield !== null && !body.metal;
  return {
    body: { maxC: found.body.max, minC: found.body.min, meanC: mean(state.body.peak, false) },
    skin: { maxC: found.skin.max, minC: found.skin.min, meanC: mean(state.body.peakSkin, false) },
    joint: { maxC: found.joint.max, minC: found.joint.min, meanC: mean(state.peak, true) },
    shieldedBodyC: trial ? found.shadow.max : found.body.max,
    shieldedSkinC: trial ? found.shadowSkin.max : found.skin.max,
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
