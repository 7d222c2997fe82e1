import type { PeakC } from '../../shared-types/evaluation.ts';
import type { HeatGrid } from './grid.ts';
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

/** Numbers of a cell in the patch under a body: which it has (1 or 0), and then those. */
const ON_BODY = 0;
const ON_BOARD = 1;
const BODY = 2;
const SKIN = 3;
const SHADOW = 4;
const SHADOW_SKIN = 5;
const JOINT = 6;
const PATCH = 8;

/** Working arrays, reused from body to body. */
export type PeakScratch = {
  points: Float64Array;
  /** The cells round a body with their peaks side by side, zeros where there are none: `PATCH` numbers a cell. */
  patch: Float64Array;
};

export function createPeakScratch(): PeakScratch {
  return { points: new Float64Array(POINT_NUMBERS), patch: new Float64Array(0) };
}

type Range = { max: number; min: number };
type Found = { body: Range; skin: Range; joint: Range; shadowMax: number; shadowSkinMax: number };
/** Cells of the grid that a patch covers; they may lie beyond its borders. */
type Patch = { firstColumn: number; firstRow: number; columns: number; rows: number };

/** The cells whose values any of the points asks for. */
function patchUnder({ cellM, originXM, originYM }: HeatGrid, points: Float64Array, numbers: number): Patch {
  let [leastX, mostX, leastY, mostY] = [points[0]!, points[0]!, points[1]!, points[1]!];
  for (let point = 2; point < numbers; point += 2) {
    leastX = Math.min(leastX, points[point]!);
    mostX = Math.max(mostX, points[point]!);
    leastY = Math.min(leastY, points[point + 1]!);
    mostY = Math.max(mostY, points[point + 1]!);
  }
  const firstColumn = Math.floor((leastX - originXM) / cellM - 0.5);
  const firstRow = Math.floor((leastY - originYM) / cellM - 0.5);
  const columns = Math.floor((mostX - originXM) / cellM - 0.5) + 2 - firstColumn;
  const rows = Math.floor((mostY - originYM) / cellM - 0.5) + 2 - firstRow;
  return { firstColumn, firstRow, columns, rows };
}

/** Lays the peaks under a body side by side. */
function fillPatch(state: HeatState, scratch: PeakScratch, area: Patch, first: number, end: number): void {
  const { grid, entries, body, peak } = state;
  const numbers = area.columns * area.rows * PATCH;
  if (scratch.patch.length < numbers) scratch.patch = new Float64Array(2 * numbers);
  const { patch } = scratch;
  patch.fill(0, 0, numbers);
  const faceOffset = first < entries.upperEnd ? 0 : grid.cellCount;
  for (let row = 0; row < area.rows; row++) {
    const gridRow = row + area.firstRow;
    if (gridRow < 0 || gridRow >= grid.rows) continue;
    for (let column = 0; column < area.columns; column++) {
      const gridColumn = column + area.firstColumn;
      const cell = gridRow * grid.columns + gridColumn;
      if (gridColumn < 0 || gridColumn >= grid.columns || !grid.exists[cell]) continue;
      const at = (row * area.columns + column) * PATCH;
      patch[at + ON_BOARD] = 1;
      patch[at + JOINT] = peak[cell + faceOffset]!;
    }
  }
  for (let entry = first; entry < end; entry++) {
    const cell = entries.cell[entry]!;
    const column = (cell % grid.columns) - area.firstColumn;
    const row = Math.floor(cell / grid.columns) - area.firstRow;
    if (column < 0 || row < 0 || column >= area.columns || row >= area.rows) continue;
    const at = (row * area.columns + column) * PATCH;
    patch[at + ON_BODY] = 1;
    patch[at + BODY] = body.peak[entry]!;
    patch[at + SKIN] = body.peakSkin[entry]!;
    patch[at + SHADOW] = body.shadowPeak[entry]!;
    patch[at + SHADOW_SKIN] = body.shadowPeakSkin[entry]!;
  }
}

/**
 * Highest and lowest interpolated values over the first `numbers` / 2 points; cells without a value are left out and the
 * rest is scaled up. One loop with plain sums: a board of 3,000 parts has some three million corners to read.
 */
function extremes({ grid }: HeatState, { points, patch }: PeakScratch, area: Patch, numbers: number): Found {
  const { cellM, originXM, originYM } = grid;
  const found: Found = { body: none(), skin: none(), joint: none(), shadowMax: -Infinity, shadowSkinMax: -Infinity };
  for (let point = 0; point < numbers; point += 2) {
    const along = (points[point]! - originXM) / cellM - 0.5;
    const across = (points[point + 1]! - originYM) / cellM - 0.5;
    const column = Math.floor(along);
    const row = Math.floor(across);
    const [left, right] = [1 - Math.abs(along - column), 1 - Math.abs(along - (column + 1))];
    const [below, above] = [1 - Math.abs(across - row), 1 - Math.abs(across - (row + 1))];
    let onBody = 0;
    let onBoard = 0;
    let bodySum = 0;
    let skin = 0;
    let shadow = 0;
    let shadowSkin = 0;
    let joint = 0;
    let at = ((row - area.firstRow) * area.columns + column - area.firstColumn) * PATCH;
    for (let corner = 0; corner < 4; corner++) {
      const weight = (corner & 1 ? right : left) * (corner >> 1 ? above : below);
      onBody += weight * patch[at]!;
      onBoard += weight * patch[at + ON_BOARD]!;
      bodySum += weight * patch[at + BODY]!;
      skin += weight * patch[at + SKIN]!;
      shadow += weight * patch[at + SHADOW]!;
      shadowSkin += weight * patch[at + SHADOW_SKIN]!;
      joint += weight * patch[at + JOINT]!;
      at += corner === 1 ? (area.columns - 1) * PATCH : PATCH;
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
  const first = entries.bodyStart[order]!;
  const end = entries.bodyStart[order + 1]!;
  const numbers = fillBodyPoints(body, scratch.points);
  const area = patchUnder(grid, scratch.points, numbers);
  fillPatch(state, scratch, area, first, end);
  const found = extremes(state, scratch, area, numbers);
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
