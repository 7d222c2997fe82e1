import { inverse, Matrix } from 'ml-matrix';
import type { Board } from '../../../shared-types/board.ts';
import { preheaterById } from '../../../shared-types/library/preheaters.ts';
import type { Plan } from '../../../shared-types/plan.ts';
import type { TermSteps } from '../../../shared-types/uncertainty.ts';
import { type BoardReadings, boardOver, type PreheaterFigures } from '../board-over-preheater.ts';

/** How far film and lag of a preheater may lie from its kind's before it is read: logarithms (A). */
export const PREHEATER_PRIOR = { film: Math.log(1.5), lag: Math.log(2) } as const;
/** What one reading of a thermocouple taped on a board may be off by, K, and the share that all of them are off by. */
export const READING_K = 3;
const BIAS_K = 3;
const NOISE_K = 1;
const NUDGE = 0.05;

/** What the readings depend on beside film and lag, one standard deviation each. */
export type Others = Required<Pick<TermSteps, 'idle' | 'inPlane'>>;

/**
 * `sigma`: standard deviation of the film's logarithm. `withIdle`: correlation of what film and losses are off by; the
 * readings tell their balance better than either.
 */
export type FilmDoubt = { sigma: number; withIdle: number };

/**
 * Doubt of the logarithm of a film fitted to board readings. The fit leaves the board as the model has it,
 * so what is not known of losses and copper, and the bead's bias, go into the film. Null: the zone heats no place of it.
 */
export function filmDoubt(
  board: Board,
  plan: Plan,
  given: BoardReadings,
  fitted: PreheaterFigures,
  others: Others,
): FilmDoubt | null {
  const at = (figures: PreheaterFigures, steps: TermSteps = {}) => boardOver(board, plan, given, figures, steps);
  const base = at(fitted);
  const up = Math.exp(NUDGE);
  const moved = [
    at({ ...fitted, filmWm2K: fitted.filmWm2K * up }),
    at({ ...fitted, lagS: fitted.lagS * up }),
    at(fitted, { idle: NUDGE }),
    at(fitted, { inPlane: NUDGE }),
  ];
  if (!base) return null;
  const columns = moved.map((one) => base.map((celsius, row) => ((one?.[row] ?? celsius) - celsius) / NUDGE));
  const [film, lag, idle, inPlane] = columns as [number[], number[], number[], number[]];
  const slopes = new Matrix([film, lag]).transpose();
  const prior = Matrix.diag([PREHEATER_PRIOR.film ** 2, PREHEATER_PRIOR.lag ** 2]);
  const turned = slopes.transpose().div(READING_K ** 2);
  const gain = inverse(Matrix.add(turned.mmul(slopes), inverse(prior))).mmul(turned);
  // What the fit makes of everything it does not know of, and of what it holds back towards the kind's own figures.
  const left = Matrix.sub(gain.mmul(slopes), Matrix.eye(2));
  const variance = (effects: Matrix) => effects.mmul(effects.transpose()).get(0, 0);
  const shared = [idle.map((one) => one * others.idle), inPlane.map((one) => one * others.inPlane)];
  const errors = new Matrix([...shared, base.map(() => BIAS_K)]).transpose();
  const heldBack = left.mmul(prior).mmul(left.transpose()).get(0, 0);
  const effects = gain.mmul(errors);
  const sigma = Math.sqrt(variance(effects) + NOISE_K ** 2 * variance(gain) + heldBack);
  return { sigma, withIdle: -effects.get(0, 0) / sigma };
}

/** The doubt that a plan's own board readings leave of its preheater's film; null: it was not fitted to any. */
export function readFilmDoubt(board: Board, plan: Plan, others: Others): FilmDoubt | null {
  const { boardReadings, preheater } = plan.station;
  if (!boardReadings || boardReadings.readings.length === 0 || preheater.filmWm2K === undefined) return null;
  const { filmWm2K, lagS = preheaterById(preheater.kind).lagS } = preheater;
  const readings = [...boardReadings.readings].sort((a, b) => a.atS - b.atS);
  return filmDoubt(board, plan, { ...boardReadings, readings }, { filmWm2K, lagS }, others);
}
