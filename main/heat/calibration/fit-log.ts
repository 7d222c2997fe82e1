import { Matrix } from 'ml-matrix';
import type { Board } from '../../../shared-types/board.ts';
import type { Calibration, Plan } from '../../../shared-types/plan.ts';
import { fail, type Result, succeed } from '../../../shared-types/problem.ts';
import type { FitProgress } from '../../../shared-types/study.ts';
import { TERM_IDS, type TermId } from '../../../shared-types/uncertainty.ts';
import { HAND_REPEAT_SIGMA_K, isHandHeld, priorBelief } from '../uncertainty/priors.ts';
import { corrected, type LogModels } from './grid-correction.ts';
import { type Residuals, type Slopes, type Solution, solveLeastSquares } from './least-squares.ts';
import { ATTACHMENT_BIAS_K, LOG_GRIDS, type LoggedPoint, type LogReading, logModel, readingsOf } from './log-model.ts';
import { type LogNoise, noiseOf, USUAL_NOISE_K } from './log-noise.ts';
import { type SlopedModel, sloped, type Terms } from './log-slopes.ts';

/** A term whose deviation stays above this share of its prior was not identified by the log. */
const UNTOLD = 0.8;
/** The grid's error is found anew while a term moves further than this from where it was found, in prior deviations. */
const FAR = 0.7;
const MOST_CORRECTIONS = 3;
/** How near the solution is: in its own deviations, all together. */
const STILL = { coarse: 0.5, corrected: 0.1 } as const;

export type LogFit = {
  calibration: Calibration;
  /** Per point, K: what is left between log and fitted model, and the bias it found for the bead. */
  residuals: { tagId: string; rmsK: number; worstK: number; biasK: number }[];
  /** Per term in its own coordinate: the step found, prior and fitted deviation; `told` false: not identified. */
  terms: { id: TermId; step: number; priorSigma: number; sigma: number; told: boolean }[];
};

/** Unknowns, all of prior deviation 1: the terms, the hand of this one run (a step of the outlet), a bias per point. */
const HAND = TERM_IDS.length;
const OUTLET = TERM_IDS.indexOf('outlet');

/** The hand's repeat as a step of the outlet, K: at the target about half of the outlet's step arrives (A). */
export const handInOutlet = (plan: Plan): number => (isHandHeld(plan) ? HAND_REPEAT_SIGMA_K / 0.5 : 0);

type Setting = {
  sigma: readonly number[];
  handK: number;
  biasK: readonly number[];
  readings: readonly LogReading[];
  /** Hears what is left after each round, root mean square, K. */
  told?: (leftK: number) => void;
};

/** The terms of the logged run: those looked for, and the hand's share of the outlet. */
function termsOf({ sigma, handK }: Setting, unknowns: Float64Array): Terms {
  const terms = unknowns.slice(0, HAND);
  terms[OUTLET]! += (handK / sigma[OUTLET]!) * unknowns[HAND]!;
  return terms;
}

const residualsBy =
  (setting: Setting, model: SlopedModel, noiseK: number): Residuals =>
  (unknowns) => {
    const said = model.says(termsOf(setting, unknowns));
    if (!said.ok) return said;
    return succeed(
      said.value.map((value, row) => {
        const { celsius, point } = setting.readings[row]!;
        return (celsius - value - setting.biasK[point]! * unknowns[HAND + 1 + point]!) / noiseK;
      }),
    );
  };

/** Slopes of all unknowns: the terms by differences; hand and biases follow. */
const slopesBy =
  (setting: Setting, model: SlopedModel, noiseK: number): Slopes =>
  (unknowns) => {
    const { biasK, handK, sigma, readings } = setting;
    const rises = model.rises(termsOf(setting, unknowns));
    if (!rises.ok) return rises;
    const slopes = Matrix.zeros(readings.length, HAND + 1 + biasK.length);
    slopes.setSubMatrix(rises.value, 0, 0);
    readings.forEach(({ point }, row) => {
      slopes.set(row, HAND, (handK / sigma[OUTLET]!) * slopes.get(row, OUTLET));
      slopes.set(row, HAND + 1 + point, biasK[point]!);
    });
    return succeed(slopes.div(noiseK));
  };

type Fitted = Solution & { left: Float64Array; noise: LogNoise };

