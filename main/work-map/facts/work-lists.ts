import type { PartAction, PartExposure } from '../../../shared-types/evaluation.ts';
import type { TagOf } from '../../../shared-types/tags.ts';
import { type SheetFacts, tagsOfKind } from './sheet-facts.ts';

/** Removals by tray slot: A2 before A10; those without a slot last. */
export function removalsByTray(facts: SheetFacts): TagOf<'remove'>[] {
  return [...tagsOfKind(facts.plan, 'remove')].sort((a, b) => {
    if ((a.traySlot === '') !== (b.traySlot === '')) return a.traySlot === '' ? 1 : -1;
    return naturalOrder(a.traySlot, b.traySlot);
  });
}

/** Compares names with their numbers read as numbers: C2 before C10. No locale: the same on every machine. */
export function naturalOrder(a: string, b: string): number {
  const left = a.match(/\d+|\D+/g) ?? [];
  const right = b.match(/\d+|\D+/g) ?? [];
  for (let index = 0; index < Math.min(left.length, right.length); index++) {
    const [one, other] = [left[index], right[index]];
    const byNumber = /^\d/.test(one) && /^\d/.test(other) ? Number(one) - Number(other) : 0;
    if (byNumber !== 0) return byNumber;
    if (one !== other && !(/^\d/.test(one) && /^\d/.test(other))) return one < other ? -1 : 1;
  }
  return left.length - right.length;
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

/** C1, C2, C3, R7 as 'C1-C3, R7'. */
export function designatorRanges(sorted: readonly string[]): string {
  const groups: { prefix: string; from: number; to: number; text: string }[] = [];
  for (const refdes of sorted) {
    const match = /^(.*?)([1-9]\d{0,8})$/.exec(refdes);
    const last = groups.at(-1);
    const number = match ? Number(match[2]) : Number.NaN;
    if (match && last && last.prefix === match[1] && number === last.to + 1) {
      last.to = number;
      const joint = last.to === last.from + 1 ? ', ' : '–';
      last.text = `${last.prefix}${last.from}${joint}${refdes}`;
    } else groups.push({ prefix: match?.[1] ?? refdes, from: number, to: number, text: refdes });
  }
  return groups.map(({ text }) => text).join(', ');
}
