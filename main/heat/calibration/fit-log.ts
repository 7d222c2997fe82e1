import { Matrix } from 'ml-matrix';
import type { Board } from '../../../shared-types/board.ts';
import type { Calibration, Plan } from '../../../shared-types/plan.ts';
import { fail, type Result, succeed } from '../../../shared-types/problem.ts';
import { TERM_IDS, type TermId, type TermSteps } from '../../../shared-types/uncertainty.ts';
import { HAND_REPEAT_SIGMA_K, isHandHeld, priorBelief } from '../uncertainty/priors.ts';
import { type Solution, solveLeastSquares } from './least-squares.ts';
import { ATTACHMENT_BIAS_K, type LoggedPoint, type LogReading, logModel, readingsOf } from './log-model.ts';

/** What a fitted model still says wrong at one thermocouple all the time; one standard deviation, K (A). */
const MODEL_BIAS_K = 1.5;
/** Reading to reading: the bead's noise and what the model says wrong for a while, K (A). */
const NOISE_K = 1.5;
/** Step of the differences, in prior standard deviations. */
const PROBE = 0.25;
/** A term whose deviation stays above this share of its prior was not identified by the log. */
const UNTOLD = 0.8;
/**
 * No term is known better than grid and laws allow, in its own coordinate: a preheater's zone of 40 mm is one cell of
 * the 2 mm grid longer or shorter, 5 % of its area (A).
 */
const FLOOR: Record<TermId, number> = {
  ...{ nozzle: 0.01, dilution: 0.02, outlet: 1, preheater: 0.03 },
  ...{ inPlane: 0.03, joints: 0.05, idle: 0.015 },
};

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
const handInOutlet = (plan: Plan): number => (isHandHeld(plan) ? HAND_REPEAT_SIGMA_K / 0.5 : 0);

type Setting = { sigma: readonly number[]; handK: number; biasK: readonly number[]; readings: readonly LogReading[] };

function stepsOf({ sigma, handK }: Setting, unknowns: Float64Array): TermSteps {
  const outlet = handK * unknowns[HAND]!;
  return Object.fromEntries(
    TERM_IDS.map((term, index) => [term, unknowns[index]! * sigma[index]! + (index === OUTLET ? outlet : 0)]),
  );
}

/** How the residuals fall per unknown: differences for the terms; hand and biases follow from them. */
function slopesOf(
  { sigma, handK, biasK, readings }: Setting,
  residualsOf: (unknowns: Float64Array) => Result<Float64Array>,
  unknowns: Float64Array,
  residuals: Float64Array,
): Result<Matrix> {
  const slopes = new Matrix(readings.length, HAND + 1 + biasK.length);
  for (let term = 0; term < HAND; term++) {
    const moved = unknowns.slice();
    moved[term]! += PROBE;
    const there = residualsOf(moved);
    if (!there.ok) return there;
    for (let row = 0; row < readings.length; row++) {
      slopes.set(row, term, (residuals[row]! - there.value[row]!) / PROBE);
    }
  }
  readings.forEach(({ point }, row) => {
    slopes.set(row, HAND, (handK / sigma[OUTLET]!) * slopes.get(row, OUTLET));
    slopes.set(row, HAND + 1 + point, biasK[point]! / NOISE_K);
  });
  return succeed(slopes);
}

/**
 * Fits the model's terms to a logged run on the 2 mm grid: least squares with the priors as further rows, so that what
 * the log does not tell stays as it was. Each bead has a bias that all its readings share. Pure and deterministic.
 * Problems: those of the log's model ('cancelled' among them); 'evaluation-failed' without readings.
 */
export function fitLog(
  board: Board,
  plan: Plan,
  runId: string,
  points: readonly LoggedPoint[],
  { isCancelled, logName = '' }: { isCancelled?: () => boolean; logName?: string } = {},
): Result<LogFit> {
  const readings = readingsOf(points);
  if (readings.length === 0) return fail('evaluation-failed', { detail: { reason: 'the log holds no readings' } });
  const setting: Setting = {
    ...{ sigma: priorBelief(board, plan).sigma, handK: handInOutlet(plan), readings },
    biasK: points.map(({ attachment }) => Math.hypot(ATTACHMENT_BIAS_K[attachment], MODEL_BIAS_K)),
  };
  const model = logModel(board, plan, runId, points, readings, undefined, isCancelled);
  const residualsOf = (unknowns: Float64Array): Result<Float64Array> => {
    const said = model(stepsOf(setting, unknowns));
    if (!said.ok) return said;
    const bias = (point: number) => setting.biasK[point]! * unknowns[HAND + 1 + point]!;
    return succeed(
      said.value.map((value, row) => (readings[row]!.celsius - value - bias(readings[row]!.point)) / NOISE_K),
    );
  };
  const solved = solveLeastSquares(HAND + 1 + points.length, residualsOf, (unknowns, residuals) =>
    slopesOf(setting, residualsOf, unknowns, residuals),
  );
  return solved.ok ? succeed(fitOf(setting, solved.value, board.name, logName, points)) : solved;
}

const rms = (values: Float64Array): number =>
  Math.sqrt(values.reduce((sum, one) => sum + one * one, 0) / Math.max(1, values.length));

function fitOf(
  { sigma, biasK, readings }: Setting,
  { unknowns, residuals, covariance }: Solution,
  board: string,
  log: string,
  points: readonly LoggedPoint[],
): LogFit {
  const spread = TERM_IDS.map((id, index) => {
    const own = sigma[index]!;
    return own * Math.sqrt(covariance.get(index, index) + (FLOOR[id] / own) ** 2);
  });
  const terms = TERM_IDS.map((id, index) => ({
    ...{ id, step: unknowns[index]! * sigma[index]!, priorSigma: sigma[index]!, sigma: spread[index]! },
    told: Math.sqrt(covariance.get(index, index)) < UNTOLD,
  }));
  const correlation = TERM_IDS.flatMap((_, row) =>
    TERM_IDS.map((_, column) => {
      if (row === column) return 1;
      return (covariance.get(row, column) * sigma[row]! * sigma[column]!) / (spread[row]! * spread[column]!);
    }),
  );
  const left = residuals.map((one) => one * NOISE_K);
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
