import { produce } from 'immer';
import type { Part } from '../../shared-types/board.ts';
import { otherSide, type Point } from '../../shared-types/geometry.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { freeRefdes, freeSeries } from '../../shared-types/rules/refdes.ts';
import { renameEverywhere } from '../../shared-types/rules/rename-part.ts';
import { partsOf } from './move-parts.ts';
import { tidy } from './part-poses.ts';
import { strapGroupsNaming } from './strap-references.ts';
import { clearTags } from './tags.ts';

/** Most parts that a board may hold: the format's own bound. */
const MOST_PARTS = 20000;

/** Names that are in use: a tag names a part or a cover, so the two share them. */
export const takenRefdes = (document: TicketDocument): Set<string> =>
  new Set([...document.board.parts.map((part) => part.refdes), ...document.board.covers.map((cover) => cover.id)]);

/** Puts parts on the board. A part whose designator is taken, or that would be one too many, is left out. */
export function addParts(document: TicketDocument, parts: readonly Part[]): TicketDocument {
  const taken = takenRefdes(document);
  const added: Part[] = [];
  for (const part of parts) {
    if (taken.has(part.refdes) || document.board.parts.length + added.length >= MOST_PARTS) continue;
    taken.add(part.refdes);
    added.push(part);
  }
  if (added.length === 0) return document;
  return { ...document, board: { ...document.board, parts: [...document.board.parts, ...added] } };
}

/**
 * Takes parts off the drawing. Their tags and sites go with them; a thermocouple stays where it is, on bare board; a
 * relocation that led to them has no destination any more. Nothing changes while a strap group names one of them.
 */
export function deleteParts(document: TicketDocument, refdes: readonly string[]): TicketDocument {
  const gone = new Set(partsOf(document, refdes).map((part) => part.refdes));
  if (gone.size === 0 || strapGroupsNaming(document, refdes).length > 0) return document;
  return produce(clearTags(document, [...gone]), (draft) => {
    draft.board.parts = draft.board.parts.filter((part) => !gone.has(part.refdes));
    for (const tag of draft.plan.tags) {
      if (tag.kind === 'watchPoint' && gone.has(tag.refdes ?? '')) tag.refdes = null;
      if (tag.kind === 'relocate' && gone.has(tag.toRefdes)) tag.toRefdes = '';
    }
    // The pair keeps its place on the board; what it was taken from is gone.
    for (const photo of draft.board.photos)
      for (const pair of photo.pairs)
        if (gone.has(pair.refdes ?? '')) Object.assign(pair, { anchor: 'free', refdes: null });
  });
}

/** Why a designator cannot be given, and the next free one; null: it can. */
export function refdesFault(document: TicketDocument, wanted: string, own: string): { free: string } | null {
  const taken = takenRefdes(document);
  const name = wanted.trim();
  return name !== '' && (name === own || !taken.has(name)) ? null : { free: freeRefdes(name || own, taken) };
}

/** Gives a part another designator; tags, sites and thermocouples follow. A taken or empty one changes nothing. */
export function renamePart(document: TicketDocument, from: string, to: string): TicketDocument {
  const name = to.trim().slice(0, 64);
  const known = document.board.parts.some((part) => part.refdes === from);
  if (!known || name === from || refdesFault(document, name, from)) return document;
  return renameEverywhere(document, from, name);
}

export type CopyTo = { by: Point; otherSide?: boolean };

/** Copies of parts, shifted, with the next free designators; `refdes` of the copies in the order of the parts. */
export function copiesOf(
  document: TicketDocument,
  refdes: readonly string[],
  shifts: readonly CopyTo[],
): { parts: Part[]; refdes: string[] } {
  const taken = takenRefdes(document);
  const originals = partsOf(document, refdes);
  const parts = shifts.flatMap((shift) =>
    originals.map((part): Part => {
      const [name] = freeSeries(part.refdes, 1, taken);
      taken.add(name);
      const side = shift.otherSide ? otherSide(part.side) : part.side;
      return { ...part, refdes: name, side, x: tidy(part.x + shift.by.x), y: tidy(part.y + shift.by.y) };
    }),
  );
  return { parts, refdes: parts.map((part) => part.refdes) };
}
