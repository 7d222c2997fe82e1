import { fillRing, ringMeasures } from './polygon-mask.ts';
import type { SceneBoard } from './scene.ts';

/** Cells of a board: row-major, x fastest, from the lower-left corner of the outline's bounding box. */
export type HeatGrid = {
  columns: number;
  rows: number;
  cellCount: number;
  cellM: number;
  originXM: number;
  originYM: number;
  /** 1 where the cell's centre is on the board. */
  exists: Uint8Array;
  /** Area / perimeter of the outline, the length of the natural convection law. */
  plateLengthM: number;
  /** True when the wished cell had to grow to keep the grid within its limit. */
  grown: boolean;
};

/** The most cells a grid may have; a finer wish is answered with a larger cell. */
export const MOST_CELLS = 400_000;

/** x of the centre of a column, in metres. */
export function columnX(grid: HeatGrid, column: number): number {
  return grid.originXM + (column + 0.5) * grid.cellM;
}

/** y of the centre of the row that holds `cell`, in metres. */
export function rowY(grid: HeatGrid, cell: number): number {
  return grid.originYM + (Math.floor(cell / grid.columns) + 0.5) * grid.cellM;
}

/** The cell that contains a point, or -1 where the point is on no cell of the board. */
export function cellAt(grid: HeatGrid, xM: number, yM: number): number {
  const column = Math.floor((xM - grid.originXM) / grid.cellM + 1e-9);
  const row = Math.floor((yM - grid.originYM) / grid.cellM + 1e-9);
  if (column < 0 || row < 0 || column >= grid.columns || row >= grid.rows) return -1;
  const cell = row * grid.columns + column;
  return grid.exists[cell] ? cell : -1;
}

function countAlong(lengthM: number, cellM: number): number {
  return Math.max(1, Math.ceil(lengthM / cellM - 1e-6));
}

/** Lays the grid over a board (heat-model.md, section 2). */
export function buildGrid(board: SceneBoard, wishedCellM: number): HeatGrid {
  const points = board.outlines.flat();
  const originXM = Math.min(...points.map((point) => point[0]));
  const originYM = Math.min(...points.map((point) => point[1]));
  const spanX = Math.max(...points.map((point) => point[0])) - originXM;
  const spanY = Math.max(...points.map((point) => point[1])) - originYM;
  let cellM = wishedCellM;
  while (countAlong(spanX, cellM) * countAlong(spanY, cellM) > MOST_CELLS) cellM *= 1.05;
  const columns = countAlong(spanX, cellM);
  const rows = countAlong(spanY, cellM);
  const exists = new Uint8Array(columns * rows);
  const raster = { columns, rows, cellM, originXM, originYM };
  for (const ring of board.outlines) fillRing(exists, raster, ring, 1, true);
  for (const ring of board.cutouts) fillRing(exists, raster, ring, 0, false);
  const measures = board.outlines.map(ringMeasures);
  const area = measures.reduce((sum, measure) => sum + measure.areaM2, 0);
  const perimeter = measures.reduce((sum, measure) => sum + measure.perimeterM, 0);
  return {
    ...raster,
    cellCount: columns * rows,
    exists,
    plateLengthM: area / perimeter,
    grown: cellM > wishedCellM,
  };
}
