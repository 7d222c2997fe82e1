import type { Board } from '../../board.ts';
import { boxOfContour } from '../../contour/edges.ts';
import { type Contour, distanceToPolygon, flattenContour, type Point } from '../../geometry.ts';
import type { BoardChanges } from './types.ts';

const SAME_MM = 0.05;
const MOST_CORNERS = 600;

/** Outline and cutouts of the files where they differ from the ticket's; null: they are the same. */
export function outlineChange(ticket: Board, files: Board): Pick<BoardChanges, 'outline' | 'cutouts'> {
  const left = new Set(ticket.cutouts);
  let added = 0;
  for (const cutout of files.cutouts) {
    const same = [...left].find((one) => sameContour(one, cutout));
    if (same) left.delete(same);
    else added++;
  }
  const cutouts = { added, gone: left.size };
  const differs = added + left.size > 0 || !sameContour(ticket.outline, files.outline);
  return { outline: differs ? { outline: files.outline, cutouts: files.cutouts } : null, cutouts };
}

/** True where no corner of one lies off the other's border. */
export function sameContour(a: Contour, b: Contour): boolean {
  const [one, other] = [boxOfContour(a), boxOfContour(b)];
  const sides = ['minX', 'minY', 'maxX', 'maxY'] as const;
  if (sides.some((side) => Math.abs(one[side] - other[side]) > SAME_MM)) return false;
  const [first, second] = [flattenContour(a, SAME_MM / 2), flattenContour(b, SAME_MM / 2)];
  return liesOn(first, second) && liesOn(second, first);
}

function liesOn(points: readonly Point[], polygon: readonly Point[]): boolean {
  const step = Math.max(1, Math.ceil(points.length / MOST_CORNERS));
  return points.every((point, index) => index % step !== 0 || distanceToPolygon(point, polygon) <= SAME_MM);
}
