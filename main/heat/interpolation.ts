import type { HeatGrid } from './grid.ts';
import type { SceneBody } from './scene.ts';

/** Points of a part along each of its axes. */
const POINTS = 16;

/** Up to four cells round a point and their bilinear weights; rewritten in place. */
export type Stencil = { count: number; cells: Int32Array; weights: Float64Array };

export function createStencil(): Stencil {
  return { count: 0, cells: new Int32Array(4), weights: new Float64Array(4) };
}

/**
 * Bilinear weights of the cells round a point. Cells without a value are left out and the rest is scaled up;
 * `count` is 0 where no cell has one.
 * @param hasValue per cell: 0 or above where the cell has a value, -1 where it has none
 */
export function fillStencil(stencil: Stencil, grid: HeatGrid, xM: number, yM: number, hasValue: Int32Array): void {
  const along = (xM - grid.originXM) / grid.cellM - 0.5;
  const across = (yM - grid.originYM) / grid.cellM - 0.5;
  const column = Math.floor(along);
  const row = Math.floor(across);
  stencil.count = 0;
  let sum = 0;
  for (let corner = 0; corner < 4; corner++) {
    const i = column + (corner & 1);
    const j = row + (corner >> 1);
    if (i < 0 || j < 0 || i >= grid.columns || j >= grid.rows) continue;
    const cell = j * grid.columns + i;
    if (hasValue[cell]! < 0) continue;
    const weight = (1 - Math.abs(along - i)) * (1 - Math.abs(across - j));
    if (weight <= 0) continue;
    stencil.cells[stencil.count] = cell;
    stencil.weights[stencil.count++] = weight;
    sum += weight;
  }
  for (let place = 0; place < stencil.count; place++) stencil.weights[place]! /= sum;
}

/** The 16 x 16 points of a body (those of a round one inside its circle), x and y in metres, one after the other. */
export function bodyPoints(body: Pick<SceneBody, 'xM' | 'yM' | 'lengthM' | 'widthM' | 'turnDeg' | 'shape'>): number[] {
  const angle = (body.turnDeg * Math.PI) / 180;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const width = body.shape === 'round' ? body.lengthM : body.widthM;
  const points: number[] = [];
  for (let place = 0; place < POINTS * POINTS; place++) {
    const u = ((place % POINTS) + 0.5) / POINTS - 0.5;
    const v = (Math.floor(place / POINTS) + 0.5) / POINTS - 0.5;
    if (body.shape === 'round' && Math.hypot(u, v) > 0.5) continue;
    const along = u * body.lengthM;
    const across = v * width;
    points.push(body.xM + along * cos - across * sin, body.yM + along * sin + across * cos);
  }
  return points;
}
