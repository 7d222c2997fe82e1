import { describe, expect, it } from 'vitest';
import { actNumbersOf, gasEndsAt, segmentEnds } from '../../../../main/work-map/facts/act-numbers.ts';
import type { Assessment, RunResult } from '../../../../shared-types/evaluation.ts';
import type { Plan } from '../../../../shared-types/plan.ts';
import { emptyAssessment, exposure } from './assessment.ts';
import { madeUpBoard, madeUpPlan } from './made-up.ts';

const board = madeUpBoard(40);
const watch = (name: string, side: 'top' | 'bottom', x: number) => ({
  id: name,
  kind: 'watchPoint' as const,
  order: null,
  note: '',
  name,
  side,
  x,
  y: 46,
  refdes: null,
});
const base = madeUpPlan(board, { tags: 0 });
const segment = (name: string, seconds: number, gas: number | null) => ({
  name,
  seconds,
  preheater: { startC: 200, endC: 200 },
  gas: gas === null ? null : { startC: gas, endC: gas },
  flowLMin: 30,
  siteId: null,
});
const run = {
  ...base.heatRuns[0],
  segments: [segment('a', 100, null), segment('b', 60, 350), segment('c', 20, 350), segment('d', 90, null)],
};
const plan: Plan = {
  ...base,
  heatRuns: [run],
  tags: [watch('W1', 'bottom', 58), watch('W2', 'top', 70), watch('W3', 'top', 61)],
};

const result: RunResult = {
  runId: run.id,
  seconds: 270,
  fields: { top: new Float32Array(), bottom: new Float32Array() },
  targets: [
    {
      siteId: 'site-1',
      refdes: 'U1',
      coldestJointC: 209,
      hottestJointC: 221,
      skinMaxC: 231,
      skinLimitC: 245,
      liquidusC: 220,
      secondsAllAbove: 0,
      secondsAnyAbove: 8,
      moltenAtS: null,
      windowC: { from: 225, to: 230 },
      verdict: 'partly',
    },
  ],
  watch: ['W1', 'W2', 'W3'].map((name, index) => ({
    tagId: name,
    name,
    peakC: 200 + index,
    peakAtS: 170,
    atSegmentEndC: [100 + index, 150 + index, 200 + index, 90],
  })),
  segments: [],
};
const assessment: Assessment = {
  ...emptyAssessment(),
  evaluation: {
    ...emptyAssessment().evaluation,
    runs: [result],
    parts: [
      exposure('J1', { state: 'over', marginK: -3, worstRunId: run.id }),
      exposure('J2', { state: 'over', marginK: -9, worstRunId: run.id }),
      exposure('J3', { state: 'over', marginK: -99, worstRunId: 'another' }),
      exposure('C1', { state: 'over', marginK: -20, worstRunId: run.id }),
    ],
  },
  actions: [{ refdes: 'C1', action: 'leave-will-reflow', reason: 'small-part-reflows', figures: {}, done: false }],
  runNumbers: [
    { runId: run.id, siteId: 'site-1', refdes: 'U1' },
    { runId: 'another', siteId: 'site-1', refdes: 'U1' },
  ],
};

describe('numbers to act on', () => {
  const [act] = actNumbersOf(plan, assessment);

  it('start the gas at the end of the segment before it and end it with the last one', () => {
    expect(segmentEnds(run)).toEqual([100, 160, 180, 270]);
    expect(act.gasOnAtS).toBe(100);
    expect(act.gasOffAtS).toBe(180);
    expect(act.seconds).toBe(270);
  });

  it('read the thermocouple nearest to the site on the worked side', () => {
    expect(act.readsAtGasOn).toEqual({ watch: 'W3', celsius: 102 });
    expect(act.readsAtGasOff).toEqual({ watch: 'W3', celsius: 202 });
  });

  it('name targets that stay solid only where they have to melt', () => {
    expect(act.unmelted.map((target) => target.refdes)).toEqual(['U1']);
    const [dressing] = actNumbersOf({ ...plan, heatRuns: [{ ...run, kind: 'site-preparation' }] }, assessment);
    expect(dressing.unmelted).toEqual([]);
  });

  it('keep to their own run, the worst part first, without parts that are left to reflow', () => {
    expect(act.numbers.length).toBe(1);
    expect(act.overParts.map((part) => part.refdes)).toEqual(['J2', 'J1']);
  });

  it('tell when the gas leaves each site; a segment without a site serves the first', () => {
    const two = {
      ...run,
      siteIds: ['site-1', 'site-2'],
      segments: [segment('a', 100, 350), { ...segment('b', 60, 350), siteId: 'site-2' }, segment('c', 50, null)],
    };
    expect(gasEndsAt(two, 'site-1')).toBe(100);
    expect(gasEndsAt(two, 'site-2')).toBe(160);
    expect(gasEndsAt(two, 'site-3')).toBeNull();
  });

  it('say so when a run was not evaluated', () => {
    const [bare] = actNumbersOf(plan, emptyAssessment());
    expect(bare.result).toBeNull();
    expect(bare.readsAtGasOn).toBeNull();
  });
});
