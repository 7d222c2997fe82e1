import { inverse, Matrix, solve } from 'ml-matrix';
import { type Result, succeed } from '../../../shared-types/problem.ts';

/**
 * Least squares with a prior of mean 0 and deviation 1 on every unknown; Gauss and Newton, steps halved where they
 * would not help. What the data do not tell stays at its prior. The library's own curve fitting knows neither priors
 * nor errors that readings share, so its matrices alone are used.
 */
export type Residuals = (unknowns: Float64Array) => Result<Float64Array>;
export type Slopes = (unknowns: Float64Array, residuals: Float64Array) => Result<Matrix>;

export type Solution = { unknowns: Float64Array; residuals: Float64Array; covariance: Matrix; rounds: number };

const MOST_ROUNDS = 8;
const LEAST_SHARE = 0.01;

/** Normal equations; `slopes`: how the residuals fall per unknown. */
function equations(slopes: Matrix, residuals: Float64Array, unknowns: Float64Array) {
  const turned = slopes.transpose();
  const normal = turned.mmul(slopes).add(Matrix.eye(slopes.columns));
  const right = turned.mmul(Matrix.columnVector(Array.from(residuals)));
  return { normal, right: Array.from(unknowns, (value, index) => right.get(index, 0) - value) };
}

const cost = (residuals: Float64Array, unknowns: Float64Array): number =>
  [...residuals, ...unknowns].reduce((sum, one) => sum + one * one, 0);

/**
 * Solves for the unknowns from `start` on. Residuals are in their own standard deviations; slopes may be those of a
 * cheaper model that is nearly parallel. `onRound` hears each step that was taken. Problems: those of the two functions.
 */
export function solveLeastSquares(
  start: Float64Array,
  residualsOf: Residuals,
  slopesOf: Slopes,
  stillAt = 0.1,
  onRound?: (residuals: Float64Array) => void,
): Result<Solution> {
  const count = start.length;
  let unknowns = start.slice();
  const first = residualsOf(unknowns);
  if (!first.ok) return first;
  let residuals = first.value;
  let slopes = new Matrix(residuals.length, count);
  let rounds = 0;
  for (let still = false; rounds < MOST_ROUNDS && !still; rounds++) {
    const found = slopesOf(unknowns, residuals);
    if (!found.ok) return found;
    slopes = found.value;
    const { normal, right } = equations(slopes, residuals, unknowns);
    const move = solve(normal, Matrix.columnVector(right)).to1DArray();
    const before = cost(residuals, unknowns);
    const deviations = Math.sqrt(
      Math.max(
        0,
        move.reduce((sum, one, index) => sum + one * right[index]!, 0),
      ),
    );
    still = deviations < stillAt;
    for (let share = 1; !still; share /= 2) {
      const there = unknowns.map((value, index) => value + share * move[index]!);
      const next = residualsOf(there);
      if (!next.ok) return next;
      still = share < LEAST_SHARE;
      if (still || cost(next.value, there) > before) continue;
      unknowns = there;
      residuals = next.value;
      onRound?.(residuals);
      break;
    }
  }
  const covariance = inverse(equations(slopes, residuals, unknowns).normal);
  return succeed({ unknowns, residuals, covariance, rounds });
}
