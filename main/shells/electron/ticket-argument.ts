import { isTicketName } from '../../files/ticket-names.ts';

/** The ticket that the app was started with: the last word that names one. Options of Electron itself are passed over. */
export function ticketArgument(words: readonly string[]): string | null {
  return words.slice(1).findLast((word) => !word.startsWith('-') && isTicketName(word)) ?? null;
}
