import type { PeakC } from '../../shared-types/evaluation.ts';
import type { HeatState } from './heat-state.ts';
import { bodyPoints, createStencil, fillStencil, type Stencil } from './interpolation.ts';
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

/** Per cell of a grid: where its value stands, -1 without one. Reused from body to body. */
export type PeakScratch = { onBoard: Int32Array; entryOf: Int32Array; stencil: Stencil };

export function createPeakScratch(state: HeatState): PeakScratch {
  const onBoard = new Int32Array(state.grid.cellCount);
  for (let cell = 0; cell < onBoard.length; cell++) onBoard[cell] = state.grid.exists[cell] ? cell : -1;
  return { onBoard, entryOf: new Int32Array(state.grid.cellCount).fill(-1), stencil: createStencil() };
}

type Extremes = { max: number; min: number };

function fold(extremes: Extremes, value: number): void {
  if (value > extremes.max) extremes.max = value;
  if (value < extremes.min) extremes.min = value;
}

/** Interpolated value; each cell of the stencil reads `values[index[cell] + offset]`. */
function read(stencil: Stencil, index: Int32Array, offset: number, values: Float64Array): number {
  let sum = 0;
  for (let place = 0; place < stencil.count; place++) {
    sum += stencil.weights[place]! * values[index[stencil.cells[place]!]! + offset]!;
  }
  return sum;
}

const empty = (): Extremes => ({ max: Number.NEGATIVE_INFINITY, min: Number.POSITIVE_INFINITY });

/** Peaks of the body that has place `order` in the entries. */
export function bodyPeaks(state: HeatState, scratch: PeakScratch, body: SceneBody, order: number): BodyPeaks {
  const { entries, grid, peak } = state;
  const { entryOf, onBoard, stencil } = scratch;
  const first = entries.bodyStart[order]!;
  const end = entries.bodyStart[order + 1]!;
  for (let entry = first; entry < end; entry++) entryOf[entries.cell[entry]!] = entry;
  const faceOffset = first < entries.upperEnd ? 0 : grid.cellCount;
  const { peak: hot, peakSkin, shadowPeak, shadowPeakSkin } = state.body;
  const found = { body: empty(), skin: empty(), joint: empty(), shadow: empty(), shadowSkin: empty() };
  const points = bodyPoints(body);
  for (let point = 0; point < points.length; point += 2) {
    fillStencil(stencil, grid, points[point]!, points[point + 1]!, entryOf);
    if (stencil.count === 0) continue;
    fold(found.body, read(stencil, entryOf, 0, hot));
    fold(found.skin, read(stencil, entryOf, 0, peakSkin));
    fold(found.shadow, read(stencil, entryOf, 0, shadowPeak));
    fold(found.shadowSkin, read(stencil, entryOf, 0, shadowPeakSkin));
    fillStencil(stencil, grid, points[point]!, points[point + 1]!, onBoard);
    fold(found.joint, read(stencil, onBoard, faceOffset, peak));
  }
  for (let entry = first; entry < end; entry++) entryOf[entries.cell[entry]!] = -1;
  const mean = (values: Float64Array, onFaces: boolean) => meanOf(state, first, end, values, onFaces);
  const trial = body.trialShield !== null && !body.metal;
  return {
    body: { maxC: found.body.max, minC: found.body.min, meanC: mean(hot, false) },
    skin: { maxC: found.skin.max, minC: found.skin.min, meanC: mean(peakSkin, false) },
    joint: { maxC: found.joint.max, minC: found.joint.min, meanC: mean(peak, true) },
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
