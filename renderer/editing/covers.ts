import { produce } from 'immer';
import type { Cover } from '../../shared-types/board.ts';
import type { TurnedRectangle } from '../../shared-types/geometry.ts';
import { USUAL_COVERS } from '../../shared-types/library/usual-covers.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { nextTraySlot } from '../../shared-types/rules/suggestions.ts';
import { takenRefdes } from './add-parts.ts';
import { nextId } from './ids.ts';
import { insertInOrder } from './order.ts';
import { wholeTurn } from './part-poses.ts';
import { clearTags, hasTag } from './tags.ts';

export const coverById = (document: TicketDocument, id: string | null): Cover | undefined =>
  document.board.covers.find((cover) => cover.id === id);

/** Usual letters of a cover's name. */
const PREFIX: Record<Cover['kind'], string> = { can: 'SH', frame: 'SH', stiffener: 'ST' };

/** The first free name for a cover of a kind: 'SH1', 'ST2'. */
export function freeCoverId(document: TicketDocument, kind: Cover['kind']): string {
  const taken = new Set([...document.board.covers.map((cover) => cover.id), ...takenRefdes(document)]);
  let number = 1;
  while (taken.has(`${PREFIX[kind]}${number}`)) number += 1;
  return `${PREFIX[kind]}${number}`;
}

/** A cover on a drawn area. */
export const coverOn = (id: string, kind: Cover['kind'], side: Cover['side'], area: TurnedRectangle): Cover => ({
  id,
  kind,
  side,
  x: area.x,
  y: area.y,
  lengthMm: area.lengthMm,
  widthMm: area.widthMm,
  turn: wholeTurn(area.turnDeg),
  ...USUAL_COVERS[kind],
});

/** Puts a cover on the board; a taken id changes nothing. */
export function addCover(document: TicketDocument, cover: Cover): TicketDocument {
  if (coverById(document, cover.id)) return document;
  return produce(document, (draft) => {
    draft.board.covers.push(cover);
  });
}

/** Changes fields of a cover; its tag follows another id. An id that another cover or a part has is left as it was. */
export function setCover(document: TicketDocument, id: string, fields: Partial<Cover>): TicketDocument {
  const wanted = fields.id?.trim() ?? id;
  const taken = wanted !== id && (coverById(document, wanted) !== undefined || takenRefdes(document).has(wanted));
  const next = wanted === '' || taken ? id : wanted;
  return produce(document, (draft) => {
    const cover = draft.board.covers.find((one) => one.id === id);
    if (!cover) return;
    Object.assign(cover, fields, { id: next });
    if (next !== id) for (const tag of draft.plan.tags) if (tag.refdes === id) tag.refdes = next;
  });
}

/** Moves, sizes or turns a cover by its area. */
export function setCoverArea(document: TicketDocument, id: string, area: TurnedRectangle): TicketDocument {
  const { x, y, lengthMm, widthMm, turnDeg } = area;
  return setCover(document, id, { x, y, lengthMm, widthMm, turn: wholeTurn(turnDeg) });
}

/** Takes a cover off the drawing, and its tag with it. */
export function removeCover(document: TicketDocument, id: string): TicketDocument {
  if (!coverById(document, id)) return document;
  return produce(clearTags(document, [id]), (draft) => {
    draft.board.covers = draft.board.covers.filter((cover) => cover.id !== id);
  });
}

/** True when the cover comes off before any heat. */
export const liftedCover = (document: TicketDocument, id: string): boolean => hasTag(document, id, 'remove');

/** Has a cover come off before any heat, or stay on: a remove tag that names it, in the order of work like any other. */
export function liftCover(document: TicketDocument, id: string, on: boolean): TicketDocument {
  if (!coverById(document, id) || liftedCover(document, id) === on) return document;
  if (!on) return clearTags(document, [id]);
  return produce(document, (draft) => {
    const { tags } = draft.plan;
    const tag = { id: nextId('tag', tags), kind: 'remove', refdes: id, order: null, note: '' } as const;
    insertInOrder(tags, { ...tag, goesBack: true, traySlot: nextTraySlot(document.plan) });
  });
}
