/** Factors of (1 - theta dt A) along the lines of one direction, one value per cell each. */
export type LineFactors = {
  /** 1 / pivot. */
  inverse: Float64Array;
  /** Link to the previous cell / pivot. */
  back: Float64Array;
  /** Link to the next cell / pivot. */
  ahead: Float64Array;
};

/**
 * Factorises the tridiagonal systems of all lines of one direction (Thomas' elimination; no pivoting is
 * needed as the matrix is diagonally dominant).
 * @param stride distance between neighbours of a line: 1 along x, `columns` along y
 * @param link conductance to the next cell of the line, 0 at its end; links are symmetric
 * @param scale theta dt / capacity
 */
export function factorLines(
  factors: LineFactors,
  link: Float64Array,
  columns: number,
  rows: number,
  stride: 1 | number,
  scale: number,
): void {
  const { inverse, back, ahead } = factors;
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const cell = row * columns + column;
      const isFirst = stride === 1 ? column === 0 : row === 0;
      const toPrevious = isFirst ? 0 : link[cell - stride]! * scale;
      const toNext = link[cell]! * scale;
      const carried = isFirst ? 0 : toPrevious * ahead[cell - stride]!;
      const pivot = 1 + toPrevious + toNext - carried;
      inverse[cell] = 1 / pivot;
      back[cell] = toPrevious / pivot;
      ahead[cell] = toNext / pivot;
    }
  }
}
