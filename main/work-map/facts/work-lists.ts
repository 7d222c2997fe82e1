import type { PartAction, PartExposure } from '../../../shared-types/evaluation.ts';
import { designatorRanges, naturalOrder } from '../../../shared-types/rules/designators.ts';
import type { TagOf } from '../../../shared-types/tags.ts';
import { type SheetFacts, tagsOfKind } from './sheet-facts.ts';

export { designatorRanges, naturalOrder };

/** Removals by tray slot: A2 before A10; those without a slot last. */
export function removalsByTray(facts: SheetFacts): TagOf<'remove'>[] {
  return [...tagsOfKind(facts.plan, 'remove')].sort((a, b) => {
    if ((a.traySlot === '') !== (b.traySlot === '')) return a.traySlot === '' ? 1 : -1;
    return naturalOrder(a.traySlot, b.traySlot);
  });
}

export type ExceptionRow = { action: PartAction; exposure: PartExposure | null };

/**
 * Parts that are not simply left: what is still open before what the plan already does, the smallest margin first.
 * Removals that were the technician's own wish stand in the list of removals alone.
 */
export function exceptionsOf(facts: SheetFacts): ExceptionRow[] {
  return facts.assessment.actions
    .filter(({ action }) => action !== 'leave' && action !== 'leave-will-reflow' && action !== 'target')
    .filter(({ done, reason }) => !(done && reason === 'tagged-by-you'))
    .map((action) => ({ action, exposure: facts.exposureOf.get(action.refdes) ?? null }))
    .sort(
      (a, b) =>
        Number(a.action.done) - Number(b.action.done) ||
        (a.exposure?.marginK ?? -1e6) - (b.exposure?.marginK ?? -1e6) ||
        naturalOrder(a.action.refdes, b.action.refdes),
    );
}

/** Ordinary parts: how many are left, and which of them will reflow. */
export function ordinaryParts(facts: SheetFacts): { count: number; reflowing: string[] } {
  const left = facts.assessment.actions.filter(({ action }) => action === 'leave' || action === 'leave-will-reflow');
  const reflowing = left
    .filter(({ action }) => action === 'leave-will-reflow')
    .map(({ refdes }) => refdes)
    .sort(naturalOrder);
  return { count: left.length, reflowing };
}
