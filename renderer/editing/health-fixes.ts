import { produce } from 'immer';
import { classById, isClassId } from '../../shared-types/library/classes.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { removeSite } from './sites.ts';

/** Heights that are not known are set to the usual one of the part's class; parts of unknown class keep none. */
export function takeClassHeights(document: TicketDocument, refdes: readonly string[]): TicketDocument {
  const wanted = new Set(refdes);
  return produce(document, (draft) => {
    for (const part of draft.board.parts) {
      if (!wanted.has(part.refdes) || part.package.heightMm !== null || !hasUsualHeight(part.class)) continue;
      part.package.heightMm = classById(part.class).defaultHeightMm;
    }
  });
}

/** True when the class says how high its parts are. */
export const hasUsualHeight = (classId: string): boolean => classId !== 'unknown' && isClassId(classId);

/** Takes several sites out, with what belongs to them. */
export const removeSites = (document: TicketDocument, siteIds: readonly string[]): TicketDocument =>
  siteIds.reduce(removeSite, document);
