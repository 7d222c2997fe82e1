import type { TicketDocument } from '../../shared-types/plan.ts';
import { planStraps, type StrapPlan } from '../../shared-types/rules/straps/plan-straps.ts';
import type { AppState } from './app-state.ts';

let last: { document: TicketDocument; plan: StrapPlan } | null = null;

/** The strap moves of a document; worked out once for each. */
export function strapPlanOf(document: TicketDocument): StrapPlan {
  if (last?.document !== document) last = { document, plan: planStraps(document.board, document.plan) };
  return last.plan;
}

/** Moves that are still to do and wishes that are refused. */
export function openOfStraps({ ticket }: AppState): number {
  if (!ticket || ticket.document.board.straps.length === 0) return 0;
  const { moves, refused } = strapPlanOf(ticket.document);
  return moves.length + refused.length;
}