/** One solution from `start` on, and the noise it leaves. */
function solved(setting: Setting, model: SlopedModel, start: Float64Array, noiseK: number, stillAt: number) {
  const found = solveLeastSquares(
    start,
    residualsBy(setting, model, noiseK),
    slopesBy(setting, model, noiseK),
    stillAt,
    (residuals) => setting.told?.(rms(residuals) * noiseK),
  );
  if (!found.ok) return found;
  const { residuals, covariance } = found.value;
  const left = residuals.map((one) => one * noiseK);
  const noise = noiseOf(setting.readings, left, start.length - covariance.trace());
  return succeed<Fitted>({ ...found.value, left, noise });
}

/** On the coarse grid first, then with its error taken off; each time with the noise that the one before left. */
function solveInStages(setting: Setting, models: LogModels): Result<Fitted> {
  const blank = new Float64Array(HAND + 1 + setting.biasK.length);
  let now = solved(setting, models.coarse, blank, USUAL_NOISE_K, STILL.coarse);
  for (let round = 0; round < MOST_CORRECTIONS && now.ok; round++) {
    const at = termsOf(setting, now.value.unknowns);
    const model = corrected(models, at);
    if (!model.ok) return model;
    for (let pass = 0; pass < 2 && now.ok; pass++) {
      now = solved(setting, model.value, now.value.unknowns, now.value.noise.effectiveK, STILL.corrected);
    }
    if (now.ok && termsOf(setting, now.value.unknowns).every((term, index) => Math.abs(term - at[index]!) < FAR)) break;
  }
  return now;
}

export type FitOptions = {
  isCancelled?: () => boolean;
  logName?: string;
  /** Told after each round of the fit. */
  onRound?: (progress: FitProgress) => void;
};

/**
 * Fits the model's terms to a logged run: least squares with the priors as further rows, so that what the log does not
 * tell stays as it was. Each bead has a bias that all its readings share. Pure and deterministic.
 * Problems: those of the log's model ('cancelled' among them); 'evaluation-failed' without readings.
 */
export function fitLog(
  board: Board,
  plan: Plan,
  runId: string,
  points: readonly LoggedPoint[],
  { isCancelled, logName = '', onRound }: FitOptions = {},
): Result<LogFit> {
  const readings = readingsOf(points);
  if (readings.length === 0) return fail('evaluation-failed', { detail: { reason: 'the log holds no readings' } });
  let round = 0;
  const setting: Setting = {
    ...{ sigma: priorBelief(board, plan).sigma, handK: handInOutlet(plan), readings },
    biasK: points.map(({ attachment }) => ATTACHMENT_BIAS_K[attachment]),
    told: (leftK) => onRound?.({ round: ++round, leftK }),
  };
  const on = (grid: keyof typeof LOG_GRIDS) =>
    sloped(logModel(board, plan, runId, points, readings, LOG_GRIDS[grid], isCancelled), setting.sigma);
  const found = solveInStages(setting, { coarse: on('coarse'), fine: on('fine'), even: on('even') });
  return found.ok ? succeed(fitOf(setting, found.value, board.name, logName, points)) : found;
}

const rms = (values: Float64Array): number =>
  Math.sqrt(values.reduce((sum, one) => sum + one * one, 0) / Math.max(1, values.length));

function fitOf(
  { sigma, biasK, readings }: Setting,
  { unknowns, left, covariance }: Fitted,
  board: string,
  log: string,
  points: readonly LoggedPoint[],
): LogFit {
  const spread = TERM_IDS.map((_, index) => Math.sqrt(covariance.get(index, index)));
  const terms = TERM_IDS.map((id, index) => ({
    ...{ id, step: unknowns[index]! * sigma[index]!, priorSigma: sigma[index]! },
    ...{ sigma: spread[index]! * sigma[index]!, told: spread[index]! < UNTOLD },
  }));
  const correlation = TERM_IDS.flatMap((_, row) =>
    TERM_IDS.map((_, column) => (row === column ? 1 : covariance.get(row, column) / (spread[row]! * spread[column]!))),
  );
  return {
    terms,
    calibration: {
      ...{ board, log, readings: readings.length, leftK: rms(left), correlation },
      terms: terms.map(({ id, step, sigma: one }) => ({ id, step, sigma: one })),
    },
    residuals: points.map(({ tagId }, point) => {
      const own = left.filter((_, row) => readings[row]!.point === point);
      return {
        ...{ tagId, rmsK: rms(own), biasK: biasK[point]! * unknowns[HAND + 1 + point]! },
        worstK: own.reduce((worst, one) => (Math.abs(one) > Math.abs(worst) ? one : worst), 0),
      };
    }),
  };
}
