import type { StepMove } from '../../steps.ts';
import { STEP_KINDS, type StepDraft, type StepFault, type Wait } from './types.ts';

const kindRank = new Map(STEP_KINDS.map((kind, index) => [kind, index]));

/** By phase, then by kind and rank; inside a phase tagged steps then change places until they follow the plan's order. */
function startingOrder(drafts: readonly StepDraft[], phases: readonly string[]): StepDraft[] {
  const phaseAt = new Map(phases.map((id, index) => [id, index]));
  const at = ({ phase }: StepDraft) => phaseAt.get(phase) ?? phases.length;
  const ranked = drafts
    .map((step, index) => ({ step, index }))
    .sort((a, b) => {
      const kind = (kindRank.get(a.step.kind) ?? 0) - (kindRank.get(b.step.kind) ?? 0);
      return at(a.step) - at(b.step) || kind || a.step.rank - b.step.rank || a.index - b.index;
    })
    .map(({ step }) => step);
  for (const phase of phases) {
    const slots = ranked.flatMap((step, index) => (step.phase === phase && step.tagOrder !== null ? [index] : []));
    const steps = slots.map((index) => ranked[index]);
    const wanted = steps.toSorted((a, b) => (a.tagOrder ?? 0) - (b.tagOrder ?? 0));
    for (const [index, slot] of slots.entries()) ranked[slot] = wanted[index];
  }
  return ranked;
}

/** Waits of each step among those that are there. */
function waitsByStep(steps: readonly StepDraft[], waits: readonly Wait[]): Map<string, Wait[]> {
  const known = new Set(steps.map(({ id }) => id));
  const found = new Map<string, Wait[]>();
  for (const wait of waits) {
    if (!known.has(wait.step) || !known.has(wait.on)) continue;
    found.set(wait.step, [...(found.get(wait.step) ?? []), wait]);
  }
  return found;
}

/**
 * The starting order, changed as little as the waits ask for: always the first step whose waits are over. A ring of waits
 * is broken at its first step and told.
 */
function topological(steps: readonly StepDraft[], waits: readonly Wait[], faults: StepFault[]): StepDraft[] {
  const needs = waitsByStep(steps, waits);
  const open = [...steps];
  const placed = new Set<string>();
  const ordered: StepDraft[] = [];
  while (open.length > 0) {
    const blocking = ({ id }: StepDraft) => needs.get(id)?.find(({ on }) => !placed.has(on));
    const free = open.findIndex((step) => !blocking(step));
    if (free < 0) {
      const wait = blocking(open[0]);
      if (wait) faults.push({ code: 'cannot-order', stepId: wait.step, on: wait.on, reason: wait.reason });
    }
    const [next] = open.splice(Math.max(0, free), 1);
    placed.add(next.id);
    ordered.push(next);
  }
  return ordered;
}

/** A step that had to wait beyond its phase belongs to the one it has come to. */
function inPhases(ordered: readonly StepDraft[], phases: readonly string[]): StepDraft[] {
  let at = 0;
  return ordered.map((step) => {
    const own = phases.indexOf(step.phase);
    at = Math.max(at, own);
    return own === at ? step : { ...step, phase: phases[at] };
  });
}

/** The wait that forbids this order, if any does. */
function brokenWait(ordered: readonly { id: string }[], waits: readonly Wait[], stepId: string): Wait | null {
  const place = new Map(ordered.map(({ id }, index) => [id, index]));
  const broken = waits.find(({ step, on }) => {
    if (step !== stepId && on !== stepId) return false;
    const [mine, other] = [place.get(step), place.get(on)];
    return mine !== undefined && other !== undefined && mine < other;
  });
  return broken ?? null;
}

/** The order with a step in its wanted place; null: that place is not there. */
export function withMove<T extends { id: string; phase: string }>(
  ordered: readonly T[],
  move: StepMove,
  phases: readonly string[],
): T[] | null {
  const step = ordered.find(({ id }) => id === move.stepId);
  if (!step || !phases.includes(move.phase)) return null;
  const others = ordered.filter(({ id }) => id !== move.stepId);
  const wanted = phases.indexOf(move.phase);
  const head = others.findIndex(({ phase }) => phases.indexOf(phase) >= wanted);
  const behind = others.findIndex(({ id, phase }) => id === move.behind && phase === move.phase);
  if (move.behind !== null && behind < 0) return null;
  others.splice(move.behind === null ? (head < 0 ? others.length : head) : behind + 1, 0, {
    ...step,
    phase: move.phase,
  });
  return others;
}

/** Whether a move may be made; the wait that forbids it otherwise. */
export function mayMove<T extends { id: string; phase: string }>(
  ordered: readonly T[],
  waits: readonly Wait[],
  move: StepMove,
  phases: readonly string[],
): Wait | null {
  const next = withMove(ordered, move, phases);
  return next && brokenWait(next, waits, move.stepId);
}

export type Ordered = { steps: StepDraft[]; moved: ReadonlySet<string>; faults: StepFault[] };

/** The order of work: phases, the plan's own order, what must come first, then the technician's moves as far as they may. */
export function orderSteps(
  drafts: readonly StepDraft[],
  waits: readonly Wait[],
  moves: readonly StepMove[],
  phases: readonly string[],
): Ordered {
  const faults: StepFault[] = [];
  let steps = inPhases(topological(startingOrder(drafts, phases), waits, faults), phases);
  faults.push(...againstTags(steps, waits));
  const moved = new Set<string>();
  for (const move of moves) {
    const next = withMove(steps, move, phases);
    if (!next) continue;
    const broken = brokenWait(next, waits, move.stepId);
    if (broken) faults.push({ code: 'order-against', stepId: broken.step, on: broken.on, reason: broken.reason });
    else {
      steps = next;
      moved.add(move.stepId);
    }
  }
  return { steps, moved, faults };
}

/** Where the plan's order of tags asks for what a wait forbids. */
function againstTags(steps: readonly StepDraft[], waits: readonly Wait[]): StepFault[] {
  const order = new Map(steps.flatMap(({ id, tagOrder }) => (tagOrder === null ? [] : [[id, tagOrder] as const])));
  return waits.flatMap(({ step, on, reason }): StepFault[] => {
    const [mine, other] = [order.get(step), order.get(on)];
    return mine !== undefined && other !== undefined && mine < other
      ? [{ code: 'order-against', stepId: step, on, reason }]
      : [];
  });
}

type Placed = { id: string; phase: string };

/** One place earlier: before the step above, or to the end of the phase above. Null: it is the first. */
export function earlier(ordered: readonly Placed[], stepId: string): StepMove | null {
  const at = ordered.findIndex(({ id }) => id === stepId);
  if (at < 1) return null;
  const [step, above] = [ordered[at], ordered[at - 1]];
  if (above.phase !== step.phase) return { stepId, phase: above.phase, behind: above.id };
  const over = ordered[at - 2];
  return { stepId, phase: step.phase, behind: over?.phase === step.phase ? over.id : null };
}

/** One place later: behind the step below, or to the head of the phase below. Null: it is the last. */
export function later(ordered: readonly Placed[], stepId: string): StepMove | null {
  const at = ordered.findIndex(({ id }) => id === stepId);
  const [step, below] = [ordered[at], ordered[at + 1]];
  if (!step || !below) return null;
  const behind = below.phase === step.phase ? below.id : null;
  return { stepId, phase: below.phase, behind };
}
