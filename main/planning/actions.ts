import type { ActionKind, PartAction } from '../../shared-types/evaluation.ts';
import { classById } from '../../shared-types/library/classes.ts';
import { comesOff, compareDesignators, type PlanningContext, tagOn } from './context.ts';
import { actionOf, decide } from './decide.ts';

/** Exceptions first. */
const RANKS: Record<ActionKind, number> = {
  'cannot-be-saved': 0,
  'remove-first': 1,
  secure: 2,
  shield: 3,
  target: 4,
  'leave-will-reflow': 5,
  leave: 6,
};

function targetActions(context: PlanningContext): PartAction[] {
  return [...context.siteOfTarget].flatMap(([refdes, site]) => {
    if (!context.parts.has(refdes)) return [];
    const done = tagOn(context, refdes, 'replace') !== undefined;
    return [actionOf(refdes, 'target', 'target-of-site', { siteName: site.name || site.id }, done)];
  });
}

/** Parts that the plan takes off: done, whether the class or the technician asks for it. */
function takenOffActions(context: PlanningContext): PartAction[] {
  return context.board.parts.flatMap((part) => {
    if (!part.fitted || context.siteOfTarget.has(part.refdes) || !comesOff(context, part.refdes)) return [];
    const partClass = classById(part.class);
    const reason = partClass.alwaysRemove ? 'always-off' : 'tagged-by-you';
    return [actionOf(part.refdes, 'remove-first', reason, { className: partClass.name }, true)];
  });
}

/** Parts that come off whatever the evaluation says: judged from the board, also far from heat or beyond the edge. */
function alwaysOffActions(context: PlanningContext): PartAction[] {
  return context.board.parts.flatMap((part) => {
    const partClass = classById(part.class);
    if (!part.fitted || !partClass.alwaysRemove) return [];
    if (context.siteOfTarget.has(part.refdes) || comesOff(context, part.refdes)) return [];
    return [actionOf(part.refdes, 'remove-first', 'always-off', { className: partClass.name })];
  });
}

/** One action for every target, every evaluated part, and every part that comes off; exceptions first. */
export function actionsFor(context: PlanningContext): PartAction[] {
  const settled = [...targetActions(context), ...takenOffActions(context), ...alwaysOffActions(context)];
  const known = new Set(settled.map((action) => action.refdes));
  const judged = context.evaluation.parts.flatMap((exposure) => {
    const part = context.parts.get(exposure.refdes);
    if (!part || known.has(part.refdes)) return [];
    return [decide(context, { part, exposure, partClass: classById(part.class) })];
  });
  return [...settled, ...judged].sort(
    (a, b) =>
      RANKS[a.action] - RANKS[b.action] || Number(a.done) - Number(b.done) || compareDesignators(a.refdes, b.refdes),
  );
}
