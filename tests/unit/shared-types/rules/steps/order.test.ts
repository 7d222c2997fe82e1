import { expect, test } from 'vitest';
import { mayMove } from '../../../../../shared-types/rules/steps/order.ts';
import { planSteps } from '../../../../../shared-types/rules/steps/plan-steps.ts';
import { STEP_KINDS, type StepPlan, WAIT_REASONS } from '../../../../../shared-types/rules/steps/types.ts';
import { refusedWords, stepWords } from '../../../../../shared-types/words/steps/step-words.ts';
import { randomTicket } from './random-plans.ts';

const SEEDS = Array.from({ length: 150 }, (_, index) => index + 1);
const made = new Map(SEEDS.map((seed) => [seed, randomTicket(seed)]));
const plans = new Map<number, StepPlan>(
  SEEDS.map((seed) => {
    const { board, plan, assessment } = made.get(seed)!;
    return [seed, planSteps(board, plan, assessment)];
  }),
);
const ringed = ({ faults }: StepPlan) => faults.some(({ code }) => code === 'cannot-order');

test('in 150 random plans every wait is kept, unless the plan asks for a ring, which is told', () => {
  let kept = 0;
  for (const [seed, { steps, waits, faults }] of plans) {
    const place = new Map(steps.map(({ id }, index) => [id, index]));
    const broken = waits.filter(({ step, on }) => place.get(step)! <= place.get(on)!);
    const told = faults.some(({ code }) => code === 'cannot-order');
    expect(broken.length > 0, `seed ${seed}: ${JSON.stringify(broken[0])}`).toBe(told);
    if (!told) kept += waits.length;
  }
  expect(kept).toBeGreaterThan(5000);
  expect([...plans.values()].filter(ringed).length).toBeLessThan(SEEDS.length / 3);
});

test('no step stands twice, every tagged part has its step, phases do not mix', () => {
  for (const [seed, { steps, phases }] of plans) {
    const ids = steps.map(({ id }) => id);
    expect(new Set(ids).size, `seed ${seed}`).toBe(ids.length);
    const { plan } = made.get(seed)!;
    for (const tag of plan.tags)
      if (tag.kind !== 'watchPoint')
        expect(
          steps.some(({ parts }) => parts.includes(tag.refdes)),
          `seed ${seed}, ${tag.kind} ${tag.refdes}`,
        ).toBe(true);
    for (const tag of plan.tags)
      if (tag.kind === 'shield') expect(steps.filter(({ tagId }) => tagId === tag.id)).toHaveLength(1);
    const order = steps.map(({ phase }) => phases.findIndex(({ id }) => id === phase));
    expect(order, `seed ${seed}`).toEqual(order.toSorted((a, b) => a - b));
  }
});

test('whatever is to be reprogrammed is read out twice, written once with its block, and read back', () => {
  let seen = 0;
  for (const [seed, { steps }] of plans)
    for (const tag of made.get(seed)!.plan.tags) {
      if (tag.kind !== 'reprogram') continue;
      seen += 1;
      const own = steps.filter(({ parts }) => parts.includes(tag.refdes)).map(({ kind }) => kind);
      const write = tag.way === 'in-circuit' ? 'program-in-circuit' : 'program-part';
      for (const kind of ['read-out', 'data-block', write, 'read-back'])
        expect(
          own.filter((one) => one === kind),
          `seed ${seed}`,
        ).toHaveLength(1);
    }
  expect(seen).toBeGreaterThan(50);
});

test('the same ticket gives the same steps, to the byte', () => {
  for (const seed of SEEDS.slice(0, 20)) {
    const { board, plan, assessment } = randomTicket(seed);
    expect(JSON.stringify(planSteps(board, plan, assessment))).toBe(JSON.stringify(plans.get(seed)));
  }
});

