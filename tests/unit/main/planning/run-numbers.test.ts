import { describe, expect, test } from 'vitest';
import { assess } from '../../../../main/planning/assess.ts';
import { siteReadingAt } from '../../../../main/planning/run-numbers.ts';
import type { Part } from '../../../../shared-types/board.ts';
import type { Evaluation, RunNumbers } from '../../../../shared-types/evaluation.ts';
import type { Plan } from '../../../../shared-types/plan.ts';
import type { Tag } from '../../../../shared-types/tags.ts';
import { boardOf, evaluationOf, exposureOf, type Heat, partOf, planOf, runsOf, targetOf } from './support.ts';

type Case = { part?: Part; heat?: Heat; tags?: Tag[]; evaluation?: (evaluation: Evaluation) => Evaluation };

/** Numbers of the removal run: preheat 190 s, soak 75 s, gas 75 s and hold 10 s (support.ts). */
function numbersFor({
  part = partOf('J1', 'connector-pbt'),
  heat,
  tags = [],
  evaluation = (same) => same,
}: Case): RunNumbers {
  const board = boardOf([part]);
  const base = planOf(board);
  const plan: Plan = { ...base, tags: [...base.tags, ...tags] };
  const found = evaluationOf(plan, heat ? [exposureOf(part, heat)] : [], { runs: runsOf(plan) });
  const numbers = assess(board, plan, evaluation(found)).runNumbers.filter((entry) => entry.runId === 'run-1');
  expect(numbers).toHaveLength(1);
  return numbers[0];
}

const watch: Tag = {
  id: 'w3',
  kind: 'watchPoint',
  name: 'W3',
  side: 'top',
  x: 60,
  y: 40,
  refdes: 'J1',
  order: null,
  note: '',
};
const reading = (evaluation: Evaluation): Evaluation => ({
  ...evaluation,
  runs: evaluation.runs.map((run) => ({
    ...run,
    watch: [{ tagId: 'w3', name: 'W3', peakC: 190, peakAtS: 340, atSegmentEndC: [] }],
  })),
});
const over: Heat = { skin: 226, shieldedSkin: 190, governedBy: 'skin', joint: 165, overAtS: 300 };

describe('numbers to act on', () => {
  test('start, planned gas, melting and stop', () => {
    expect(numbersFor({})).toEqual({
      runId: 'run-1',
      siteId: 'site-1',
      refdes: 'U1',
      startGasAtC: 150,
      gasFromS: 265,
      moltenAtS: 320,
      notMoltenByS: 350,
    });
  });

  test('a target that does not melt has no time to stop by', () => {
    const cold = (evaluation: Evaluation): Evaluation => ({
      ...evaluation,
      runs: evaluation.runs.map((run) => ({ ...run, targets: [targetOf({ verdict: 'partly', moltenAtS: null })] })),
    });
    const numbers = numbersFor({ evaluation: cold });
    expect(numbers.moltenAtS).toBeUndefined();
    expect(numbers.notMoltenByS).toBeUndefined();
  });

  test('one that melts after the gas has ended is not stopped before', () => {
    const late = (evaluation: Evaluation): Evaluation => ({
      ...evaluation,
      runs: evaluation.runs.map((run) => ({ ...run, targets: [targetOf({ moltenAtS: 358 })] })),
    });
    expect(numbersFor({ evaluation: late }).notMoltenByS).toBe(358);
  });

  test('the first neighbour over: seconds to spare, and the site reading at that time', () => {
    const numbers = numbersFor({ heat: over });
    expect(numbers).toMatchObject({ firstOver: 'J1', secondsToSpare: -20, abortOn: 'site', abortFor: 'J1' });
    // Gas runs from 265 s at 150 C to 340 s at 230 C: a straight line gives 187 C at 300 s.
    expect(numbers.abortAtC).toBeCloseTo(150 + (80 * 35) / 75, 6);
  });

  test('without the time of passing: the peak less the time over, which is never too late', () => {
    const { overAtS: _, ...untold } = over;
    const numbers = numbersFor({ heat: { ...untold, peakAtS: 345, secondsOver: 15 } });
    expect(numbers.secondsToSpare).toBe(10);
  });

  test('the time of another limit than the action is about says nothing', () => {
    expect(numbersFor({ heat: { ...over, governedBy: 'joint' } }).firstOver).toBeUndefined();
  });

  test('a neighbour that is over in another run only, or dealt with, is not counted', () => {
    expect(numbersFor({ heat: { ...over, worstRunId: 'run-3' } }).firstOver).toBeUndefined();
    const shield: Tag = { id: 's', kind: 'shield', refdes: 'J1', order: null, note: '', shield: 'foil-tent' };
    expect(numbersFor({ heat: { skin: 190, joint: 165 }, tags: [shield] }).abortAtC).toBeUndefined();
  });

  test('a watched neighbour is aborted at its own limit', () => {
    const numbers = numbersFor({ heat: { skin: 180, joint: 165 }, tags: [watch], evaluation: reading });
    expect(numbers).toMatchObject({ abortAtC: 200, abortOn: 'W3', abortFor: 'J1' });
  });

  test('where another neighbour goes over, the watched one does not speak for it', () => {
    const other: Tag = { ...watch, refdes: 'J2' };
    const board = boardOf([partOf('J1', 'connector-pbt'), partOf('J2', 'connector-pbt')]);
    const base = planOf(board);
    const plan: Plan = { ...base, tags: [...base.tags, other] };
    const exposures = [exposureOf(board.parts[1], over), exposureOf(board.parts[2], { skin: 120 })];
    const found = reading(evaluationOf(plan, exposures, { runs: runsOf(plan) }));
    const [numbers] = assess(board, plan, found).runNumbers;
    expect([numbers.abortOn, numbers.abortFor]).toEqual(['site', 'J1']);
    expect(numbersFor({ heat: over, tags: [watch], evaluation: reading })).toMatchObject({
      abortOn: 'W3',
      abortAtC: 200,
    });
  });

  test('a watched bypass part that may melt is aborted at the limit of its body, not of its joints', () => {
    const part = partOf('J1', 'chip-capacitor');
    const numbers = numbersFor({ part, heat: { body: 230, joint: 232 }, tags: [watch], evaluation: reading });
    expect(numbers.abortAtC).toBe(260);
  });
});

