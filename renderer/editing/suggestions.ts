import { produce } from 'immer';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { type Suggestion, takeAllSuggestions } from '../../shared-types/rules/suggestions.ts';
import { insertInOrder } from './order.ts';

/** Takes suggestions over into the plan; the new tags get their places in the order of work. */
export function takeSuggestions(document: TicketDocument, suggestions: readonly Suggestion[]): TicketDocument {
  const plan = takeAllSuggestions(document.plan, suggestions);
  if (plan === document.plan) return document;
  const known = new Set(document.plan.tags.map((tag) => tag.id));
  return produce({ ...document, plan }, (draft) => {
    const added = draft.plan.tags.filter((tag) => !known.has(tag.id));
    draft.plan.tags = draft.plan.tags.filter((tag) => known.has(tag.id));
    for (const tag of added) insertInOrder(draft.plan.tags, { ...tag, order: null });
  });
}
