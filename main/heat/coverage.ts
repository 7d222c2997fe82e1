import { cellAt, type HeatGrid } from './grid.ts';
import type { SceneBody } from './scene.ts';

const SUB_SAMPLES = 8;
const SAMPLES_A_CELL = SUB_SAMPLES * SUB_SAMPLES;
const BORDER_M = 1e-9;

type Footprint = Pick<SceneBody, 'xM' | 'yM' | 'lengthM' | 'widthM' | 'turnDeg' | 'shape' | 'wallM'>;

/** How far inside the body a point lies, given in the body's own axes, m; negative: outside (a border counts as in). */
function depth(body: Footprint, along: number, across: number): number {
  if (body.shape === 'round') return body.lengthM / 2 - Math.hypot(along, across) + BORDER_M;
  return Math.min(body.lengthM / 2 - Math.abs(along), body.widthM / 2 - Math.abs(across)) + BORDER_M;
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
  if (body.shape !== 'frame') return { areaM2: lengthM * widthM, perimeterM };
  const innerLength = Math.max(0, lengthM - 2 * wallM);
  const innerWidth = Math.max(0, widthM - 2 * wallM);
  return {
    areaM2: lengthM * widthM - innerLength * innerWidth,
    perimeterM: perimeterM + 2 * (innerLength + innerWidth),
  };
}

/** Sub-samples of one cell inside the body, and those of them under its wall. */
function countSamples(
  grid: HeatGrid,
  body: Footprint,
  column: number,
  row: number,
  cos: number,
  sin: number,
): { inside: number; wall: number } {
  let inside = 0;
  let wall = 0;
  for (let sample = 0; sample < SAMPLES_A_CELL; sample++) {
    const sampleX = ((sample % SUB_SAMPLES) + 0.5) / SUB_SAMPLES;
    const sampleY = (Math.floor(sample / SUB_SAMPLES) + 0.5) / SUB_SAMPLES;
    const dx = grid.originXM + (column + sampleX) * grid.cellM - body.xM;
    const dy = grid.originYM + (row + sampleY) * grid.cellM - body.yM;
    const deep = depth(body, dx * cos + dy * sin, -dx * sin + dy * cos);
    if (deep < 0) continue;
    inside++;
    if (deep <= body.wallM + 2 * BORDER_M) wall++;
  }
  return { inside, wall };
}

/** Of the sub-samples along one axis, those within `half` of the body's middle, `wallM` and less than it from its end too. */
function countAlong(first: number, step: number, half: number, wallM: number): { inside: number; inner: number } {
  let inside = 0;
  let inner = 0;
  for (let sample = 0; sample < SUB_SAMPLES; sample++) {
    const deep = half - Math.abs(first + (sample + 0.5) * step) + BORDER_M;
    if (deep >= 0) inside++;
    if (deep > wallM + 2 * BORDER_M) inner++;
  }
  return { inside, inner };
}

/** The same as `countSamples` for a rectangle along the grid, whose axes are counted each by itself. */
function countAligned(grid: HeatGrid, body: Footprint, column: number, row: number, quarter: boolean) {
  const step = grid.cellM / SUB_SAMPLES;
  const [length, width] = quarter ? [body.widthM, body.lengthM] : [body.lengthM, body.widthM];
  const x = countAlong(grid.originXM + column * grid.cellM - body.xM, step, length / 2, body.wallM);
  const y = countAlong(grid.originYM + row * grid.cellM - body.yM, step, width / 2, body.wallM);
  const inside = x.inside * y.inside;
  return { inside, wall: inside - x.inner * y.inner };
}

/**
 * Calls `found` with each cell of the board that the body covers, the share of the cell and the share of it that lies
 * under the body's wall (frames and cans), by 8 x 8 sub-samples.
 * A body so small that it lies between the samples takes its true share of the cell under its centre.
 */
export function forEachCovered(
  grid: HeatGrid,
  body: Footprint,
  found: (cell: number, share: number, wallShare: number) => void,
): void {
  let sampled = 0;
  const [halfX, halfY] = halfExtents(body);
  const angle = (body.turnDeg * Math.PI) / 180;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const aligned = body.shape !== 'round' && body.turnDeg % 90 === 0;
  const toIndex = (value: number, origin: number) => Math.floor((value - origin) / grid.cellM);
  const firstColumn = Math.max(0, toIndex(body.xM - halfX - BORDER_M, grid.originXM));
  const lastColumn = Math.min(grid.columns - 1, toIndex(body.xM + halfX + BORDER_M, grid.originXM));
  const firstRow = Math.max(0, toIndex(body.yM - halfY - BORDER_M, grid.originYM));
  const lastRow = Math.min(grid.rows - 1, toIndex(body.yM + halfY + BORDER_M, grid.originYM));
  for (let row = firstRow; row <= lastRow; row++) {
    for (let column = firstColumn; column <= lastColumn; column++) {
      const cell = row * grid.columns + column;
      if (!grid.exists[cell]) continue;
      const { inside, wall } = aligned
        ? countAligned(grid, body, column, row, body.turnDeg % 180 !== 0)
        : countSamples(grid, body, column, row, cos, sin);
      const covered = body.shape === 'frame' ? wall : inside;
      if (covered > 0) found(cell, covered / SAMPLES_A_CELL, wall / SAMPLES_A_CELL);
      sampled += covered;
    }
  }
  const centre = cellAt(grid, body.xM, body.yM);
  if (sampled === 0 && centre >= 0) {
    const share = Math.min(1, planMeasures(body).areaM2 / grid.cellM ** 2);
    found(centre, share, share);
  }
}
