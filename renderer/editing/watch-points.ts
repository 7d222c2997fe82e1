import { produce } from 'immer';
import type { Point, Side } from '../../shared-types/geometry.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { nextWatchName } from '../../shared-types/rules/suggestions.ts';
import type { TagOf } from '../../shared-types/tags.ts';
import { nextId } from './ids.ts';

export function watchPointsOf(document: TicketDocument): TagOf<'watchPoint'>[] {
  return document.plan.tags.filter((tag) => tag.kind === 'watchPoint');
}

/** Puts a thermocouple at a place on a face, mm; on a part when `refdes` is given. Named W1, W2 ... by the first free number. */
export function addWatchPoint(document: TicketDocument, at: Point, side: Side, refdes: string | null): TicketDocument {
  const name = nextWatchName(document.plan);
  return produce(document, (draft) => {
    const { tags } = draft.plan;
    const common = { id: nextId('tag', tags), order: null, note: '' };
    tags.push({ ...common, kind: 'watchPoint', name, side, x: at.x, y: at.y, refdes });
  });
}

/** Moves a thermocouple; `refdes`: the part it now sits on, null for bare board. */
export function moveWatchPoint(
  document: TicketDocument,
  tagId: string,
  at: Point,
  refdes: string | null,
): TicketDocument {
  return produce(document, (draft) => {
    const tag = draft.plan.tags.find((one) => one.id === tagId);
    if (tag?.kind === 'watchPoint') Object.assign(tag, { x: at.x, y: at.y, refdes });
  });
}

/** One thermocouple on the middle of each part; parts that carry one are passed over. */
export function watchParts(document: TicketDocument, refdes: readonly string[]): TicketDocument {
  const watched = new Set(watchPointsOf(document).map((tag) => tag.refdes));
  const wanted = new Set(refdes);
  return document.board.parts
    .filter((part) => wanted.has(part.refdes) && !watched.has(part.refdes))
    .reduce((next, part) => addWatchPoint(next, part, part.side, part.refdes), document);
}
