import type { Board } from '../../../shared-types/board.ts';
import type { Calibration, Plan } from '../../../shared-types/plan.ts';
import { OF_STATION } from '../../../shared-types/rules/station-terms.ts';
import { TERM_IDS, type TermId, type TermSteps } from '../../../shared-types/uncertainty.ts';
import { type Belief, priorBelief } from './priors.ts';

/** A calibration's terms that hold for this board: all on a board of the kind it was made on, else the station's. */
const holds = ({ board }: Calibration, name: string, term: TermId): boolean => board === name || OF_STATION.has(term);

/** Steps of the terms that the station's calibration found, as far as they hold for this board. */
export function calibratedSteps(board: Board, { station: { calibration } }: Plan): TermSteps {
  if (!calibration) return {};
  const held = calibration.terms.filter(({ id }) => holds(calibration, board.name, id));
  return Object.fromEntries(held.map(({ id, step }) => [id, step]));
}

/** What is believed of a ticket's terms: the priors, and in their place what a calibration found. */
export function beliefOf(board: Board, plan: Plan): Belief {
  const belief = priorBelief(board, plan);
  const { calibration } = plan.station;
  if (!calibration) return belief;
  const { sigma, correlation, calibrated } = belief;
  const count = TERM_IDS.length;
  for (const { id, sigma: found } of calibration.terms) {
    const index = TERM_IDS.indexOf(id);
    if (!holds(calibration, board.name, id)) continue;
    sigma[index] = found;
    calibrated[index] = true;
  }
  for (let row = 0; row < count; row++) {
    for (let column = 0; column < count; column++) {
      const at = row * count + column;
      if (row === column || !(calibrated[row] || calibrated[column])) continue;
      // What was found of one term knows nothing of a term that it does not hold for.
      correlation[at] = calibrated[row] && calibrated[column] ? calibration.correlation[at]! : 0;
    }
  }
  return belief;
}
