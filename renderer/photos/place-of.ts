import type { Board } from '../../shared-types/board.ts';
import { boxOf, flattenContour, type Point } from '../../shared-types/geometry.ts';
import type { BoardPhoto } from '../../shared-types/photo.ts';
import { type PhotoPlace, placePhoto } from '../../shared-types/rules/photo-place.ts';
import { type Suspect, suspectPairs } from '../../shared-types/rules/photo-suspects.ts';
import { divisorAt, mapPoint } from '../../shared-types/rules/plane-maps.ts';

const places = new WeakMap<BoardPhoto, { outline: Board['outline']; place: PhotoPlace }>();
const suspects = new WeakMap<BoardPhoto['pairs'], Map<string, Suspect[]>>();

/** Where a photo lies on its board; worked out once for each photo as the document holds it. */
export function placeOf(photo: BoardPhoto, board: Pick<Board, 'outline'>): PhotoPlace {
  const known = places.get(photo);
  if (known?.outline === board.outline) return known.place;
  const place = placePhoto(photo, boxOf(flattenContour(board.outline, 0.05)));
  places.set(photo, { outline: board.outline, place });
  return place;
}

/** Pairs that do not go with the others, under the kind of map in use. */
export function suspectsOf(photo: BoardPhoto, board: Pick<Board, 'outline'>): Suspect[] {
  const { fit } = placeOf(photo, board);
  if (!fit) return [];
  const key = `${photo.side} ${fit.kind}`;
  const known = suspects.get(photo.pairs) ?? new Map<string, Suspect[]>();
  suspects.set(photo.pairs, known);
  const found = known.get(key) ?? suspectPairs(photo.pairs, photo.side, fit.kind);
  known.set(key, found);
  return found;
}

/** The place on a photo (pixels) over a board point; null: the photo does not reach there. */
export function photoPointAt(photo: BoardPhoto, board: Pick<Board, 'outline'>, at: Point): Point | null {
  const { toPhoto, toBoard } = placeOf(photo, board);
  const point = mapPoint(toPhoto, at);
  const inside = point.x >= 0 && point.y >= 0 && point.x <= photo.widthPx && point.y <= photo.heightPx;
  return inside && divisorAt(toBoard, point) > 0 ? point : null;
}
