import type { TicketDocument } from '../../shared-types/plan.ts';
import type { Decisions } from '../../shared-types/rules/board-update/decide.ts';
import type { BoardChanges } from '../../shared-types/rules/board-update/types.ts';
import { updateTicket } from '../../shared-types/rules/board-update/update-ticket.ts';
import { renameParts } from '../../shared-types/rules/rename-part.ts';
import { deleteParts } from './add-parts.ts';

/** What becomes of a part that the files do not have any more. `orphan`: the part goes, what names it stays. */
export type Fate = 'orphan' | 'clear' | 'stay';

export type UpdateDecisions = Pick<Decisions, 'ticks'> & {
  readonly fates: Readonly<Record<string, Fate>>;
  /** Parts that the files call otherwise, by the name that the ticket has. */
  readonly renames: Readonly<Record<string, string>>;
};
export const nothingDecided: UpdateDecisions = { ticks: {}, fates: {}, renames: {} };

export const withRenames = (document: TicketDocument, { renames }: UpdateDecisions): TicketDocument =>
  renameParts(document, Object.entries(renames));

/** The ticket brought up to the files. `changes`: of the ticket with its new designators. */
export function updateBoard(
  document: TicketDocument,
  changes: BoardChanges,
  decisions: UpdateDecisions,
): TicketDocument {
  const fated = (fate: Fate) => changes.gone.map(({ refdes }) => refdes).filter((one) => decisions.fates[one] === fate);
  const [stay, clear] = [fated('stay'), fated('clear')];
  const named = withRenames(document, decisions);
  const updated = updateTicket(named, changes, { ticks: decisions.ticks, stay: [...stay, ...clear] });
  return clear.length > 0 ? deleteParts(updated, clear) : updated;
}
