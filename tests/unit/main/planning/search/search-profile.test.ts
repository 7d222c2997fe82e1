import fc from 'fast-check';
import { expect, test } from 'vitest';
import { createRunMemory } from '../../../../../main/heat/run-memory.ts';
import { judgeProfile, neighboursOf } from '../../../../../main/planning/search/judge-profile.ts';
import { searchProfile } from '../../../../../main/planning/search/search-profile.ts';
import { solveGas } from '../../../../../main/planning/search/solve-gas.ts';
import { type SearchSetting, tryPoint } from '../../../../../main/planning/search/try-profile.ts';
import type { Board } from '../../../../../shared-types/board.ts';
import type { Plan } from '../../../../../shared-types/plan.ts';
import type { SearchAnswer, SearchBounds } from '../../../../../shared-types/profile-search.ts';
import { shapeOf } from '../../../../../shared-types/rules/profile-shape.ts';
import { evaluated, part, run, segment, smallBoard, smallPlan } from '../../heat/support.ts';

/** Gentle enough for the ramp of the standard; the gas is too short as it stands. */
const PROFILE = [
  segment('Preheat', 100, [25, 330], null),
  segment('Soak', 80, [330, 330], null),
  segment('Gas', 40, [330, 330], [300, 300]),
  segment('Cool', 20, [25, 25], null),
];
/** Without the electrolytic, which no profile of this little board spares. */
const board: Board = { ...smallBoard(), parts: smallBoard().parts.filter(({ refdes }) => refdes !== 'E1') };
const plan = (kind: 'removal' | 'installation' = 'removal'): Plan =>
  smallPlan(board, { heatRuns: [run(kind, 'run-1', { segments: PROFILE })] });

const BOUNDS: SearchBounds = {
  ...{ belowC: { from: 300, to: 360 }, leadS: { from: 140, to: 220 }, gasC: { from: 270, to: 330 } },
  ...{ gasS: { from: 10, to: 120 }, toPeakS: 480 },
};

function found(of: Plan, bounds: SearchBounds = BOUNDS, on: Board = board): SearchAnswer {
  const answer = searchProfile(on, of, { runId: 'run-1', bounds });
  if (!answer.ok) throw new Error(JSON.stringify(answer.problem));
  return answer.value;
}

function settingOf(of: Plan, riseKPerS: number, bounds = BOUNDS): SearchSetting {
  const own = of.heatRuns[0]!;
  return {
    ...{ board, plan: of, run: own, shape: shapeOf(own)!, bounds, neighbours: neighboursOf(board, own, of) },
    ...{
      limits: { toPeakS: bounds.toPeakS, riseKPerS, offSkinC: Number.POSITIVE_INFINITY },
      memory: createRunMemory(),
    },
    ...{ isCancelled: () => false, onTry: () => undefined },
  };
}

/** The best margin over an even grid of profiles, each with the fewest seconds of gas that suffice. */
function bruteForce(of: Plan, riseKPerS: number): number {
  const setting = settingOf(of, riseKPerS);
  const along = ({ from, to }: { from: number; to: number }, count: number) =>
    Array.from({ length: count }, (_, index) => Math.round(from + ((to - from) * index) / (count - 1)));
  let best = Number.NEGATIVE_INFINITY;
  for (const belowC of along(BOUNDS.belowC, 5)) {
    for (const leadS of along(BOUNDS.leadS, 5)) {
      for (const gasC of along(BOUNDS.gasC, 7)) {
        const tried = solveGas(setting, { belowC, leadS, gasC }, [60]);
        if (!tried.ok) throw new Error(tried.problem.code);
        if (tried.value.point.misses.length === 0) best = Math.max(best, tried.value.point.marginK!);
      }
    }
  }
  return best;
}

