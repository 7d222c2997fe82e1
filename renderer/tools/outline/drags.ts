import { edgeBetween, middleOf } from '../../../shared-types/contour/edges.ts';
import type { Contour, Point } from '../../../shared-types/geometry.ts';
import type { ContourId } from '../../../shared-types/rules/contour-faults.ts';
import { contourName, outlineEdits } from '../../../shared-types/words/window/outline.ts';
import { moveContour, moveCorner, moveEdge, setBulge, wrapped } from '../../editing/contour/corners.ts';
import { bulgeThrough } from '../../editing/contour/shapes.ts';
import type { CanvasModel } from '../../state/canvas-model.ts';
import type { Hit } from './hits.ts';
import { onGrid, snapPoint } from './snap.ts';

/** A drag of a corner, an edge, its bend, or a whole cutout, and what it started from. */
export type ShapeDrag = { hit: Hit; start: Contour; from: Point };

export const dragLabel = ({ hit }: ShapeDrag): string =>
  hit.part === 'bend' ? outlineEdits.bend : outlineEdits.move(hit.part, contourName(hit.id));

/** How near to its chord an arc goes straight, as a share of the chord. */
const STRAIGHT_SHARE = 0.015;

/** The contour with the held part at the pencil. `snapping` false: free of grid and all else. */
export function draggedContour(
  drag: ShapeDrag,
  at: Point,
  model: CanvasModel,
  reachMm: number,
  snapping: boolean,
): Contour {
  const { hit, start, from } = drag;
  if (hit.part === 'bend') return bent(start, hit.index, at, snapping);
  if (hit.part === 'corner') {
    const to = snapping ? snapPoint(at, around(drag, model, reachMm)).at : at;
    return moveCorner(start, hit.index, to);
  }
  const grip = start[wrapped(start, hit.index)];
  const free = { x: grip.x + at.x - from.x, y: grip.y + at.y - from.y };
  const to = snapping ? onGrid(free, model.outline).at : free;
  const by = { x: to.x - grip.x, y: to.y - grip.y };
  return hit.part === 'edge' ? moveEdge(start, hit.index, by) : moveContour(start, by);
}

/** A corner snaps to other shapes, to its neighbours' directions and levels, to the grid; not to its own edges. */
function around({ hit, start }: ShapeDrag, model: CanvasModel, reachMm: number) {
  const { board } = model.document;
  const others: [ContourId, Contour][] = [['outline', board.outline], ...board.cutouts.entries()];
  return {
    contours: others.filter(([id]) => id !== hit.id).map(([, contour]) => contour),
    points: start.filter((_, index) => index !== hit.index),
    from: null,
    gridMm: model.outline.gridMm,
    reachMm,
  };
}

function bent(start: Contour, index: number, at: Point, snapping: boolean): Contour {
  const from = start[wrapped(start, index)];
  const to = start[wrapped(start, index + 1)];
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  const height = ((to.x - from.x) * (at.y - from.y) - (to.y - from.y) * (at.x - from.x)) / chord;
  if (snapping && Math.abs(height) < STRAIGHT_SHARE * chord) return setBulge(start, index, 0);
  // The bend follows the pencil's height over the middle of the chord, wherever along it the pencil is.
  const { origin } = edgeBetween(from, to, 0);
  const top = { x: origin.x - ((to.y - from.y) / chord) * height, y: origin.y + ((to.x - from.x) / chord) * height };
  return setBulge(start, index, bulgeThrough(from, to, top));
}

/** The middle of an edge, where its bend is taken hold of. */
export const bendGrip = (contour: Contour, index: number): Point =>
  middleOf(edgeBetween(contour[index], contour[wrapped(contour, index + 1)], contour[index].bulge ?? 0));
