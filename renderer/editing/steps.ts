import { produce } from 'immer';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { strapEnds } from '../../shared-types/rules/steps/strap-steps.ts';
import type { Step } from '../../shared-types/rules/steps/types.ts';
import type { StepMark, StepMove, StepReading } from '../../shared-types/steps.ts';
import { stepWords } from '../../shared-types/words/steps/step-words.ts';
import { nextId } from './ids.ts';
import { doMove, tickPosition } from './straps.ts';

/** Who does something, and when: as entered, or as the window's clock says; nothing in here looks at a clock. */
export type Who = { by: string; at: string };

const startingMark = (step: Step): StepMark => ({
  stepId: step.id,
  done: false,
  by: '',
  at: '',
  readings: [],
  note: '',
  words: stepWords(step).act,
  phase: step.phase,
});

/** Changes what is kept of a step; a mark that holds nothing goes. */
function changeMark(document: TicketDocument, step: Step, change: (mark: StepMark) => StepMark): TicketDocument {
  return produce(document, (draft) => {
    const { marks } = draft.plan.steps;
    const at = marks.findIndex(({ stepId }) => stepId === step.id);
    const next = change(at < 0 ? startingMark(step) : marks[at]);
    const empty = !next.done && next.readings.length === 0 && next.note === '';
    if (at < 0 && !empty) marks.push(next);
    else if (at >= 0 && empty) marks.splice(at, 1);
    else if (at >= 0) marks[at] = next;
  });
}

/** Ticks a step with the words it has now. A strap that is moved is read as moved from then on. */
export function tickStep(document: TicketDocument, step: Step, who: Who): TicketDocument {
  const ticked = changeMark(document, step, (mark) => ({
    ...mark,
    ...who,
    done: true,
    words: stepWords(step).act,
    phase: step.phase,
  }));
  const ends = strapEnds(step.id);
  if (!ends || step.figures.settled === 1) return ticked;
  const [from, to] = [ends.from || null, ends.to || null];
  const kind = from === null ? 'add' : to === null ? 'off' : 'relocate';
  const { value, size } = step.figures;
  return doMove(ticked, { kind, from, to, value: String(value), size: String(size), waits: false });
}

/** Takes the tick off; readings and note stay. A strap then stands as the drawing has it. */
export function untickStep(document: TicketDocument, step: Step): TicketDocument {
  const open = changeMark(document, step, (mark) => ({ ...mark, done: false, by: '', at: '' }));
  const ends = strapEnds(step.id);
  if (!ends) return open;
  return [ends.from, ends.to].filter(Boolean).reduce((next, refdes) => tickPosition(next, refdes, null), open);
}

/** A figure as read; null: not read. */
export function setReading(
  document: TicketDocument,
  step: Step,
  key: string,
  value: StepReading['value'] | null,
): TicketDocument {
  return changeMark(document, step, (mark) => {
    const others = mark.readings.filter((reading) => reading.key !== key);
    return { ...mark, readings: value === null || value === '' ? others : [...others, { key, value }] };
  });
}

export const setStepNote = (document: TicketDocument, step: Step, note: string): TicketDocument =>
  changeMark(document, step, (mark) => ({ ...mark, note }));

/** Who ticked a step and when, corrected afterwards. */
export const setTicked = (document: TicketDocument, step: Step, who: Partial<Who>): TicketDocument =>
  changeMark(document, step, (mark) => ({ ...mark, ...who }));

/** Forgets what was ticked of a step that no longer applies. */
export function forgetMark(document: TicketDocument, stepId: string): TicketDocument {
  return produce(document, (draft) => {
    draft.plan.steps.marks = draft.plan.steps.marks.filter((mark) => mark.stepId !== stepId);
  });
}

/** Takes a step to another place; ask `mayMove` before. An earlier move of it is forgotten. */
export function moveStep(document: TicketDocument, move: StepMove): TicketDocument {
  return produce(document, (draft) => {
    const { steps } = draft.plan;
    steps.moves = [...steps.moves.filter(({ stepId }) => stepId !== move.stepId), move];
  });
}

/** Every step stands again where the rules put it. */
export function forgetMoves(document: TicketDocument): TicketDocument {
  return produce(document, (draft) => {
    draft.plan.steps.moves = [];
  });
}

/** A step of the technician's own, about the given parts. */
export function addOwnStep(
  document: TicketDocument,
  phase: string,
  words: string,
  parts: readonly string[],
): TicketDocument {
  return produce(document, (draft) => {
    const { own } = draft.plan.steps;
    own.push({ id: nextId('own', own), phase, words, parts: [...parts] });
  });
}

export function setOwnWords(document: TicketDocument, id: string, words: string): TicketDocument {
  return produce(document, (draft) => {
    const step = draft.plan.steps.own.find((one) => one.id === id);
    if (step) step.words = words;
  });
}

/** Takes an own step out, with its mark and its moves. */
export function removeOwnStep(document: TicketDocument, id: string): TicketDocument {
  return produce(forgetMark(document, id), (draft) => {
    const { steps } = draft.plan;
    steps.own = steps.own.filter((step) => step.id !== id);
    steps.moves = steps.moves.filter(({ stepId }) => stepId !== id);
  });
}
