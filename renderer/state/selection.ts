import type { TicketDocument } from '../../shared-types/plan.ts';
import type { Selection } from './app-state.ts';

/** The selection without what the document no longer has; the same object when nothing is gone. */
export function pruneSelection(selection: Selection, document: TicketDocument): Selection {
  const { plan, board } = document;
  const siteGone = selection.siteId !== null && !plan.sites.some((site) => site.id === selection.siteId);
  const coverGone = selection.coverId !== null && !board.covers.some((cover) => cover.id === selection.coverId);
  const watchGone = selection.watchId !== null && !plan.tags.some((tag) => tag.id === selection.watchId);
  const known = selection.parts.size > 0 ? new Set(board.parts.map((part) => part.refdes)) : null;
  const lost = known ? [...selection.parts].some((refdes) => !known.has(refdes)) : false;
  if (!siteGone && !watchGone && !coverGone && !lost) return selection;
  return {
    parts: lost ? new Set([...selection.parts].filter((refdes) => known?.has(refdes))) : selection.parts,
    siteId: siteGone ? null : selection.siteId,
    watchId: watchGone ? null : selection.watchId,
    coverId: coverGone ? null : selection.coverId,
  };
}
