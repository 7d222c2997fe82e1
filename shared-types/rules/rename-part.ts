import { produce } from 'immer';
import type { TicketDocument } from '../plan.ts';
import { renameInStraps } from './straps/group-names.ts';

/** Gives a part another designator, which must be free; tags, sites, straps, thermocouples and match points follow. */
export function renameEverywhere(document: TicketDocument, from: string, to: string): TicketDocument {
  return produce(document, (draft) => {
    for (const part of draft.board.parts) if (part.refdes === from) part.refdes = to;
    for (const tag of draft.plan.tags) {
      if (tag.refdes === from) tag.refdes = to;
      if (tag.kind === 'relocate' && tag.toRefdes === from) tag.toRefdes = to;
    }
    renameInStraps(draft, from, to);
    for (const photo of draft.board.photos) for (const pair of photo.pairs) if (pair.refdes === from) pair.refdes = to;
    for (const site of draft.plan.sites) {
      if (site.target !== from) continue;
      if (site.name === from) site.name = to;
      site.target = to;
    }
  });
}

/** Several new designators, one after the other. One that is taken, or empty, or of a part that is not there changes nothing. */
export function renameParts(
  document: TicketDocument,
  renames: readonly (readonly [from: string, to: string])[],
): TicketDocument {
  return renames.reduce((next, [from, to]) => {
    const taken = next.board.parts.some(({ refdes }) => refdes === to) || next.board.covers.some(({ id }) => id === to);
    const there = next.board.parts.some(({ refdes }) => refdes === from);
    return taken || !there || to === '' ? next : renameEverywhere(next, from, to);
  }, document);
}
