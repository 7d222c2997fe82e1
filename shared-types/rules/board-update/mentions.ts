import type { TicketDocument } from '../../plan.ts';
import type { TagKind } from '../../tags.ts';
import { namesOfGroup } from '../straps/group-names.ts';

/** One thing that ticket and board drawing say of a part beside the part itself. */
export type Mention =
  | { readonly kind: 'tag'; readonly tag: TagKind; readonly note: string }
  | { readonly kind: 'site' | 'strap' | 'watch'; readonly name: string }
  | { readonly kind: 'destination'; readonly of: string }
  | { readonly kind: 'ticked' | 'matched' };

/** All mentions by designator. */
export function mentionsIn({ board, plan }: TicketDocument): Map<string, Mention[]> {
  const found = new Map<string, Mention[]>();
  const say = (refdes: string | null, mention: Mention) => {
    if (refdes) found.set(refdes, [...(found.get(refdes) ?? []), mention]);
  };
  for (const site of plan.sites) say(site.target, { kind: 'site', name: site.name || site.target });
  for (const tag of plan.tags) {
    if (tag.kind === 'watchPoint') say(tag.refdes, { kind: 'watch', name: tag.name });
    else if (tag.kind !== 'replace' || !plan.sites.some(({ target }) => target === tag.refdes))
      say(tag.refdes, { kind: 'tag', tag: tag.kind, note: tag.note });
    if (tag.kind === 'relocate') say(tag.toRefdes, { kind: 'destination', of: tag.refdes });
  }
  for (const group of board.straps) {
    for (const refdes of new Set(namesOfGroup(group))) say(refdes, { kind: 'strap', name: group.name });
  }
  for (const tick of plan.straps.ticked) say(tick.refdes, { kind: 'ticked' });
  for (const photo of board.photos) for (const pair of photo.pairs) say(pair.refdes, { kind: 'matched' });
  return found;
}
