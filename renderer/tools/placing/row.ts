import type { Part } from '../../../shared-types/board.ts';
import type { Point, Side } from '../../../shared-types/geometry.ts';
import type { TicketDocument } from '../../../shared-types/plan.ts';
import { type Placing, placedParts, sameBody } from '../../editing/placing.ts';

/**
 * The parts that go on with a row as far as a point: from the part placed last, spaced evenly and nearly as far apart as the
 * last two were, straight across or up unless `free`. Without a row of the same package on that side: the one part there.
 */
export function rowTo(placing: Placing, document: TicketDocument, to: Point, side: Side, free: boolean): Part[] {
  const { turn } = placing;
  return placedParts(
    placing,
    document,
    rowPlaces(placing, document, to, side, free).map((at) => ({ ...at, turn, side })),
  );
}

function rowPlaces({ offer }: Placing, { board }: TicketDocument, to: Point, side: Side, free: boolean): Point[] {
  const like = (part: Part | undefined) =>
    part && offer && part.side === side && sameBody(part, offer) ? { x: part.x, y: part.y } : null;
  const [before, last] = [like(board.parts.at(-2)), like(board.parts.at(-1))];
  if (!last) return [to];
  const end = free ? to : straight(last, to);
  const far = Math.hypot(end.x - last.x, end.y - last.y);
  const pitch = before ? Math.hypot(last.x - before.x, last.y - before.y) : 0;
  const count = pitch > 0 ? Math.min(MOST, Math.max(1, Math.round(far / pitch))) : 1;
  return Array.from({ length: count }, (_, index) => ({
    x: last.x + ((index + 1) / count) * (end.x - last.x),
    y: last.y + ((index + 1) / count) * (end.y - last.y),
  }));
}

/** More in one row are a slip of the hand. */
const MOST = 200;

const straight = (from: Point, to: Point): Point =>
  Math.abs(to.x - from.x) >= Math.abs(to.y - from.y) ? { x: to.x, y: from.y } : { x: from.x, y: to.y };
