import type { TicketCard } from '../../../shared-types/contract.ts';

/** A ticket number that the shelf does not hold yet: the wanted one, or the wanted one with -2, -3 ... behind it. */
export function freeNumber(cards: readonly TicketCard[], wanted: string): string {
  const taken = new Set(cards.map((card) => card.number.toLowerCase()));
  if (!taken.has(wanted.toLowerCase())) return wanted;
  let suffix = 2;
  while (taken.has(`${wanted}-${suffix}`.toLowerCase())) suffix += 1;
  return `${wanted}-${suffix}`;
}

/** The number that follows the highest one on the shelf: 'T-7' after 'T-6'; 'T-1' on an empty shelf. */
export function nextNumber(cards: readonly TicketCard[]): string {
  const found = cards.flatMap((card) => {
    const parts = /^(.*?)(\d+)$/.exec(card.number);
    return parts ? [{ head: parts[1], digits: parts[2] }] : [];
  });
  if (found.length === 0) return freeNumber(cards, 'T-1');
  const newest = found[0];
  const highest = Math.max(...found.filter((one) => one.head === newest.head).map((one) => Number(one.digits)));
  return freeNumber(cards, `${newest.head}${String(highest + 1).padStart(newest.digits.length, '0')}`);
}
