import { expect, test } from 'vitest';
import { alloyById } from '../../../../shared-types/library/alloys.ts';
import type { HeatRun } from '../../../../shared-types/plan.ts';
import { searchBoundsSchema } from '../../../../shared-types/profile-search.ts';
import { emptyPlan, segmentsForSites, siteOn, startingStation } from '../../../../shared-types/rules/new-plan.ts';
import { segmentsAt, shapeOf, toPeakS, usualBounds } from '../../../../shared-types/rules/profile-shape.ts';
import { part } from '../../main/heat/support.ts';

const station = startingStation();
const run = (siteIds: string[], kind: HeatRun['kind'] = 'removal'): HeatRun => ({
  ...{ id: 'run-1', name: 'Removal', kind, side: 'top', siteIds },
  segments: segmentsForSites(kind, siteIds, []),
});
const two: HeatRun = {
  ...run(['a', 'b']),
  segments: [
    { name: 'Preheat', seconds: 200, preheater: { startC: 23, endC: 350 }, gas: null, flowLMin: 0, siteId: null },
    { name: 'Soak', seconds: 100, preheater: { startC: 300, endC: 300 }, gas: null, flowLMin: 0, siteId: null },
    ...['a', 'b'].flatMap((siteId) => [
      {
        name: 'Up',
        seconds: 30,
        preheater: { startC: 300, endC: 300 },
        gas: { startC: 200, endC: 330 },
        flowLMin: 20,
        siteId,
      },
      {
        name: 'Hold',
        seconds: 20,
        preheater: { startC: 300, endC: 300 },
        gas: { startC: 330, endC: 330 },
        flowLMin: 20,
        siteId,
      },
    ]),
    { name: 'Cool', seconds: 90, preheater: { startC: 23, endC: 23 }, gas: null, flowLMin: 0, siteId: null },
  ],
};

test('the present figures give the present segments back', () => {
  for (const one of [two, run(['a'])]) {
    const shape = shapeOf(one)!;
    expect(segmentsAt(one, shape, shape.present, station)).toEqual(one.segments);
  }
});

test('the preheater moves as a whole within what it can; off stays off, cooling stays as it is', () => {
  const shape = shapeOf(two)!;
  expect(shape.present).toEqual({ belowC: 300, leadS: 300, gasC: 330, gasS: [50, 50] });
  const moved = segmentsAt(two, shape, { ...shape.present, belowC: 360, gasC: 350 }, station);
  expect(moved[0]!.preheater).toEqual({ startC: 23, endC: 400 });
  expect(moved[1]!.preheater).toEqual({ startC: 360, endC: 360 });
  expect(moved[2]!.gas).toEqual({ startC: 220, endC: 350 });
  expect(moved.at(-1)).toEqual(two.segments.at(-1));
});

test('preheat and soak share their seconds as before; the last stretch of gas at a site takes what is changed', () => {
  const shape = shapeOf(two)!;
  const moved = segmentsAt(two, shape, { ...shape.present, leadS: 240, gasS: [64, 24] }, station);
  expect(moved.map(({ seconds }) => seconds)).toEqual([160, 80, 30, 34, 14, 10, 90]);
  expect(toPeakS(moved)).toBe(240 + 64 + 24);
});

test('runs without gas, or that begin with it, are not searched', () => {
  expect(shapeOf(run(['a'], 'site-preparation'))).toBeNull();
  expect(shapeOf({ ...two, segments: two.segments.slice(2) })).toBeNull();
});

test('usual bounds hold the present profile, within what the preheater can', () => {
  for (const one of [two, run(['a']), run(['a'], 'installation')]) {
    const shape = shapeOf(one)!;
    const bounds = usualBounds(one, shape, { ...emptyPlan('T-1'), station });
    expect(searchBoundsSchema.safeParse(bounds).success).toBe(true);
    const { belowC, leadS, gasC, gasS } = shape.present;
    expect(bounds.belowC.from <= belowC && belowC <= bounds.belowC.to).toBe(true);
    expect(bounds.belowC.to).toBeLessThanOrEqual(station.preheater.largestC);
    expect(bounds.leadS.from <= leadS && leadS <= bounds.leadS.to).toBe(true);
    expect(bounds.gasC.from <= gasC && gasC <= bounds.gasC.to).toBe(true);
    expect(gasS.every((seconds) => bounds.gasS.from <= seconds && seconds <= bounds.gasS.to)).toBe(true);
    expect(bounds.toPeakS).toBeGreaterThanOrEqual(toPeakS(one.segments));
  }
});

test('tin-lead joints are to be at their peak in six minutes, lead-free ones in eight (J-STD-020 Table 5-2)', () => {
  const shape = shapeOf(run(['a']))!;
  const plan = emptyPlan('T-1');
  const site = { ...siteOn(part('U1', 10, 10, [10, 10, 1]), 'a'), alloyOff: 'sn63pb37' };
  expect(alloyById('sn63pb37')?.leadFree).toBe(false);
  const short = { ...run(['a']), segments: run(['a']).segments.map((one) => ({ ...one, seconds: 50 })) };
  expect(usualBounds(short, shape, { ...plan, sites: [site] }).toPeakS).toBe(360);
  expect(usualBounds(short, shape, { ...plan, sites: [{ ...site, alloyOff: 'sac305' }] }).toPeakS).toBe(480);
});
