import type { TicketDocument } from '../../plan.ts';
import type { StrapGroup } from '../../straps.ts';

/** Every designator that a group names: its positions, what reads them, and the parts that it describes. */
export function namesOfGroup(group: StrapGroup): string[] {
  const names = [...group.describes, ...group.positions.map((position) => position.refdes)];
  if (group.kind === 'bits')
    names.push(...group.bits.flatMap(({ pullUp, pullDown }) => [pullUp ?? [], pullDown ?? []].flat()));
  if (group.kind === 'divider') names.push(group.top, group.bottom);
  return names;
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
