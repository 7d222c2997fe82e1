import type { Board } from '../../board.ts';
import type { Assessment } from '../../evaluation.ts';
import type { Plan } from '../../plan.ts';
import { afterwardsSteps } from './afterwards.ts';
import { beforeHeatSteps } from './before-heat.ts';
import { draft, type StepContext, stepContext } from './context.ts';
import { readingFaults } from './faults.ts';
import { heatRunSteps } from './heat-runs.ts';
import { orderSteps } from './order.ts';
import { powerSteps } from './power.ts';
import { receivedSteps } from './received.ts';
import { strapSteps } from './strap-steps.ts';
import { afterPhase, type Phase, runPhase, type Step, type StepDraft, type StepPlan } from './types.ts';
import { waitsOf } from './waits.ts';

function phasesOf({ runs }: StepContext): Phase[] {
  const plain = (id: string): Phase => ({ id, run: null });
  const ofRuns = runs.flatMap(({ id, name }, index): Phase[] => {
    const run = { id, name, place: index + 1, of: runs.length };
    return [
      { id: runPhase(id), run },
      { id: afterPhase(id), run },
    ];
  });
  return [
    ...['received', 'before-heat', 'covers'].map(plain),
    ...ofRuns,
    ...['afterwards', 'before-power', 'power-on', 'hand-back'].map(plain),
  ];
}

/** Steps that the technician added; a phase that is gone leaves them at the end of the work. */
const ownSteps = ({ plan }: StepContext, phases: readonly Phase[]): StepDraft[] =>
  plan.steps.own.map((own, rank) => ({
    ...draft('own', '', phases.some(({ id }) => id === own.phase) ? own.phase : 'afterwards', { words: own.words }),
    id: own.id,
    parts: own.parts,
    rank,
  }));

/** True when there is work to put in order: a site, a heat run, a tag on a part, or a strap that must change. */
const callsForWork = ({ plan }: StepContext): boolean =>
  plan.sites.length > 0 ||
  plan.heatRuns.length > 0 ||
  plan.straps.wanted.length > 0 ||
  plan.tags.some(({ kind }) => kind !== 'watchPoint');

/**
 * The steps of a ticket in the order of work: worked out from board, plan and assessment; nothing of it is kept but what
 * the technician did, added and moved. Without an assessment no step that rests on figures is there.
 */
export function planSteps(board: Board, plan: Plan, assessment: Assessment | null): StepPlan {
  const context = stepContext(board, plan, assessment);
  const phases = phasesOf(context);
  const ids = phases.map(({ id }) => id);
  const made = callsForWork(context)
    ? [receivedSteps, beforeHeatSteps, heatRunSteps, strapSteps, afterwardsSteps, powerSteps].flatMap((make) =>
        make(context),
      )
    : [];
  const drafts = [...made, ...ownSteps(context, phases)];
  const waits = waitsOf(context, drafts);
  const { steps: ordered, moved, faults } = orderSteps(drafts, waits, plan.steps.moves, ids);
  const marks = new Map(plan.steps.marks.map((mark) => [mark.stepId, mark]));
  const steps = ordered.map((step): Step => {
    const mark = marks.get(step.id) ?? null;
    const own = step.kind === 'own' ? String(step.figures.words) : null;
    return { ...step, mark, done: mark?.done ?? false, moved: moved.has(step.id), own };
  });
  const known = new Set(steps.map(({ id }) => id));
  const used = new Set(steps.map(({ phase }) => phase));
  return {
    phases: phases.filter(({ id }) => used.has(id)),
    steps,
    waits,
    gone: plan.steps.marks.filter(
      (mark) => !known.has(mark.stepId) && (mark.done || mark.readings.length > 0 || mark.note !== ''),
    ),
    faults: [...readingFaults(steps, waits), ...faults],
  };
}
