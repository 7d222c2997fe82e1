import type { FieldGrid } from '../../../shared-types/evaluation.ts';

/** A field with no gaps, widened all round, so that colours and isotherms run past the board's edge and are cut there. */
export type PaddedField = { values: Float32Array; columns: number; rows: number; pad: number };

const PAD_CELLS = 2;

/** Fills cells without board from their neighbours, ring by ring outwards; cells farther than `reach` take the mean. */
export function paddedField(field: Float32Array, grid: FieldGrid, reach = 24): PaddedField {
  const columns = grid.columns + 2 * PAD_CELLS;
  const rows = grid.rows + 2 * PAD_CELLS;
  const values = new Float32Array(columns * rows).fill(Number.NaN);
  for (let row = 0; row < grid.rows; row++)
    values.set(field.subarray(row * grid.columns, (row + 1) * grid.columns), (row + PAD_CELLS) * columns + PAD_CELLS);
  let open: number[] = [];
  let sum = 0;
  for (let i = 0; i < values.length; i++) {
    if (Number.isNaN(values[i])) open.push(i);
    else sum += values[i];
  }
  const mean = open.length < values.length ? sum / (values.length - open.length) : 0;
  for (let ring = 0; ring < reach && open.length > 0; ring++) open = fillRing(values, columns, rows, open);
  for (const i of open) values[i] = mean;
  return { values, columns, rows, pad: PAD_CELLS };
}

/** Gives every open cell that touches a filled one the mean of those; returns the cells still open. */
function fillRing(values: Float32Array, columns: number, rows: number, open: readonly number[]): number[] {
  const left: number[] = [];
  const found: [number, number][] = [];
  for (const i of open) {
    const value = meanAround(values, columns, rows, i);
    if (Number.isNaN(value)) left.push(i);
    else found.push([i, value]);
  }
  for (const [i, value] of found) values[i] = value;
  return left;
}

function meanAround(values: Float32Array, columns: number, rows: number, at: number): number {
  const column = at % columns;
  const row = (at - column) / columns;
  let sum = 0;
  let count = 0;
  for (let dy = -1; dy <= 1; dy++)
    for (let dx = -1; dx <= 1; dx++) {
      const x = column + dx;
      const y = row + dy;
      if (x < 0 || y < 0 || x >= columns || y >= rows) continue;
      const value = values[y * columns + x];
      if (Number.isNaN(value)) continue;
      sum += value;
      count++;
    }
  return sum / count;
}