describe('joints of a watched neighbour', () => {
  const preset = { celsius: 180, origin: 'shop', source: { text: 'preset', how: 'found', confidence: 'M' } } as const;
  const abortAt = (part: Part, heat: Heat) =>
    numbersFor({ part, heat: { ...heat, limits: { joint: preset } }, tags: [watch], evaluation: reading }).abortAtC;

  test('below the preset they are held to it; beyond it, as planned, to their solidus', () => {
    expect(abortAt(partOf('J1', 'so'), { skin: 170, joint: 175 })).toBe(180);
    expect(abortAt(partOf('J1', 'so'), { skin: 195, joint: 199 })).toBe(217);
  });

  test('a part that is held from below may melt: only its body counts', () => {
    const coil = partOf('J1', 'power-inductor', { side: 'bottom', massG: 14, padAreaMm2: 120 });
    expect(abortAt(coil, { body: 225, joint: 224 })).toBe(245);
  });
});

describe('two sites in one run', () => {
  test('only the first site of a run has a start reading, as the readings are its own', () => {
    const board = boardOf([partOf('U2', 'bga', { x: 80 })]);
    const base = planOf(board);
    const second = { ...base.sites[0], id: 'site-2', target: 'U2' };
    const heatRuns = base.heatRuns.map((run) => ({
      ...run,
      siteIds: ['site-1', 'site-2'],
      segments: [...run.segments.slice(0, -1), { ...run.segments[2], siteId: 'site-2', name: 'Gas 2' }],
    }));
    const plan = { ...base, sites: [...base.sites, second], heatRuns };
    const targets = { removal: [targetOf(), targetOf({ siteId: 'site-2', refdes: 'U2', moltenAtS: 400 })] };
    const { runNumbers } = assess(board, plan, evaluationOf(plan, [], { runs: runsOf(plan, targets) }));
    const [first, other] = runNumbers.filter((entry) => entry.runId === 'run-1');
    expect([first.startGasAtC, first.gasFromS, first.notMoltenByS]).toEqual([150, 265, 350]);
    expect([other.startGasAtC, other.gasFromS, other.notMoltenByS]).toEqual([undefined, 350, 425]);
  });
});

test('the site reading comes from the series where there is one', () => {
  const plan = planOf(boardOf([]));
  const [run] = runsOf(plan);
  const celsius = Array.from({ length: 441 }, (_, second) => second / 2);
  expect(siteReadingAt({ ...run, siteSeries: { stepS: 1, celsius } }, 23, 300)).toBe(150);
  expect(siteReadingAt({ ...run, siteSeries: { stepS: 1, celsius } }, 23, 9999)).toBe(220);
  expect(siteReadingAt(run, 23, 0)).toBe(23);
});
