import { cellAt, type HeatGrid } from './grid.ts';
import type { SceneBody } from './scene.ts';

const SUB_SAMPLES = 8;
const BORDER_M = 1e-9;

type Footprint = Pick<SceneBody, 'xM' | 'yM' | 'lengthM' | 'widthM' | 'turnDeg' | 'shape' | 'wallM'>;

/** Whether a point, given in the body's own axes, lies under it (a border counts as in). */
function covers(body: Footprint, along: number, across: number): boolean {
  if (body.shape === 'round') return Math.hypot(along, across) <= body.lengthM / 2 + BORDER_M;
  const insideX = body.lengthM / 2 - Math.abs(along);
  const insideY = body.widthM / 2 - Math.abs(across);
  if (insideX < -BORDER_M || insideY < -BORDER_M) return false;
  return body.shape === 'rect' || Math.min(insideX, insideY) <= body.wallM + BORDER_M;
}

/** Half the extent of the turned body along x and y, in metres. */
export function halfExtents(body: Footprint): [number, number] {
  if (body.shape === 'round') return [body.lengthM / 2, body.lengthM / 2];
  const angle = (body.turnDeg * Math.PI) / 180;
  const cos = Math.abs(Math.cos(angle));
  const sin = Math.abs(Math.sin(angle));
  return [(body.lengthM * cos + body.widthM * sin) / 2, (body.lengthM * sin + body.widthM * cos) / 2];
}

/** Plan area (m2) and perimeter (m) of a body, for the factor of its side walls. */
export function planMeasures(body: Footprint): { areaM2: number; perimeterM: number } {
  const { lengthM, widthM, wallM } = body;
  if (body.shape === 'round') return { areaM2: (Math.PI * lengthM ** 2) / 4, perimeterM: Math.PI * lengthM };
  const perimeterM = 2 * (lengthM + widthM);
  if (body.shape === 'rect') return { areaM2: lengthM * widthM, perimeterM };
  const innerLength = Math.max(0, lengthM - 2 * wallM);
  const innerWidth = Math.max(0, widthM - 2 * wallM);
  return {
    areaM2: lengthM * widthM - innerLength * innerWidth,
    perimeterM: perimeterM + 2 * (innerLength + innerWidth),
  };
}

/**
 * Calls `found` with each cell of the board that the body covers and the share of it, by 8 x 8 sub-samples.
 * A body so small that it lies between the samples takes its true share of the cell under its centre.
 */
export function forEachCovered(grid: HeatGrid, body: Footprint, found: (cell: number, share: number) => void): void {
  let sampled = 0;
  const [halfX, halfY] = halfExtents(body);
  const angle = (body.turnDeg * Math.PI) / 180;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const toIndex = (value: number, origin: number) => Math.floor((value - origin) / grid.cellM);
  const firstColumn = Math.max(0, toIndex(body.xM - halfX - BORDER_M, grid.originXM));
  const lastColumn = Math.min(grid.columns - 1, toIndex(body.xM + halfX + BORDER_M, grid.originXM));
  const firstRow = Math.max(0, toIndex(body.yM - halfY - BORDER_M, grid.originYM));
  const lastRow = Math.min(grid.rows - 1, toIndex(body.yM + halfY + BORDER_M, grid.originYM));
  for (let row = firstRow; row <= lastRow; row++) {
    for (let column = firstColumn; column <= lastColumn; column++) {
      const cell = row * grid.columns + column;
      if (!grid.exists[cell]) continue;
      let hits = 0;
      for (let sample = 0; sample < SUB_SAMPLES * SUB_SAMPLES; sample++) {
        const sampleX = ((sample % SUB_SAMPLES) + 0.5) / SUB_SAMPLES;
        const sampleY = (Math.floor(sample / SUB_SAMPLES) + 0.5) / SUB_SAMPLES;
        const dx = grid.originXM + (column + sampleX) * grid.cellM - body.xM;
        const dy = grid.originYM + (row + sampleY) * grid.cellM - body.yM;
        if (covers(body, dx * cos + dy * sin, -dx * sin + dy * cos)) hits++;
      }
      if (hits > 0) found(cell, hits / (SUB_SAMPLES * SUB_SAMPLES));
      sampled += hits;
    }
  }
  const centre = cellAt(grid, body.xM, body.yM);
  if (sampled === 0 && centre >= 0) found(centre, Math.min(1, planMeasures(body).areaM2 / grid.cellM ** 2));
}
