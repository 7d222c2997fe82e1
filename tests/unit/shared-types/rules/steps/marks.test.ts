import { describe, expect, test } from 'vitest';
import type { Plan } from '../../../../../shared-types/plan.ts';
import { planForTargets } from '../../../../../shared-types/rules/new-plan.ts';
import { planSteps } from '../../../../../shared-types/rules/steps/plan-steps.ts';
import type { StepMark } from '../../../../../shared-types/steps.ts';
import { goneWords, stepFaultWords } from '../../../../../shared-types/words/steps/step-words.ts';
import { boardWith, partNamed } from '../../../../support/boards.ts';
import { off } from '../../../../support/tags.ts';

const board = boardWith([
  partNamed('U1'),
  partNamed('C9', { x: 20, class: 'electrolytic-medium' }),
  partNamed('J2', { x: 80, class: 'connector-pbt' }),
]);
const start = planForTargets(board, 'T-1', ['U1']);
const plan: Plan = { ...start, tags: [...start.tags, off('C9'), off('J2')] };
const mark = (stepId: string, more: Partial<StepMark> = {}): StepMark => ({
  ...{
    stepId,
    done: true,
    by: 'Mira',
    at: '2026-11-25T09:30',
    readings: [],
    note: '',
    words: 'As it was ticked',
    phase: 'before-heat',
  },
  ...more,
});
const marked = (...marks: StepMark[]): Plan => ({ ...plan, steps: { ...plan.steps, marks } });

describe('what is ticked', () => {
  test('stays ticked when the plan changes, and is told when it no longer applies', () => {
    const ticked = marked(mark('off:C9'));
    expect(planSteps(board, ticked, null).steps.find(({ id }) => id === 'off:C9')).toMatchObject({ done: true });
    const changed = { ...ticked, tags: ticked.tags.filter(({ id }) => id !== 'off-C9') };
    const after = planSteps(board, changed, null);
    expect(after.steps.some(({ id }) => id === 'off:C9')).toBe(false);
    expect(after.gone.map(goneWords)).toEqual(['As it was ticked (Mira, 2026-11-25 09:30)']);
    expect(planSteps(board, { ...changed, tags: ticked.tags }, null).gone).toEqual([]);
  });

  test('a mark without tick, reading or note is nothing to tell', () => {
    expect(planSteps(board, marked(mark('off:Q1', { done: false })), null).gone).toEqual([]);
    expect(planSteps(board, marked(mark('off:Q1', { done: false, note: 'stuck' })), null).gone).toHaveLength(1);
    const read = mark('off:Q1', { done: false, readings: [{ key: 'check-sum', value: '9F' }] });
    expect(planSteps(board, marked(read), null).gone).toHaveLength(1);
  });

  test.each([
    ['count-off', 'off', 2, 1],
    ['count-back', 'back', 2, 3],
  ])('a count at %s that does not agree is told', (stepId, which, planned, counted) => {
    const count = (value: number) =>
      planSteps(board, marked(mark(stepId, { done: false, readings: [{ key: which, value }] })), null);
    expect(count(planned).faults).toEqual([]);
    const wrong = count(counted);
    expect(wrong.faults).toEqual([{ code: 'count-differs', stepId, which, counted, planned }]);
    expect(stepFaultWords(wrong.faults[0], wrong)).toBe(
      `Counted ${which}: ${counted}, but the plan has ${planned}. Find the part before you go on.`,
    );
  });

  test('a step ticked before one that it waits for is told with the reason', () => {
    const [fault] = planSteps(board, marked(mark('heat:run-1')), null).faults;
    expect(fault).toMatchObject({ code: 'done-before', stepId: 'heat:run-1' });
    expect(stepFaultWords(fault, planSteps(board, plan, null))).toMatch(/is ticked, but '.+' is open: .+\.$/);
  });

  test('what was noted when the unit came is what the checks before power compare with', () => {
    const noted = marked(
      mark('note-resistance', { readings: [{ key: 'resistance', value: 41.5 }] }),
      mark('note-power', { readings: [{ key: 'current', value: 0.32 }] }),
    );
    const { steps } = planSteps(board, noted, null);
    expect(steps.find(({ id }) => id === 'no-shorts')?.expects[0].predicted).toBe(41.5);
    expect(steps.find(({ id }) => id === 'current')?.expects[0].predicted).toBe(0.32);
  });
});

test('a step of the technician stands in its phase; one whose phase is gone comes after the heat', () => {
  const own = (phase: string) => ({ id: 'own-1', phase, words: 'Show the lead the corner', parts: ['U1'] });
  const at = (phase: string) =>
    planSteps(board, { ...plan, steps: { ...plan.steps, own: [own(phase)] } }, null).steps.find(
      ({ id }) => id === 'own-1',
    );
  expect(at('run:run-1')).toMatchObject({ phase: 'run:run-1', own: 'Show the lead the corner', parts: ['U1'] });
  expect(at('run:gone')?.phase).toBe('afterwards');
});

test('a plan without work has no steps', () => {
  const empty = { ...plan, sites: [], heatRuns: [], tags: [] };
  expect(planSteps(board, empty, null).steps).toEqual([]);
});
