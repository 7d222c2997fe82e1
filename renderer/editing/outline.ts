import { produce } from 'immer';
import type { Board } from '../../shared-types/board.ts';
import type { Contour } from '../../shared-types/geometry.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { type ContourFault, type ContourId, contourFaultOf } from '../../shared-types/rules/contour-faults.ts';
import { moveContour } from './contour/corners.ts';

export const contourOf = (board: Board, id: ContourId): Contour | undefined =>
  id === 'outline' ? board.outline : board.cutouts[id];

/** Most cutouts a board may hold. */
const MOST_CUTOUTS = 5000;

/**
 * What stands against giving a contour this shape; null: nothing. A fault that the contour had before and keeps is no
 * reason: an imported board whose cutouts touch can still be worked on.
 */
export function faultOfChange(board: Board, id: ContourId, contour: Contour): ContourFault | null {
  const cutouts = id === 'outline' ? board.cutouts : board.cutouts.with(Math.min(id, board.cutouts.length), contour);
  return changed(board, id, id === 'outline' ? contour : board.outline, cutouts);
}

function changed(board: Board, id: ContourId, outline: Contour, cutouts: readonly Contour[]): ContourFault | null {
  const fault = contourFaultOf(outline, cutouts, id);
  if (!fault) return null;
  const before = contourOf(board, id) && contourFaultOf(board.outline, board.cutouts, id);
  const same = before && before.kind === fault.kind && before.id === fault.id && otherOf(before) === otherOf(fault);
  return same ? null : fault;
}

const otherOf = (fault: ContourFault) => ('other' in fault ? fault.other : null);

/** What stands against a new cutout; null: nothing. */
export const faultOfCutout = (board: Board, cutout: Contour): ContourFault | null =>
  contourFaultOf(board.outline, [...board.cutouts, cutout], board.cutouts.length);

/** Gives the outline or a cutout another shape. Nothing changes when the shape is refused: see `faultOfChange`. */
export function setContour(document: TicketDocument, id: ContourId, contour: Contour): TicketDocument {
  if (!contourOf(document.board, id) || faultOfChange(document.board, id, contour)) return document;
  return produce(document, (draft) => {
    if (id === 'outline') draft.board.outline = contour;
    else draft.board.cutouts[id] = contour;
  });
}

/** Adds a cutout. Nothing changes when it is refused. */
export function addCutout(document: TicketDocument, cutout: Contour): TicketDocument {
  if (document.board.cutouts.length >= MOST_CUTOUTS || faultOfCutout(document.board, cutout)) return document;
  return produce(document, (draft) => {
    draft.board.cutouts.push(cutout);
  });
}

export function removeCutout(document: TicketDocument, index: number): TicketDocument {
  return produce(document, (draft) => {
    draft.board.cutouts.splice(index, 1);
  });
}

/**
 * Where a copy of a cutout finds room: beside it, right, left, above, below, then farther; null: nowhere near.
 * `gapMm`: room between the two.
 */
export function placeForCopy(board: Board, index: number, gapMm: number): Contour | null {
  const cutout = board.cutouts[index];
  if (!cutout) return null;
  const xs = cutout.map((corner) => corner.x);
  const ys = cutout.map((corner) => corner.y);
  const wide = Math.max(...xs) - Math.min(...xs) + gapMm;
  const high = Math.max(...ys) - Math.min(...ys) + gapMm;
  for (let ring = 1; ring <= 6; ring++)
    for (const [dx, dy] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ]) {
      // Half circles may reach past their corners: the larger of the two spans is room enough.
      const step = ring * Math.max(wide, high);
      const copy = moveContour(cutout, { x: dx * step, y: dy * step });
      if (!faultOfCutout(board, copy)) return copy;
    }
  return null;
}
