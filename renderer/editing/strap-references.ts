import type { TicketDocument } from '../../shared-types/plan.ts';
import type { StrapGroup } from '../../shared-types/straps.ts';

/** Every designator that a group names: its positions, what reads them, and the parts that it describes. */
function namesOf(group: StrapGroup): string[] {
  const names = [...group.describes, ...group.positions.map((position) => position.refdes)];
  if (group.kind === 'bits')
    names.push(...group.bits.flatMap(({ pullUp, pullDown }) => [pullUp ?? [], pullDown ?? []].flat()));
  if (group.kind === 'divider') names.push(group.top, group.bottom);
  return names;
}

/** Names of the strap groups that one of these parts belongs to: it cannot be deleted while they name it. */
export function strapGroupsNaming(document: TicketDocument, refdes: readonly string[]): string[] {
  const wanted = new Set(refdes);
  return document.board.straps
    .filter((group) => namesOf(group).some((name) => wanted.has(name)))
    .map(({ name }) => name);
}

/** Lets strap groups and what was ticked of them follow a part to its new designator; works on a draft. */
export function renameInStraps(draft: TicketDocument, from: string, to: string): void {
  const renamed = (name: string): string => (name === from ? to : name);
  for (const group of draft.board.straps) {
    group.describes = group.describes.map(renamed);
    for (const position of group.positions) position.refdes = renamed(position.refdes);
    if (group.kind === 'divider') Object.assign(group, { top: renamed(group.top), bottom: renamed(group.bottom) });
    if (group.kind !== 'bits') continue;
    for (const bit of group.bits) {
      bit.pullUp = bit.pullUp && renamed(bit.pullUp);
      bit.pullDown = bit.pullDown && renamed(bit.pullDown);
    }
  }
  for (const tick of draft.plan.straps.ticked) tick.refdes = renamed(tick.refdes);
}
