import type { TicketCard } from '../../../shared-types/contract.ts';
import { TICKET_EXTENSION } from '../../../shared-types/format-version.ts';

/** What a ticket is called before its number is known, as that of a damaged one. */
export const nameOf = (card: TicketCard): string => (card.problem ? card.fileName : card.number);

/** Title of a card: the ticket's number, or its file's name where several tickets bear that number. */
export function titleOf(card: TicketCard, cards: readonly TicketCard[]): string {
  const same = cards.filter((one) => one.problem === null && one.number === card.number);
  if (card.problem || same.length < 2) return nameOf(card);
  return card.fileName.endsWith(TICKET_EXTENSION) ? card.fileName.slice(0, -TICKET_EXTENSION.length) : card.fileName;
}
