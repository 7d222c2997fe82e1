import { expect, test } from 'vitest';
import { calibrateRun } from '../../../../../main/heat/calibration/calibrate-run.ts';
import { bandRuns } from '../../../../../main/heat/uncertainty/band-runs.ts';
import { beliefOf, calibratedSteps } from '../../../../../main/heat/uncertainty/calibrated.ts';
import { withBands } from '../../../../../main/heat/uncertainty/with-bands.ts';
import { searchProfile } from '../../../../../main/planning/search/search-profile.ts';
import type { Board } from '../../../../../shared-types/board.ts';
import type { Plan } from '../../../../../shared-types/plan.ts';
import type { SearchBounds } from '../../../../../shared-types/profile-search.ts';
import { METRIC } from '../../../../../shared-types/words/measures.ts';
import { searchLines } from '../../../../../shared-types/words/profile-search.ts';
import { loggedBoard, loggedOrder, loggedPlan } from '../../../../support/heat/log-file.ts';
import { segment } from '../../heat/support.ts';

/** The customer's board: another one than the scrap board of the log, on the same station. */
const board: Board = {
  ...loggedBoard,
  name: 'customer',
  parts: loggedBoard.parts.filter(({ refdes }) => refdes !== 'E1'),
};
const PROFILE = [
  segment('Preheat', 100, [25, 330], null),
  segment('Soak', 80, [330, 330], null),
  segment('Gas', 40, [330, 330], [300, 300]),
  segment('Cool', 20, [25, 25], null),
];
const plan: Plan = { ...loggedPlan, heatRuns: [{ ...loggedPlan.heatRuns[0]!, segments: PROFILE }] };
const BOUNDS: SearchBounds = {
  ...{ belowC: { from: 280, to: 340 }, leadS: { from: 160, to: 200 }, gasC: { from: 270, to: 320 } },
  ...{ gasS: { from: 10, to: 120 }, toPeakS: 480 },
};

test('a log of a scrap board narrows the terms of the station only, and the search counts their bands', () => {
  const told = calibrateRun(loggedBoard, loggedPlan, loggedOrder());
  if (!told.ok) throw new Error(told.problem.code);
  const calibrated: Plan = { ...plan, station: { ...plan.station, calibration: told.value.calibration } };

  expect(Object.keys(calibratedSteps(board, calibrated)).sort()).toEqual(['dilution', 'nozzle', 'outlet', 'preheater']);
  const [before, after] = [beliefOf(board, plan), beliefOf(board, calibrated)];
  expect(after.calibrated.filter(Boolean)).toHaveLength(4);
  after.sigma.forEach((sigma, term) => {
    if (after.calibrated[term]) expect(sigma).toBeLessThanOrEqual(before.sigma[term]! * 1.001);
    else expect(sigma).toBe(before.sigma[term]);
  });

  const search = (of: Plan) => {
    const answer = searchProfile(board, of, { runId: 'run-1', bounds: BOUNDS });
    if (!answer.ok) throw new Error(JSON.stringify(answer.problem));
    return answer.value;
  };
  const plain = search(plan);
  expect(plain).toMatchObject({ banded: false });
  expect(plain.present.worst!.bandK).toBe(0);
  expect(searchLines(plain, METRIC)[0]).toContain('not calibrated');

  const unlocked = search(calibrated);
  expect(unlocked).toMatchObject({ banded: true });
  expect(searchLines(unlocked, METRIC)[0]).toContain('calibrated station');
  const { worst, marginK } = unlocked.present;
  const runs = bandRuns(board, calibrated, beliefOf(board, calibrated));
  if (!runs.ok) throw new Error(runs.problem.code);
  const own = withBands(runs.value.base, runs.value).parts.find(({ refdes }) => refdes === worst!.refdes)!;
  expect(worst!.bandK).toBeCloseTo(own.bands![`${worst!.judgedOn}K`], 9);
  expect(marginK).toBeCloseTo(worst!.limitC - worst!.peakC - worst!.bandK, 9);
  expect(unlocked.best).toMatchObject({ grid: 'fine', misses: [] });
  expect(unlocked.best!.segments).not.toEqual(plain.best?.segments);
}, 60_000);
