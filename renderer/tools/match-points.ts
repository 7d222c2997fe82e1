import { ownToBoard } from '../../shared-types/board.ts';
import { boxOf, flattenContour, type Point } from '../../shared-types/geometry.ts';
import type { BoardPhoto, MatchPair } from '../../shared-types/photo.ts';
import { mapPoint } from '../../shared-types/rules/plane-maps.ts';
import { photoPointAt, placeOf } from '../photos/place-of.ts';
import type { CanvasModel } from '../state/canvas-model.ts';

/** A place on the drawing that a match point may be taken from. */
export type Anchor = Pick<MatchPair, 'board' | 'anchor' | 'refdes'>;
/** One end of a pair on the canvas. */
export type PairEnd = { pairId: string; end: 'photo' | 'board' };

/** The photo that is being matched, if its side is shown. */
export function matchedPhoto({ document, photoId, shownSide }: CanvasModel): BoardPhoto | null {
  return document.board.photos.find((photo) => photo.id === photoId && photo.side === shownSide) ?? null;
}

/** The topmost shown photo over a board point: the one being matched first. */
export function photoAt(model: CanvasModel, at: Point): { photo: BoardPhoto; point: Point } | null {
  const { board } = model.document;
  const shown = board.photos.filter((photo) => photo.side === model.shownSide && photo.shown).reverse();
  const first = matchedPhoto(model);
  for (const photo of first ? [first, ...shown] : shown) {
    const point = photoPointAt(photo, board, at);
    if (point) return { photo, point };
  }
  return null;
}

/** The place on the drawing within reach (mm) that is nearest to a point; null: none. */
export function anchorNear(model: CanvasModel, at: Point, reachMm: number): Anchor | null {
  let best: Anchor | null = null;
  let nearest = reachMm;
  const offer = (board: Point, anchor: MatchPair['anchor'], refdes: string | null = null) => {
    const off = Math.hypot(board.x - at.x, board.y - at.y);
    if (off > nearest) return;
    nearest = off;
    best = { board: { x: board.x, y: board.y }, anchor, refdes };
  };
  const { outline, cutouts, parts, fiducials } = model.document.board;
  for (const part of parts) {
    if (part.side !== model.shownSide) continue;
    offer(part, 'part', part.refdes);
    if (part.pin1) offer(ownToBoard(part, part.pin1), 'pin-1', part.refdes);
  }
  for (const corner of outline) offer(corner, 'corner');
  for (const cutout of cutouts) {
    const { minX, minY, maxX, maxY } = boxOf(flattenContour(cutout, 0.05));
    offer({ x: (minX + maxX) / 2, y: (minY + maxY) / 2 }, 'hole');
    for (const corner of cutout) if (!corner.bulge) offer(corner, 'hole');
  }
  for (const fiducial of fiducials) if (fiducial.side === model.shownSide) offer(fiducial, 'fiducial');
  return best;
}

/** The end of a pair within reach (mm) of a board point; of two that lie together the photo's. */
export function pairEndNear(model: CanvasModel, at: Point, reachMm: number): PairEnd | null {
  const photo = matchedPhoto(model);
  if (!photo) return null;
  const { toBoard } = placeOf(photo, model.document.board);
  let best: PairEnd | null = null;
  let nearest = reachMm;
  const offer = (point: Point, found: PairEnd) => {
    const off = Math.hypot(point.x - at.x, point.y - at.y);
    if (off >= nearest) return;
    nearest = off;
    best = found;
  };
  for (const pair of photo.pairs) offer(mapPoint(toBoard, pair.photo), { pairId: pair.id, end: 'photo' });
  // The drawing's end must be clearly nearer: in a good fit both lie together.
  nearest = best ? nearest - reachMm / 3 : nearest;
  for (const pair of photo.pairs) offer(pair.board, { pairId: pair.id, end: 'board' });
  return best;
}
