import type { HeatGrid } from './grid.ts';
import type { SceneBody } from './scene.ts';

/** Points of a part along each of its axes. */
const POINTS = 16;

/** Up to four cells round a point and their bilinear weights; rewritten in place. */
export type Stencil = { count: number; cells: Int32Array; weights: Float64Array };

export function createStencil(): Stencil {
  return { count: 0, cells: new Int32Array(4), weights: new Float64Array(4) };
}

/** Bilinear weights of the up to four cells of the grid round a point, whether on the board or not. */
export function fillStencil(stencil: Stencil, grid: HeatGrid, xM: number, yM: number): void {
  const along = (xM - grid.originXM) / grid.cellM - 0.5;
  const across = (yM - grid.originYM) / grid.cellM - 0.5;
  const column = Math.floor(along);
  const row = Math.floor(across);
  let count = 0;
  for (let corner = 0; corner < 4; corner++) {
    const i = column + (corner & 1);
    const j = row + (corner >> 1);
    if (i < 0 || j < 0 || i >= grid.columns || j >= grid.rows) continue;
    const weight = (1 - Math.abs(along - i)) * (1 - Math.abs(across - j));
    if (weight <= 0) continue;
    stencil.cells[count] = j * grid.columns + i;
    stencil.weights[count++] = weight;
  }
  stencil.count = count;
}

/** Room for the points of one body. */
export const POINT_NUMBERS = 2 * POINTS * POINTS;

type Plan = Pick<SceneBody, 'xM' | 'yM' | 'lengthM' | 'widthM' | 'turnDeg' | 'shape'>;

/**
 * Writes the 16 x 16 points of a body (those of a round one inside its circle), x and y in metres, one after the
 * other; returns how many numbers were written.
 */
export function fillBodyPoints(body: Plan, points: Float64Array): number {
  const angle = (body.turnDeg * Math.PI) / 180;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const round = body.shape === 'round';
  const width = round ? body.lengthM : body.widthM;
  let next = 0;
  for (let place = 0; place < POINTS * POINTS; place++) {
    const u = ((place % POINTS) + 0.5) / POINTS - 0.5;
    const v = (Math.floor(place / POINTS) + 0.5) / POINTS - 0.5;
    if (round && u * u + v * v > 0.25) continue;
    const along = u * body.lengthM;
    const across = v * width;
    points[next++] = body.xM + along * cos - across * sin;
    points[next++] = body.yM + along * sin + across * cos;
  }
  return next;
}

/** The points of a body as a list of their own. */
export function bodyPoints(body: Plan): number[] {
  const points = new Float64Array(POINT_NUMBERS);
  return [...points.subarray(0, fillBodyPoints(body, points))];
}
