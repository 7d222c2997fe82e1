/**
 * Solves a small dense system in place by elimination (no pivoting: meant for diagonally dominant matrices).
 * @param matrix size x size, row-major; destroyed
 * @param rhs right-hand side in, solution out
 */
export function solveDense(matrix: Float64Array, rhs: Float64Array, size: number): void {
  for (let pivot = 0; pivot < size; pivot++) {
    const inverse = 1 / matrix[pivot * size + pivot]!;
    for (let row = pivot + 1; row < size; row++) {
      const factor = matrix[row * size + pivot]! * inverse;
      if (factor === 0) continue;
      for (let column = pivot; column < size; column++) {
        matrix[row * size + column]! -= factor * matrix[pivot * size + column]!;
      }
      rhs[row]! -= factor * rhs[pivot]!;
    }
  }
  for (let row = size - 1; row >= 0; row--) {
    let sum = rhs[row]!;
    for (let column = row + 1; column < size; column++) sum -= matrix[row * size + column]! * rhs[column]!;
    rhs[row] = sum / matrix[row * size + row]!;
  }
}
