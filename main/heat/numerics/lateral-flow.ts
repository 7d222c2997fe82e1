/**
 * Adds the lateral flow of one layer of a row-major grid to its rates.
 * @param rate per cell: conductance times difference is added (W/m2)
 * @param temperature per cell
 * @param first index of the layer's first cell in `rate` and `temperature`; both arrays must
 *   reach at least `columns` beyond the layer's end (the values there do not matter but must be finite)
 * @param linkRight conductance per area from cell to its right neighbour, 0 at borders (W/m2K), per cell of the layer
 * @param linkUp the same to the neighbour in the next row
 */
export function addLateralFlow(
  rate: Float64Array,
  temperature: Float64Array,
  first: number,
  columns: number,
  rows: number,
  linkRight: Float64Array,
  linkUp: Float64Array,
  rowFlow: Float64Array,
): void {
  rowFlow.fill(0, 0, columns);
  let link = 0;
  let cell = first;
  for (let row = 0; row < rows; row++) {
    let fromLeft = 0;
    let here = temperature[cell]!;
    for (let column = 0; column < columns; column++) {
      const right = temperature[cell + 1]!;
      const toRight = linkRight[link]! * (here - right);
      const toUp = linkUp[link]! * (here - temperature[cell + columns]!);
      rate[cell]! += fromLeft - toRight + rowFlow[column]! - toUp;
      rowFlow[column] = toUp;
      fromLeft = toRight;
      here = right;
      cell++;
      link++;
    }
  }
}
