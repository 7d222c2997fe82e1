import type { LineFactors } from './line-factors.ts';

/**
 * Solves the lines along x in place, for two layers at once (they share their factors).
 * Two rows of both layers run side by side: four independent chains hide the latency of one.
 * @param scale factor that the right-hand sides are multiplied by on the way
 */
export function solveAlongRows(
  values: Float64Array,
  columns: number,
  rows: number,
  layerSize: number,
  factors: LineFactors,
  scale: number,
): void {
  let row = 0;
  for (; row + 1 < rows; row += 2) solveRowPair(values, row * columns, columns, layerSize, factors, scale);
  if (row < rows) solveRow(values, row * columns, columns, layerSize, factors, scale);
}

function solveRowPair(
  values: Float64Array,
  start: number,
  columns: number,
  layerSize: number,
  { inverse, back, ahead }: LineFactors,
  scale: number,
): void {
  const end = start + columns;
  let a = 0;
  let b = 0;
  let c = 0;
  let d = 0;
  for (let i = start; i < end; i++) {
    const j = i + columns;
    const inverseI = inverse[i]! * scale;
    const backI = back[i]!;
    const inverseJ = inverse[j]! * scale;
    const backJ = back[j]!;
    values[i] = a = values[i]! * inverseI + backI * a;
    values[i + layerSize] = b = values[i + layerSize]! * inverseI + backI * b;
    values[j] = c = values[j]! * inverseJ + backJ * c;
    values[j + layerSize] = d = values[j + layerSize]! * inverseJ + backJ * d;
  }
  for (let i = end - 2; i >= start; i--) {
    const j = i + columns;
    const aheadI = ahead[i]!;
    const aheadJ = ahead[j]!;
    values[i] = a = values[i]! + aheadI * a;
    values[i + layerSize] = b = values[i + layerSize]! + aheadI * b;
    values[j] = c = values[j]! + aheadJ * c;
    values[j + layerSize] = d = values[j + layerSize]! + aheadJ * d;
  }
}

function solveRow(
  values: Float64Array,
  start: number,
  columns: number,
  layerSize: number,
  { inverse, back, ahead }: LineFactors,
  scale: number,
): void {
  const end = start + columns;
  let a = 0;
  let b = 0;
  for (let i = start; i < end; i++) {
    const inverseI = inverse[i]! * scale;
    values[i] = a = values[i]! * inverseI + back[i]! * a;
    values[i + layerSize] = b = values[i + layerSize]! * inverseI + back[i]! * b;
  }
  for (let i = end - 2; i >= start; i--) {
    values[i] = a = values[i]! + ahead[i]! * a;
    values[i + layerSize] = b = values[i + layerSize]! + ahead[i]! * b;
  }
}

/** Solves the lines along y in place, whole rows at a time, for two layers that share their factors. */
export function solveAlongColumns(
  values: Float64Array,
  columns: number,
  rows: number,
  layerSize: number,
  { inverse, back, ahead }: LineFactors,
): void {
  for (let column = 0; column < columns; column++) {
    values[column]! *= inverse[column]!;
    values[column + layerSize]! *= inverse[column]!;
  }
  const size = columns * rows;
  for (let i = columns; i < size; i++) {
    const low = i + layerSize;
    const inverseI = inverse[i]!;
    const backI = back[i]!;
    values[i] = values[i]! * inverseI + backI * values[i - columns]!;
    values[low] = values[low]! * inverseI + backI * values[low - columns]!;
  }
  for (let i = size - columns - 1; i >= 0; i--) {
    const low = i + layerSize;
    const aheadI = ahead[i]!;
    values[i] = values[i]! + aheadI * values[i + columns]!;
    values[low] = values[low]! + aheadI * values[low + columns]!;
  }
}