test.each(['removal', 'installation'] as const)(
  '%s: within 1 K of the best of 175 profiles on a grid',
  (kind) => {
    const answer = found(plan(kind));
    const grid = bruteForce(plan(kind), answer.riseLimitKPerS);
    expect(grid).toBeGreaterThan(Number.NEGATIVE_INFINITY);
    expect(answer.front.at(-1)!.marginK).toBeGreaterThan(grid - 1);
  },
  120_000,
);

test('the fewest seconds of gas are those that a walk second by second finds', () => {
  const of = plan();
  const setting = settingOf(of, 99);
  for (const at of [
    { belowC: 330, leadS: 180, gasC: 300 },
    { belowC: 350, leadS: 150, gasC: 320 },
  ]) {
    const solved = solveGas(setting, at, [15]);
    if (!solved.ok) throw new Error(solved.problem.code);
    const enough = (seconds: number) => {
      const tried = tryPoint(setting, { ...at, gasS: [seconds] }, 'coarse');
      return tried.ok && tried.value.point.misses.every(({ code }) => code !== 'cold' && code !== 'short');
    };
    let seconds = 10;
    while (seconds < 120 && !enough(seconds)) seconds++;
    expect(solved.value.point.gasS).toEqual([seconds]);
  }
});

test('what is offered does its work on the fine map, as an evaluation of the ticket says too', () => {
  const of = plan();
  const { best } = found(of);
  expect(best).toMatchObject({ grid: 'fine', misses: [] });
  const taken = { ...of, heatRuns: [{ ...of.heatRuns[0]!, segments: best!.segments }] };
  const [target] = evaluated(board, taken, { phase: 'fine' }).runs[0]!.targets;
  expect(target!.coldestJointC).toBeCloseTo(best!.targets[0]!.coldestC, 9);
  expect(target!.coldestJointC).toBeGreaterThanOrEqual(225);
  expect(target!.coldestJointC).toBeLessThanOrEqual(230);
});

test('the same search gives the same bytes twice', () => {
  expect(JSON.stringify(found(plan()))).toBe(JSON.stringify(found(plan())));
});

test('a front: no profile beats another in both time and margin, and all do their work in the bounds', () => {
  const { front } = found(plan());
  expect(front.length).toBeGreaterThan(1);
  front.forEach((point, index) => {
    expect(point.misses).toEqual([]);
    expect(point.belowC).toBeGreaterThanOrEqual(BOUNDS.belowC.from);
    expect(point.gasC).toBeLessThanOrEqual(BOUNDS.gasC.to);
    if (index === 0) return;
    expect(point.toPeakS).toBeGreaterThan(front[index - 1]!.toPeakS);
    expect(point.marginK!).toBeGreaterThan(front[index - 1]!.marginK!);
  });
});

test('wider bounds give nothing worse', () => {
  const narrow = found(plan(), {
    ...BOUNDS,
    ...{ belowC: { from: 320, to: 340 }, leadS: { from: 170, to: 200 }, gasC: { from: 290, to: 310 } },
  });
  const wide = found(plan());
  const wider = found(plan(), { ...BOUNDS, belowC: { from: 280, to: 380 }, gasC: { from: 250, to: 350 } });
  const margin = ({ front }: SearchAnswer) => front.at(-1)!.marginK!;
  expect(margin(wide)).toBeGreaterThan(margin(narrow) - 0.3);
  expect(margin(wider)).toBeGreaterThan(margin(wide) - 0.3);
});

test('bounds in which nothing works: what is missing and which bound holds it are said', () => {
  const cold = found(plan(), { ...BOUNDS, gasC: { from: 230, to: 240 }, gasS: { from: 10, to: 20 } });
  expect(cold).toMatchObject({ best: null, front: [] });
  expect(cold.nearest!.misses.map(({ code }) => code)).toContain('cold');
  expect(cold.nearest!.atBounds).toContain('gasC');
  expect(cold.nearest!.atBounds).toContain('gasS');
});

