import type { TicketDocument } from '../../shared-types/plan.ts';
import { boardHealth, planHealth } from '../../shared-types/rules/health/board-health.ts';
import type { HealthEntry } from '../../shared-types/rules/health/types.ts';
import type { AppState } from './app-state.ts';

const NONE: readonly HealthEntry[] = [];
let boardPart: { board: TicketDocument['board']; entries: readonly HealthEntry[] } | null = null;
let whole: { document: TicketDocument; entries: readonly HealthEntry[] } | null = null;

/** What is odd about the open ticket's board. While a gesture runs it is that of the document before it. */
export function healthOf(state: AppState): readonly HealthEntry[] {
  const document = state.gesture?.base ?? state.ticket?.document;
  if (!document) return NONE;
  if (whole?.document === document) return whole.entries;
  const { board, plan } = document;
  if (boardPart?.board !== board) boardPart = { board, entries: boardHealth(board) };
  whole = { document, entries: [...planHealth(board, plan), ...boardPart.entries] };
  return whole.entries;
}
