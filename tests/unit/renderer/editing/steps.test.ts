import { describe, expect, test } from 'vitest';
import {
  addOwnStep,
  forgetMark,
  moveStep,
  removeOwnStep,
  setReading,
  setStepNote,
  setTicked,
  tickStep,
  untickStep,
} from '../../../../renderer/editing/steps.ts';
import { type AppState, startingState } from '../../../../renderer/state/app-state.ts';
import { matters } from '../../../../renderer/state/evaluation-inbox.ts';
import { minuteNow, nextStep, openOfSteps } from '../../../../renderer/state/step-plan.ts';
import { planSchema, type TicketDocument } from '../../../../shared-types/plan.ts';
import { earlier, later, mayMove } from '../../../../shared-types/rules/steps/order.ts';
import { planSteps } from '../../../../shared-types/rules/steps/plan-steps.ts';
import { readGroup } from '../../../../shared-types/rules/straps/read.ts';
import { ticketOf } from '../../../support/stories.ts';

const ticket = ticketOf('greenhouse-gateway');
const stepsOf = ({ board, plan }: TicketDocument) => planSteps(board, plan, null);
const step = (document: TicketDocument, id: string) => stepsOf(document).steps.find((one) => one.id === id)!;
const WHO = { by: 'Mira', at: '2026-11-25 09:30' };
const strapsSay = ({ board, plan }: TicketDocument) => readGroup(board, plan.straps.ticked, board.straps[0]).code;

describe('ticking', () => {
  test('keeps who, when and the words of the moment; taken off, nothing is left', () => {
    const ticked = tickStep(ticket, step(ticket, 'power-off'), WHO);
    expect(ticked.plan.steps.marks).toEqual([
      expect.objectContaining({
        stepId: 'power-off',
        done: true,
        ...WHO,
        phase: 'before-heat',
        words: expect.stringMatching(/^Disconnect/),
      }),
    ]);
    expect(planSchema.safeParse(ticked.plan).success).toBe(true);
    expect(untickStep(ticked, step(ticked, 'power-off')).plan).toEqual(ticket.plan);
  });

  test('readings and notes come before and stay behind the tick', () => {
    const count = step(ticket, 'count-off');
    const read = setStepNote(setReading(ticket, count, 'off', 2), count, 'A1 twice');
    const ticked = tickStep(read, step(read, 'count-off'), WHO);
    const open = untickStep(ticked, step(ticked, 'count-off'));
    expect(open.plan.steps.marks).toEqual([
      expect.objectContaining({ done: false, by: '', readings: [{ key: 'off', value: 2 }], note: 'A1 twice' }),
    ]);
    const bare = setStepNote(setReading(open, count, 'off', null), count, '');
    expect(bare.plan.steps.marks).toEqual([]);
    expect(setStepNote(ticket, count, 'A1 stuck').plan.steps.marks).toHaveLength(1);
    expect(setTicked(ticked, step(ticked, 'count-off'), { at: 'yesterday' }).plan.steps.marks[0].at).toBe('yesterday');
  });

  test('straps ticked here are read as moved, their steps stay; the tick off, they stand as drawn', () => {
    const moves = stepsOf(ticket).steps.filter(({ kind }) => kind === 'move-strap');
    const all = moves.reduce((document, { id }) => tickStep(document, step(document, id), WHO), ticket);
    expect(strapsSay(all)).toBe('01101');
    const kept = stepsOf(all).steps.filter(({ kind }) => kind === 'move-strap');
    expect(kept.map(({ id, done }) => [id, done])).toEqual(expect.arrayContaining(moves.map(({ id }) => [id, true])));
    expect(stepsOf(all).gone).toEqual([]);
    const back = kept.reduce((document, { id }) => untickStep(document, step(document, id)), all);
    expect(back.plan).toEqual(ticket.plan);
  });

  test('asks for no new figures', () => {
    expect(matters({ op: 'add', path: ['plan', 'steps', 'marks', 0], value: {} })).toBe(false);
  });
});

describe('moving', () => {
  test('one place at a time, over the edge of a phase, and no further than the waits allow', () => {
    const start = stepsOf(ticket);
    const ids = start.phases.map(({ id }) => id);
    const refused = mayMove(start.steps, start.waits, later(start.steps, 'off:BT1')!, ids);
    expect(refused).toBeNull();
    const wait = mayMove(start.steps, start.waits, earlier(start.steps, 'lift:run-1:U1')!, ids);
    expect(wait).toMatchObject({ on: 'heat:run-1', reason: 'melt-before-lift' });
    let document = ticket;
    for (let turn = 0; turn < 3; turn++) document = moveStep(document, earlier(stepsOf(document).steps, 'set-up')!);
    const { steps } = stepsOf(document);
    const at = (id: string) => steps.findIndex((one) => one.id === id);
    expect(at('set-up')).toBe(start.steps.findIndex(({ id }) => id === 'set-up') - 3);
    expect(document.plan.steps.moves).toHaveLength(1);
    expect(earlier(steps, steps[0].id)).toBeNull();
    expect(later(steps, steps.at(-1)!.id)).toBeNull();
  });

  test('a read-out cannot be put behind the heat', () => {
    const ferry = ticketOf('ferry-gate-controller');
    const { steps, waits, phases } = stepsOf(ferry);
    const move = { stepId: 'read-out:U1', phase: 'afterwards', behind: null };
    const reason = mayMove(
      steps,
      waits,
      move,
      phases.map(({ id }) => id),
    )?.reason;
    expect(['read-out-before-heat', 'block-from-read-out']).toContain(reason);
    const block = waits.filter(({ on }) => on === 'read-out:U1').map(({ step: id }) => id);
    expect(block).toEqual(expect.arrayContaining(['heat:run-1', 'lift:run-1:U1', 'data-block:U1']));
  });
});

test('own steps come, are ticked, and go with their mark', () => {
  const added = addOwnStep(ticket, 'power-on', 'Show the customer', ['U1']);
  const ticked = tickStep(added, step(added, 'own-1'), WHO);
  expect(ticked.plan.steps.marks[0]).toMatchObject({ stepId: 'own-1', words: 'Show the customer' });
  expect(removeOwnStep(ticked, 'own-1').plan).toEqual(ticket.plan);
  expect(forgetMark(ticked, 'own-1').plan.steps.marks).toEqual([]);
});

test('the number in the rail counts what is open, and stands still while something is dragged', () => {
  const state = (document: TicketDocument, gesture: AppState['gesture'] = null): AppState => ({
    ...startingState(),
    ticket: { document } as AppState['ticket'],
    gesture,
  });
  const all = openOfSteps(state(ticket));
  expect(all).toBe(stepsOf(ticket).steps.length);
  expect(nextStep(state(ticket))?.id).toBe('record');
  const ticked = tickStep(ticket, step(ticket, 'record'), WHO);
  expect(openOfSteps(state(ticked, { label: 'drag', base: ticket }))).toBe(all);
  expect(openOfSteps(state(ticked))).toBe(all - 1);
  expect(nextStep(state(ticked))?.id).toBe('note-resistance');
});

test('the clock is read as local date and minute', () => {
  expect(minuteNow(new Date(2026, 10, 5, 9, 7))).toBe('2026-11-05 09:07');
});
