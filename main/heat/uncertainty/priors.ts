import type { Board } from '../../../shared-types/board.ts';
import type { Plan } from '../../../shared-types/plan.ts';
import { TERM_IDS, type TermId } from '../../../shared-types/uncertainty.ts';
import { jetStrength } from '../nozzle.ts';
import { nozzleOf, outletC } from '../scene-of-ticket.ts';

export { isHandHeld } from '../../../shared-types/rules/hand-held.ts';

/** One standard deviation of each term (heat-model.md, section 8; assumptions of ours that a calibration corrects). */
export const PRIOR_SIGMA = {
  nozzle: Math.log(1.3),
  dilution: 0.15,
  outlet: { setting: 25, measured: 8 },
  preheater: Math.log(1.25),
  inPlane: { guessed: Math.log(1.6), known: Math.log(1.25) },
  joints: Math.log(1.5),
  idle: Math.log(1.25),
} as const;

/** Repeat of a hand-held run, one standard deviation where the gas is aimed, K. */
export const HAND_REPEAT_SIGMA_K = 8;

/** Below this the jet's law is extended (Martin 1977; figures.md, E3); its film is then half as unsure again (A). */
const LEAST_REYNOLDS = 2000;
const EXTENDED = 1.5;

/** What is believed of the terms: standard deviations and correlations, both in the order of TERM_IDS. */
export type Belief = {
  sigma: number[];
  /** Correlations, row after row. */
  correlation: number[];
  calibrated: boolean[];
};

function lawIsExtended({ station, heatRuns }: Plan): boolean {
  if (station.nozzle.kind === 'hood') return false;
  const nozzle = nozzleOf(station.nozzle);
  const segments = heatRuns.flatMap((run) => run.segments);
  return segments.some(
    ({ gas, flowLMin }) => gas && jetStrength(nozzle, outletC(station, gas.endC), flowLMin).reynolds < LEAST_REYNOLDS,
  );
}

const isOutletMeasured = ({ station }: Plan): boolean =>
  station.gasReads === 'outlet' || station.outletReadings.length > 0;

/** Standard deviation of each term for this ticket, before any calibration. */
export function priorSigma(board: Board, plan: Plan): Record<TermId, number> {
  const { nozzle, dilution, outlet, preheater, inPlane, joints, idle } = PRIOR_SIGMA;
  return {
    ...{ dilution, preheater, joints, idle },
    nozzle: nozzle * (lawIsExtended(plan) ? EXTENDED : 1),
    outlet: isOutletMeasured(plan) ? outlet.measured : outlet.setting,
    inPlane: board.laminate.layersKnown ? inPlane.known : inPlane.guessed,
  };
}

/** Prior belief: the terms know nothing of each other. */
export function priorBelief(board: Board, plan: Plan): Belief {
  const sigma = priorSigma(board, plan);
  const count = TERM_IDS.length;
  return {
    sigma: TERM_IDS.map((term) => sigma[term]),
    correlation: Array.from({ length: count * count }, (_, at) => (at % (count + 1) === 0 ? 1 : 0)),
    calibrated: TERM_IDS.map(() => false),
  };
}
