import { expect, test } from 'vitest';
import { boardOver } from '../../../../../main/heat/board-over-preheater.ts';
import { fitPreheater } from '../../../../../main/heat/preheater-fit.ts';
import { bandRuns } from '../../../../../main/heat/uncertainty/band-runs.ts';
import { beliefOf } from '../../../../../main/heat/uncertainty/calibrated.ts';
import { PREHEATER_PRIOR } from '../../../../../main/heat/uncertainty/preheater-doubt.ts';
import { boardDoubt, PRIOR_SIGMA, priorSigma } from '../../../../../main/heat/uncertainty/priors.ts';
import { withBands } from '../../../../../main/heat/uncertainty/with-bands.ts';
import type { Plan } from '../../../../../shared-types/plan.ts';
import { normals } from '../../../../support/heat/random.ts';
import { smallBoard, smallPlan } from '../support.ts';

const board = smallBoard();
const plan = smallPlan(board);
const TIMES_S = [60, 120, 240];
const KIND = { filmWm2K: 25, lagS: 40 };
const asked = { sourceC: 320, readings: TIMES_S.map((atS) => ({ atS, boardC: 0 })) };

/** A plan whose preheater was fitted to what the model says of the kind's own figures. */
function readPlan(times: readonly number[]): Plan {
  const said = boardOver(board, plan, asked, KIND)!;
  const readings = asked.readings
    .map(({ atS }, index) => ({ atS, boardC: said[index]! }))
    .filter(({ atS }) => times.includes(atS));
  const preheater = { ...plan.station.preheater, ...KIND };
  return { ...plan, station: { ...plan.station, preheater, boardReadings: { ...asked, readings } } };
}

test('board readings narrow the preheater, three more than one; readings that nothing was fitted to do not', () => {
  const before = priorSigma(board, plan).preheater;
  expect(before).toBe(PRIOR_SIGMA.preheater);
  const [three, one] = [TIMES_S, [60]].map((times) => priorSigma(board, readPlan(times)).preheater);
  expect(three).toBeLessThan(0.8 * before);
  expect(one).toBeGreaterThan(three!);
  const read = readPlan(TIMES_S);
  const unfitted = { ...read, station: { ...read.station, preheater: plan.station.preheater } };
  expect(priorSigma(board, unfitted).preheater).toBe(before);
});

test('copper that is known makes the same readings tell more', () => {
  const known = { ...board, laminate: { ...board.laminate, layersKnown: true } };
  expect(priorSigma(known, readPlan(TIMES_S)).preheater).toBeLessThan(priorSigma(board, readPlan(TIMES_S)).preheater);
});

test('the site before the gas comes follows: the balance of film and losses is known better than either', () => {
  const bandOf = (one: Plan) => {
    const runs = bandRuns(board, one, beliefOf(board, one));
    if (!runs.ok) throw new Error(runs.problem.code);
    return withBands(runs.value.base, runs.value).runs[0]!.segments[1]!.siteBandK!;
  };
  expect(bandOf(readPlan(TIMES_S))).toBeLessThan(0.8 * bandOf(plan));
});

test('the doubt is what the fit is really off by, neither less nor more', () => {
  const draw = normals(11);
  const { idle, inPlane } = boardDoubt(board);
  const DRAWS = 40;
  let squares = 0;
  for (let round = 0; round < DRAWS; round++) {
    const film = PREHEATER_PRIOR.film * draw();
    const figures = { filmWm2K: 25 * Math.exp(film), lagS: 40 * Math.exp(PREHEATER_PRIOR.lag * draw()) };
    const said = boardOver(board, plan, asked, figures, { idle: idle * draw(), inPlane: inPlane * draw() })!;
    const biasK = 3 * draw();
    const readings = TIMES_S.map((atS, index) => ({ atS, boardC: said[index]! + biasK + draw() }));
    const fit = fitPreheater(board, plan, { ...asked, readings });
    if (!fit.ok) throw new Error(fit.problem.code);
    squares += ((Math.log(fit.value.filmWm2K / 25) - film) / fit.value.filmSigma) ** 2 / DRAWS;
  }
  // The mean square of 40 draws is known to 22 %, one standard deviation.
  expect(squares).toBeGreaterThan(0.5);
  expect(squares).toBeLessThan(1.6);
}, 120_000);
