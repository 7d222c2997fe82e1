import type { Board } from '../../../shared-types/board.ts';
import type { Plan } from '../../../shared-types/plan.ts';
import { TERM_IDS, type TermId } from '../../../shared-types/uncertainty.ts';
import { jetStrength } from '../nozzle.ts';
import { nozzleOf, outletC } from '../scene-of-ticket.ts';
import { type FilmDoubt, readFilmDoubt } from './preheater-doubt.ts';

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

/** What is not known of a board's losses and copper, one standard deviation each. */
export const boardDoubt = ({ laminate }: Board) => ({
  idle: PRIOR_SIGMA.idle,
  inPlane: laminate.layersKnown ? PRIOR_SIGMA.inPlane.known : PRIOR_SIGMA.inPlane.guessed,
});

/**
 * Standard deviation of each term for this ticket, before any calibration. Board readings that the preheater was fitted
 * to narrow its film as far as such readings tell it on a board like this one.
 */
export function priorSigma(
  board: Board,
  plan: Plan,
  read: FilmDoubt | null = readFilmDoubt(board, plan, boardDoubt(board)),
): Record<TermId, number> {
  const { nozzle, dilution, outlet, preheater, joints } = PRIOR_SIGMA;
  const { idle, inPlane } = boardDoubt(board);
  return {
    ...{ dilution, inPlane, joints, idle },
    preheater: Math.min(preheater, read?.sigma ?? preheater),
    nozzle: nozzle * (lawIsExtended(plan) ? EXTENDED : 1),
    outlet: isOutletMeasured(plan) ? outlet.measured : outlet.setting,
  };
}

/** Prior belief: the terms know nothing of each other, but for film and losses over a preheater that was read. */
export function priorBelief(board: Board, plan: Plan): Belief {
  const read = readFilmDoubt(board, plan, boardDoubt(board));
  const sigma = priorSigma(board, plan, read);
  const count = TERM_IDS.length;
  const correlation: number[] = Array.from({ length: count * count }, (_, at) => (at % (count + 1) === 0 ? 1 : 0));
  if (read && read.sigma <= sigma.preheater) {
    const [film, idle] = [TERM_IDS.indexOf('preheater'), TERM_IDS.indexOf('idle')];
    correlation[film * count + idle] = read.withIdle;
    correlation[idle * count + film] = read.withIdle;
  }
  return { sigma: TERM_IDS.map((term) => sigma[term]), correlation, calibrated: TERM_IDS.map(() => false) };
}