test('every cell is off before any heat, bake and can included, however the tags are numbered', () => {
  let cells = 0;
  for (const plan of plans.values()) {
    if (ringed(plan)) continue;
    const first = plan.steps.findIndex(
      ({ kind, phase }) => kind === 'heat' || kind === 'bake-board' || (kind === 'can-off' && phase === 'covers'),
    );
    for (const [index, step] of plan.steps.entries())
      if (step.kind === 'off' && step.figures.why === 'cell') {
        cells += 1;
        expect(index).toBeLessThan(first);
      }
  }
  expect(cells).toBeGreaterThan(100);
});

test('inside a phase tagged steps follow the plan’s order where nothing forbids it', () => {
  const { board, plan } = made.get(1)!;
  const shields = board.parts.filter(({ fitted }) => fitted).slice(12, 16);
  const tag = (refdes: string, order: number) => ({
    id: `s-${refdes}`,
    kind: 'shield' as const,
    refdes,
    order,
    note: '',
    shield: 'cap',
  });
  for (const turned of [false, true]) {
    const tags = shields.map(({ refdes }, index) => tag(refdes, turned ? 90 - index : 10 + index));
    const { steps } = planSteps(
      { ...board, covers: [] },
      { ...plan, tags: [...plan.tags.filter(({ kind }) => kind === 'replace'), ...tags] },
      null,
    );
    const names = steps.filter(({ kind }) => kind === 'shield').map(({ parts }) => parts[0]);
    const wanted = shields.map(({ refdes }) => refdes);
    expect(names).toEqual(turned ? wanted.toReversed() : wanted);
  }
});

test('every kind of step and every reason to wait comes up in some plan, but those of straps and readings', () => {
  const kinds = new Set([...plans.values()].flatMap(({ steps }) => steps.map(({ kind }) => kind)));
  const elsewhere = ['own', 'move-strap', 'strap-read', 'strap-report', 'inspect-reflowed', 'thermocouple', 'fence'];
  expect(STEP_KINDS.filter((kind) => !kinds.has(kind) && !elsewhere.includes(kind))).toEqual([]);
  const reasons = new Set([...plans.values()].flatMap(({ waits }) => waits.map(({ reason }) => reason)));
  const straps = ['strap-after-heat', 'strap-before-read', 'strap-ring'];
  expect(WAIT_REASONS.filter((reason) => !reasons.has(reason) && !straps.includes(reason))).toEqual([]);
  for (const { steps } of plans.values())
    for (const step of steps) {
      const { act, why } = stepWords(step);
      expect(act + why).not.toMatch(/undefined|NaN|\?\?|\bnull\b/);
      expect(act).toMatch(/^[A-Z]/);
    }
});

test('a step moves as far as the waits allow; what they forbid is refused with the reason', () => {
  const { board, plan, assessment } = [...made.values()].find(
    (one) => one.assessment && one.board.parts.some((part) => part.coated),
  )!;
  const before = planSteps(board, plan, assessment);
  const ids = before.phases.map(({ id }) => id);
  const heat = before.steps.find(({ kind }) => kind === 'heat')!;
  const toHead = { stepId: heat.id, phase: 'before-heat', behind: null };
  const wait = mayMove(before.steps, before.waits, toHead, ids)!;
  expect(wait.step).toBe(heat.id);
  expect(refusedWords(before.steps, wait)).toMatch(/comes after '.+': .+\.$/);
  const refused = planSteps(board, { ...plan, steps: { ...plan.steps, moves: [toHead] } }, assessment);
  expect(refused.steps.map(({ id }) => id)).toEqual(before.steps.map(({ id }) => id));
  expect(refused.faults.map(({ code }) => code)).toContain('order-against');

  const setUp = { stepId: 'set-up', phase: 'before-heat', behind: 'power-off' };
  expect(mayMove(before.steps, before.waits, setUp, ids)).toBeNull();
  const moved = planSteps(board, { ...plan, steps: { ...plan.steps, moves: [setUp] } }, assessment);
  const at = moved.steps.findIndex(({ id }) => id === 'set-up');
  expect(moved.steps[at - 1].id).toBe('power-off');
  expect(moved.steps[at].moved).toBe(true);
});