test.each([
  { kind: 'removal', offSkinC: 150, limitC: 150 },
  { kind: 'removal', offSkinC: 20, limitC: 60 },
  { kind: 'installation', offSkinC: 150, limitC: 60 },
] as const)('the package in $kind keeps its limit; one that comes off may also reach $offSkinC', (wish) => {
  const own = plan(wish.kind);
  const setting = settingOf(own, 3);
  const evaluation = evaluated(board, own);
  const [target] = evaluation.runs[0]!.targets;
  const cool = { ...evaluation, runs: [{ ...evaluation.runs[0]!, targets: [{ ...target!, skinLimitC: 60 }] }] };
  const limits = { toPeakS: 480, riseKPerS: 3, offSkinC: wish.offSkinC };
  const { slacks } = judgeProfile(own.heatRuns[0]!, cool, setting.neighbours, 100, limits);
  expect(slacks.find(({ code }) => code === 'skin')?.by).toBeCloseTo(target!.skinMaxC - wish.limitC, 9);
});

test('a cancelled search ends within a look', () => {
  let looks = 0;
  const answer = searchProfile(board, plan(), { runId: 'run-1', bounds: BOUNDS }, { isCancelled: () => ++looks >= 40 });
  expect(answer).toMatchObject({ problem: { code: 'cancelled' } });
  // Asked before every step, and once more by the loop around them.
  expect(looks).toBeLessThanOrEqual(41);
});

test('parts that come off are not judged and are named; a run without gas is refused', () => {
  const cell = part('BT1', 8, 36, [6, 6, 3], { class: 'coin-cell' });
  const withCell = { ...board, parts: [...board.parts, cell] };
  const narrow = { ...BOUNDS, belowC: { from: 330, to: 330 }, leadS: { from: 180, to: 180 } };
  expect(found(plan(), narrow, withCell).leftOut).toEqual(['BT1']);
  const dressing = smallPlan(board, { heatRuns: [run('site-preparation', 'run-1')] });
  expect(searchProfile(board, dressing, { runId: 'run-1', bounds: BOUNDS })).toMatchObject({
    problem: { code: 'invalid-field' },
  });
  expect(searchProfile(board, plan(), { runId: 'none', bounds: BOUNDS })).toMatchObject({
    problem: { code: 'no-heat-run' },
  });
});

test('unseen boards: what is offered is no worse than the present profile, where that does its work', () => {
  const place = fc.record({ x: fc.integer({ min: 4, max: 56 }), y: fc.integer({ min: 4, max: 40 }) });
  const boards = fc.record({
    size: fc.integer({ min: 8, max: 17 }),
    others: fc.uniqueArray(place, { minLength: 2, maxLength: 6, selector: ({ x, y }) => `${x} ${y}` }),
    preheatC: fc.integer({ min: 300, max: 360 }),
  });
  fc.assert(
    fc.property(boards, ({ size, others, preheatC }) => {
      const parts = others
        .filter(({ x, y }) => Math.max(Math.abs(x - 30), Math.abs(y - 22)) > size / 2 + 4)
        .map(({ x, y }, index) => part(`U${index + 2}`, x, y, [6, 5, 1.2], { class: 'so' }));
      const unseen = { ...smallBoard(), parts: [part('U1', 30, 22, [size, size, 1.4], { class: 'bga' }), ...parts] };
      const segments = PROFILE.map((one) => ({
        ...one,
        preheater: one.preheater.endC > 100 ? { ...one.preheater, endC: preheatC } : one.preheater,
      }));
      const bounds = { ...BOUNDS, gasC: { from: 280, to: 320 }, leadS: { from: 150, to: 200 } };
      const own = smallPlan(unseen, { heatRuns: [run('removal', 'run-1', { segments })] });
      const { present, best, nearest } = found(own, bounds, unseen);
      if (present.misses.length === 0) expect(best!.marginK ?? 0).toBeGreaterThanOrEqual(present.marginK ?? 0);
      if (best) expect(best.misses).toEqual([]);
      else if (nearest) expect(nearest.misses.length).toBeGreaterThan(0);
    }),
    { numRuns: 6, seed: 20261125 },
  );
}, 120_000);
