import type { Board } from '../../../shared-types/board.ts';
import { distanceToEdge, edgesOf, insideContour, middleOf } from '../../../shared-types/contour/edges.ts';
import type { Point } from '../../../shared-types/geometry.ts';
import type { ContourId } from '../../../shared-types/rules/contour-faults.ts';
import { contourOf } from '../../editing/outline.ts';
import type { ContourPick } from './outline-state.ts';

/** What a press on a shape takes hold of. `bend`: the middle of an edge of the chosen contour. */
export type Hit = { id: ContourId; part: 'whole' | 'corner' | 'edge' | 'bend'; index: number };

const idsOf = (board: Board): ContourId[] => [...board.cutouts.keys(), 'outline'];

/** Contours whose corners may be taken hold of at once: the chosen one, and every one that is not a curve of hundreds. */
const MANY_CORNERS = 200;

export const showsCorners = (board: Board, id: ContourId, picked: ContourPick | null): boolean =>
  picked?.id === id || (contourOf(board, id)?.length ?? 0) <= MANY_CORNERS;

/** The nearest corner within reach, else the bend of an edge of the chosen contour, else an edge, else a cutout's inside. */
export function hitAt(board: Board, picked: ContourPick | null, at: Point, reachMm: number): Hit | null {
  let best: Hit | null = null;
  let nearest = reachMm;
  const offer = (place: Point, hit: Hit) => {
    const off = Math.hypot(place.x - at.x, place.y - at.y);
    if (off > nearest) return;
    nearest = off;
    best = hit;
  };
  for (const id of idsOf(board))
    if (showsCorners(board, id, picked))
      for (const [index, corner] of (contourOf(board, id) ?? []).entries())
        offer(corner, { id, part: 'corner', index });
  if (best) return best;
  if (picked)
    for (const edge of edgesOf(contourOf(board, picked.id) ?? []))
      if (Math.hypot(edge.to.x - edge.from.x, edge.to.y - edge.from.y) > 4 * reachMm)
        offer(middleOf(edge), { id: picked.id, part: 'bend', index: edge.index });
  return best ?? edgeHit(board, at, reachMm) ?? insideHit(board, at);
}

function edgeHit(board: Board, at: Point, reachMm: number): Hit | null {
  let best: Hit | null = null;
  let nearest = reachMm;
  for (const id of idsOf(board))
    for (const edge of edgesOf(contourOf(board, id) ?? [])) {
      const off = distanceToEdge(edge, at);
      if (off > nearest) continue;
      nearest = off;
      best = { id, part: 'edge', index: edge.index };
    }
  return best;
}

function insideHit(board: Board, at: Point): Hit | null {
  const id = board.cutouts.findIndex((cutout) => insideContour(at, cutout));
  return id < 0 ? null : { id, part: 'whole', index: 0 };
}
