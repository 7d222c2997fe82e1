import { Matrix } from 'ml-matrix';
import { expect, test } from 'vitest';
import { fitLog } from '../../../../../main/heat/calibration/fit-log.ts';
import { solveLeastSquares } from '../../../../../main/heat/calibration/least-squares.ts';
import { beliefOf, calibratedSteps } from '../../../../../main/heat/uncertainty/calibrated.ts';
import { succeed } from '../../../../../shared-types/problem.ts';
import type { FitProgress } from '../../../../../shared-types/study.ts';
import { TERM_IDS } from '../../../../../shared-types/uncertainty.ts';
import { handCase } from '../../../../support/heat/calibration-cases.ts';
import { drawnLog } from '../../../../support/heat/calibration-truth.ts';
import { evaluated, exposure } from '../support.ts';

const hand = handCase();
const { board, plan } = hand;
const { truth, points } = drawnLog(hand, 5);
const rounds: FitProgress[] = [];
const fit = fitLog(board, plan, 'run-1', points, { onRound: (one) => rounds.push(one) });
if (!fit.ok) throw new Error(fit.problem.code);
const { calibration, terms, residuals } = fit.value;

test('least squares with priors: a linear case agrees with the formula of Bayes, by hand', () => {
  // y = 3 a + noise 1, read 6; prior a ~ N(0, 1): mean 3 x 6 / (9 + 1), variance 1 / (9 + 1). b is never seen.
  const solved = solveLeastSquares(
    new Float64Array(2),
    ([a]) => succeed(Float64Array.of(6 - 3 * a!)),
    () => succeed(new Matrix([[3, 0]])),
  );
  if (!solved.ok) throw new Error('not solved');
  expect(solved.value.unknowns[0]).toBeCloseTo(1.8, 9);
  expect(solved.value.unknowns[1]).toBe(0);
  expect(solved.value.covariance.get(0, 0)).toBeCloseTo(0.1, 9);
  expect(solved.value.covariance.get(1, 1)).toBeCloseTo(1, 9);
});

test('a fitted log narrows what it tells, finds it near the truth, and says what it could not tell', () => {
  const told = terms.filter((term) => term.told).map(({ id }) => id);
  expect(told).toContain('preheater');
  expect(told).toContain('nozzle');
  for (const { id, step, sigma, priorSigma } of terms) {
    expect(Math.abs(step - truth[id]!), id).toBeLessThan(3 * sigma);
    expect(sigma).toBeLessThan(priorSigma * 1.3);
  }
  expect(calibration.leftK).toBeLessThan(4);
  expect(residuals.map(({ tagId }) => tagId)).toEqual(points.map(({ tagId }) => tagId));
});

test('a fit tells where it stands: round by round, down to what is left in the end', () => {
  expect(rounds.length).toBeGreaterThan(2);
  expect(rounds.map(({ round }) => round)).toEqual(rounds.map((_, index) => index + 1));
  expect(rounds.at(-1)!.leftK).toBeLessThan(rounds[0]!.leftK);
  expect(rounds.at(-1)!.leftK).toBeCloseTo(calibration.leftK, 1);
});

test('the fit is the same every time, and can be stopped', () => {
  expect(fitLog(board, plan, 'run-1', points)).toEqual(fit);
  expect(fitLog(board, plan, 'run-1', points, { isCancelled: () => true })).toMatchObject({
    problem: { code: 'cancelled' },
  });
});

test('terms of the station travel to other boards, terms of the board do not', () => {
  const calibrated = { ...plan, station: { ...plan.station, calibration } };
  expect(Object.keys(calibratedSteps(board, calibrated)).sort()).toEqual([...TERM_IDS].sort());
  const other = { ...board, name: 'another' };
  expect(Object.keys(calibratedSteps(other, calibrated)).sort()).toEqual(
    ['dilution', 'nozzle', 'outlet', 'preheater'].sort(),
  );
  const [own, away, prior] = [beliefOf(board, calibrated), beliefOf(other, calibrated), beliefOf(other, plan)];
  const joints = TERM_IDS.indexOf('joints');
  expect(own.calibrated).toEqual(TERM_IDS.map(() => true));
  expect(away.sigma[joints]).toBe(prior.sigma[joints]);
  expect(away.sigma[0]).toBeLessThan(prior.sigma[0]!);
});

test('a calibrated station is evaluated as it was found, its bands narrower', () => {
  const calibrated = { ...plan, station: { ...plan.station, calibration } };
  const before = exposure(evaluated(board, plan), 'U2').body.maxC;
  const after = exposure(evaluated(board, calibrated), 'U2').body.maxC;
  const real = exposure(evaluated(board, plan, { steps: truth }), 'U2').body.maxC;
  expect(Math.abs(after - real)).toBeLessThan(Math.abs(before - real));
});

test('typed peaks alone are a log too', () => {
  const peaks = points.map((point) => ({
    ...point,
    samples: [],
    peakC: Math.max(...point.samples.map(({ celsius }) => celsius)),
  }));
  const typed = fitLog(board, plan, 'run-1', peaks);
  if (!typed.ok) throw new Error(typed.problem.code);
  expect(typed.value.calibration.readings).toBe(5);
  expect(typed.value.terms.some(({ told }) => !told)).toBe(true);
});
