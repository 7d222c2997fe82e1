import type { TicketDocument } from '../../shared-types/plan.ts';
import { namesOfGroup } from '../../shared-types/rules/straps/group-names.ts';

/** Names of the strap groups that one of these parts belongs to: it cannot be deleted while they name it. */
export function strapGroupsNaming(document: TicketDocument, refdes: readonly string[]): string[] {
  const wanted = new Set(refdes);
  return document.board.straps
    .filter((group) => namesOfGroup(group).some((name) => wanted.has(name)))
    .map(({ name }) => name);
}
