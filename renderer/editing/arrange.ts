import { bodyOf, type Part } from '../../shared-types/board.ts';
import { boxOf, rectangleCorners } from '../../shared-types/geometry.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { partsOf } from './move-parts.ts';
import { poseParts, tidy } from './part-poses.ts';

export type Axis = 'x' | 'y';
export type Edge = 'least' | 'middle' | 'most';

/** A part's extent along an axis of the board, mm. */
export function spanOf(part: Part, axis: Axis): { least: number; middle: number; most: number } {
  const box = boxOf(rectangleCorners(bodyOf(part)));
  const [least, most] = axis === 'x' ? [box.minX, box.maxX] : [box.minY, box.maxY];
  return { least, middle: (least + most) / 2, most };
}

/** Brings the parts' edges or middles on one line across the axis: the outermost edge, or the middle of all. */
export function alignParts(
  document: TicketDocument,
  refdes: readonly string[],
  axis: Axis,
  edge: Edge,
): TicketDocument {
  const parts = partsOf(document, refdes);
  if (parts.length < 2) return document;
  const spans = parts.map((part) => spanOf(part, axis));
  const least = Math.min(...spans.map((span) => span.least));
  const most = Math.max(...spans.map((span) => span.most));
  const line = { least, middle: (least + most) / 2, most }[edge];
  const shifts = new Map(parts.map((part, index) => [part.refdes, line - spans[index][edge]]));
  return shifted(document, axis, shifts);
}

/** Leaves the outermost two where they are and makes the gaps between the bodies equal. */
export function distributeParts(document: TicketDocument, refdes: readonly string[], axis: Axis): TicketDocument {
  const parts = partsOf(document, refdes).toSorted((a, b) => spanOf(a, axis).middle - spanOf(b, axis).middle);
  if (parts.length < 3) return document;
  const spans = parts.map((part) => spanOf(part, axis));
  const room = spans[spans.length - 1].most - spans[0].least;
  const gap = (room - spans.reduce((sum, span) => sum + span.most - span.least, 0)) / (parts.length - 1);
  const shifts = new Map<string, number>();
  let at = spans[0].least;
  parts.forEach((part, index) => {
    shifts.set(part.refdes, at - spans[index].least);
    at += spans[index].most - spans[index].least + gap;
  });
  return shifted(document, axis, shifts);
}

function shifted(document: TicketDocument, axis: Axis, shifts: ReadonlyMap<string, number>): TicketDocument {
  return poseParts(document, (part) => {
    const by = shifts.get(part.refdes) ?? 0;
    return Math.abs(by) < 5e-4 ? part : { ...part, [axis]: tidy(part[axis] + by) };
  });
}
