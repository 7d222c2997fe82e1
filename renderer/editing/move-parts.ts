import { bodyOf, type Part } from '../../shared-types/board.ts';
import { boxOf, otherSide, type Point, rectangleCorners, turnVector } from '../../shared-types/geometry.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { poseParts, tidy, wholeTurn } from './part-poses.ts';

type Names = readonly string[];

/** Shifts parts, mm. */
export function moveParts(document: TicketDocument, refdes: Names, by: Point): TicketDocument {
  if (by.x === 0 && by.y === 0) return document;
  return posed(document, refdes, (part) => ({ ...part, x: tidy(part.x + by.x), y: tidy(part.y + by.y) }));
}

/** Sets the place or the turn of parts: figures out of fields. */
export function setPose(
  document: TicketDocument,
  refdes: Names,
  pose: Partial<Pick<Part, 'x' | 'y' | 'turn'>>,
): TicketDocument {
  const { turn } = pose;
  const fields = turn === undefined ? pose : { ...pose, turn: wholeTurn(turn) };
  return posed(document, refdes, (part) => ({ ...part, ...fields }));
}

/** Turns each part about its own centre, counter-clockwise seen from the top. */
export function turnEach(document: TicketDocument, refdes: Names, degrees: number): TicketDocument {
  return posed(document, refdes, (part) => ({ ...part, turn: wholeTurn(part.turn + degrees) }));
}

/** Turns parts together about the middle of their box; one alone turns about its centre. */
export function turnParts(document: TicketDocument, refdes: Names, degrees: number): TicketDocument {
  const parts = partsOf(document, refdes);
  if (parts.length < 2) return turnEach(document, refdes, degrees);
  const middle = middleOf(parts);
  return posed(document, refdes, (part) => {
    const to = turnVector(part.x - middle.x, part.y - middle.y, degrees);
    return { ...part, x: tidy(middle.x + to.x), y: tidy(middle.y + to.y), turn: wholeTurn(part.turn + degrees) };
  });
}

/** Parts among these that are the target of a rework site: their side is that of its heat runs and cannot change. */
export function boundToSide(document: TicketDocument, refdes: Names): string[] {
  const targets = new Set(document.plan.sites.map((site) => site.target));
  return refdes.filter((one) => targets.has(one));
}

/** Puts parts on the other side where they lie, as if pushed through the board. Nothing changes while one is bound. */
export function flipParts(document: TicketDocument, refdes: Names): TicketDocument {
  if (boundToSide(document, refdes).length > 0) return document;
  return posed(document, refdes, (part) => ({ ...part, side: otherSide(part.side) }));
}

/**
 * Turns parts over together like a page, about the upright line through their middle, on to the other side: seen from
 * there they lie as they were seen before. Nothing changes while one is bound to its side.
 */
export function turnOverParts(document: TicketDocument, refdes: Names): TicketDocument {
  const parts = partsOf(document, refdes);
  if (parts.length === 0 || boundToSide(document, refdes).length > 0) return document;
  return posed(document, refdes, overPage(middleOf(parts).x));
}

/** A part turned over about an upright line. A top part at turn t shows its length at 180 - t from below. */
export const overPage =
  (lineX: number) =>
  (part: Part): Part => ({
    ...part,
    side: otherSide(part.side),
    x: tidy(2 * lineX - part.x),
    turn: wholeTurn(180 - part.turn),
  });

export function partsOf(document: TicketDocument, refdes: Names): Part[] {
  const wanted = new Set(refdes);
  return document.board.parts.filter((part) => wanted.has(part.refdes));
}

/** The middle of the box round the bodies. */
export function middleOf(parts: readonly Part[]): Point {
  const box = boxOf(parts.flatMap((part) => rectangleCorners(bodyOf(part))));
  return { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
}

function posed(document: TicketDocument, refdes: Names, change: (part: Part) => Part): TicketDocument {
  const wanted = new Set(refdes);
  return poseParts(document, (part) => (wanted.has(part.refdes) ? kept(part, change(part)) : part));
}

const kept = (before: Part, after: Part): Part =>
  before.x === after.x && before.y === after.y && before.turn === after.turn && before.side === after.side
    ? before
    : after;
