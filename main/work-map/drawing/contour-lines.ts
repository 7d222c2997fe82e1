import { contours } from 'd3-contour';
import type { FieldGrid } from '../../../shared-types/evaluation.ts';
import type { Point, TurnedRectangle } from '../../../shared-types/geometry.ts';
import { turnVector } from '../../../shared-types/geometry.ts';

/** Closed lines of one level, board mm. They run on beyond the board's edge: clip them to the outline. */
export type ContourLine = { level: number; rings: Point[][] };

const PAD = 3;

/** Fills the cells without a value from their neighbours, ring by ring, so that contours leave the board cleanly. */
export function filledBeyondEdge(values: Float32Array, columns: number, rows: number): Float32Array {
  const filled = Float32Array.from(values);
  let empty: number[] = [];
  for (let cell = 0; cell < filled.length; cell++) if (Number.isNaN(filled[cell])) empty.push(cell);
  while (empty.length > 0) {
    const next: [number, number][] = [];
    const left: number[] = [];
    for (const cell of empty) {
      const mean = neighbourMean(filled, cell, columns, rows);
      if (mean === null) left.push(cell);
      else next.push([cell, mean]);
    }
    if (next.length === 0) break;
    for (const [cell, mean] of next) filled[cell] = mean;
    empty = left;
  }
  return filled;
}

function neighbourMean(values: Float32Array, cell: number, columns: number, rows: number): number | null {
  const column = cell % columns;
  const row = (cell - column) / columns;
  let sum = 0;
  let count = 0;
  for (let y = Math.max(0, row - 1); y <= Math.min(rows - 1, row + 1); y++)
    for (let x = Math.max(0, column - 1); x <= Math.min(columns - 1, column + 1); x++) {
      const value = values[y * columns + x];
      if (Number.isNaN(value)) continue;
      sum += value;
      count++;
    }
  return count === 0 ? null : sum / count;
}

/** Contours of a face field at the given levels. An all-empty field gives no lines. */
export function isothermLines(values: Float32Array, grid: FieldGrid, levels: readonly number[]): ContourLine[] {
  const columns = grid.columns + 2 * PAD;
  const rows = grid.rows + 2 * PAD;
  const padded = new Float32Array(columns * rows).fill(Number.NaN);
  for (let row = 0; row < grid.rows; row++)
    for (let column = 0; column < grid.columns; column++)
      padded[(row + PAD) * columns + column + PAD] = values[row * grid.columns + column];
  const filled = filledBeyondEdge(padded, columns, rows);
  if (Number.isNaN(filled[0])) return [];
  const make = contours().size([columns, rows]).smooth(true);
  return levels.map((level) => ({
    level,
    rings: make.contour(Array.from(filled), level).coordinates.flatMap((polygon) =>
      polygon.map((ring) =>
        ring.map(([x, y]) => ({
          x: grid.originX + (x - PAD) * grid.cellMm,
          y: grid.originY + (y - PAD) * grid.cellMm,
        })),
      ),
    ),
  }));
}

/** Levels between the coldest and the hottest place of a field, C; the lowest lines go first when there are too many. */
export function isothermLevels(
  values: Float32Array,
  between: (lowC: number, highC: number) => number[],
  most = 16,
): number[] {
  let low = Infinity;
  let high = -Infinity;
  for (const value of values) {
    if (Number.isNaN(value)) continue;
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  if (low > high) return [];
  return between(low, high).slice(-most);
}

/** Distance from a point to a turned rectangle, mm; 0 inside. */
export function distanceToArea(point: Point, area: TurnedRectangle): number {
  const own = turnVector(point.x - area.x, point.y - area.y, -area.turnDeg);
  return Math.hypot(Math.max(0, Math.abs(own.x) - area.lengthMm / 2), Math.max(0, Math.abs(own.y) - area.widthMm / 2));
}

/** Lines at equal distance from the nearest of several rework areas: one ring round sites that lie close together. */
export function distanceRings(areas: readonly TurnedRectangle[], distancesMm: readonly number[]): ContourLine[] {
  if (areas.length === 0) return [];
  const reach = Math.max(...distancesMm) + 2;
  const radius = (area: TurnedRectangle) => Math.hypot(area.lengthMm, area.widthMm) / 2 + reach;
  const minX = Math.min(...areas.map((area) => area.x - radius(area)));
  const maxX = Math.max(...areas.map((area) => area.x + radius(area)));
  const minY = Math.min(...areas.map((area) => area.y - radius(area)));
  const maxY = Math.max(...areas.map((area) => area.y + radius(area)));
  const cellMm = Math.max(0.4, Math.max(maxX - minX, maxY - minY) / 300);
  const columns = Math.ceil((maxX - minX) / cellMm);
  const rows = Math.ceil((maxY - minY) / cellMm);
  const near = new Array<number>(columns * rows);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const point = { x: minX + (column + 0.5) * cellMm, y: minY + (row + 0.5) * cellMm };
      near[row * columns + column] = -Math.min(...areas.map((area) => distanceToArea(point, area)));
    }
  const make = contours().size([columns, rows]).smooth(true);
  return distancesMm.map((level) => ({
    level,
    rings: make
      .contour(near, -level)
      .coordinates.flatMap((polygon) =>
        polygon.map((ring) => ring.map(([x, y]) => ({ x: minX + x * cellMm, y: minY + y * cellMm }))),
      ),
  }));
}
