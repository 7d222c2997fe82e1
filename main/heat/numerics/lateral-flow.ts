/**
 * Adds the lateral flow of one row of two layers of a row-major grid to their rates; rows come in order.
 * @param rate per cell, first layer then second: conductance times difference is added (W/m2)
 * @param temperature likewise; both arrays must reach at least `columns` + 1 beyond the second layer's end
 *   (the values there do not matter but must be finite)
 * @param first the row's first cell
 * @param linkRight conductance per area from a cell to its right neighbour, 0 at borders (W/m2K)
 * @param linkUp the same to the neighbour in the next row
 * @param rowFlow 2 x columns numbers: what flows in from the row before, zeros before the first; rewritten for the next
 */
export function addLateralRow(
  rate: Float64Array,
  temperature: Float64Array,
  layerSize: number,
  columns: number,
  first: number,
  linkRight: Float64Array,
  linkUp: Float64Array,
  rowFlow: Float64Array,
): void {
  let cell = first;
  let upperFlow = 0;
  let lowerFlow = 0;
  let upper = temperature[cell]!;
  let lower = temperature[cell + layerSize]!;
  for (let column = 0; column < columns; column++) {
    const second = cell + layerSize;
    const right = linkRight[cell]!;
    const up = linkUp[cell]!;
    const upperNext = temperature[cell + 1]!;
    const lowerNext = temperature[second + 1]!;
    const upperRight = right * (upper - upperNext);
    const lowerRight = right * (lower - lowerNext);
    const upperUp = up * (upper - temperature[cell + columns]!);
    const lowerUp = up * (lower - temperature[second + columns]!);
    rate[cell]! += upperFlow - upperRight + rowFlow[column]! - upperUp;
    rate[second]! += lowerFlow - lowerRight + rowFlow[column + columns]! - lowerUp;
    rowFlow[column] = upperUp;
    rowFlow[column + columns] = lowerUp;
    upperFlow = upperRight;
    lowerFlow = lowerRight;
    upper = upperNext;
    lower = lowerNext;
    cell++;
  }
}
