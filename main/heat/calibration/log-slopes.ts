import { Matrix } from 'ml-matrix';
import { type Result, succeed } from '../../../shared-types/problem.ts';
import { TERM_IDS, type TermSteps } from '../../../shared-types/uncertainty.ts';
import type { LogModel } from './log-model.ts';

/** Terms as numbers of their prior deviations, in the order of TERM_IDS. */
export type Terms = Float64Array;

const stepsOf = (terms: Terms, sigma: readonly number[]): TermSteps =>
  Object.fromEntries(TERM_IDS.map((id, index) => [id, terms[index]! * sigma[index]!]));

/**
 * Half the stretch of the differences, in prior deviations: about as far as a log leaves a term unsure. Shorter ones
 * would take the small jumps of the model (a cell where the jet takes convection's place) for slopes, one-sided ones
 * its curvature; both feign that film and outlet, which nearly make up for each other, could be told apart.
 */
const REACH = 0.5;

/** How a model's readings rise per prior deviation of each term, K: two runs per term. */
function risesAt(model: LogModel, terms: Terms, sigma: readonly number[]): Result<Matrix> {
  const columns: number[][] = [];
  for (let term = 0; term < TERM_IDS.length; term++) {
    const moved = (by: number) => {
      const there = terms.slice();
      there[term]! += by;
      return model(stepsOf(there, sigma));
    };
    const down = moved(-REACH);
    if (!down.ok) return down;
    const up = moved(REACH);
    if (!up.ok) return up;
    columns.push(Array.from(up.value, (value, row) => (value - down.value[row]!) / (2 * REACH)));
  }
  return succeed(new Matrix(columns).transpose());
}

/** A model with its slopes; asked for the same terms twice in a row, both answer at once. */
export type SlopedModel = { says: (terms: Terms) => Result<Float64Array>; rises: (terms: Terms) => Result<Matrix> };

export function sloped(model: LogModel, sigma: readonly number[]): SlopedModel {
  return {
    says: remembering((terms) => model(stepsOf(terms, sigma))),
    rises: remembering((terms) => risesAt(model, terms, sigma)),
  };
}

function remembering<T>(tell: (terms: Terms) => T): (terms: Terms) => T {
  let last: { key: string; told: T } | null = null;
  return (terms) => {
    const key = terms.join();
    if (last?.key !== key) last = { key, told: tell(terms) };
    return last.told;
  };
}
