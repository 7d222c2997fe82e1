import type { Box, Point } from '../geometry.ts';
import type { BoardPhoto } from '../photo.ts';
import { fitPhoto, type PhotoFit } from './photo-fit.ts';
import type { FitRefusal } from './photo-spread.ts';
import { invertMap, mapPoint, type PlaneMap } from './plane-maps.ts';

/** Where a photo lies. Without a fit it is laid over the outline by guess, so that it can be worked with. */
export type PhotoPlace = {
  toBoard: PlaneMap;
  toPhoto: PlaneMap;
  fit: PhotoFit | null;
  /** Why the wanted kind of map was not reached; null: it was. */
  refusal: FitRefusal | null;
};

type Placed = Pick<BoardPhoto, 'side' | 'widthPx' | 'heightPx' | 'pairs' | 'fit'>;

/** The place of a photo: by its pairs, else by the box of the board's outline (mm) and the first pair, if there is one. */
export function placePhoto(photo: Placed, outline: Box): PhotoPlace {
  const wanted = fitPhoto(photo.pairs, photo.side, photo.fit);
  const found = wanted.ok || photo.fit === null ? wanted : fitPhoto(photo.pairs, photo.side);
  const refusal = wanted.ok ? wanted.fit.heldBack : wanted.refusal;
  if (found.ok) return { toBoard: found.fit.toBoard, toPhoto: found.fit.toPhoto, fit: found.fit, refusal };
  const toBoard = guessedMap(photo, outline);
  return { toBoard, toPhoto: invertMap(toBoard) as PlaneMap, fit: null, refusal };
}

/** Upright over the outline, just large enough to cover it; moved so that the first pair meets. */
function guessedMap({ side, widthPx, heightPx, pairs }: Placed, { minX, minY, maxX, maxY }: Box): PlaneMap {
  const scale = Math.max((maxX - minX) / widthPx, (maxY - minY) / heightPx, 1e-6);
  const across = side === 'top' ? scale : -scale;
  const middle: Point = { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
  const map: PlaneMap = [
    ...[across, 0, middle.x - (across * widthPx) / 2],
    ...[0, -scale, middle.y + (scale * heightPx) / 2],
    ...[0, 0, 1],
  ] as unknown as PlaneMap;
  const [first] = pairs;
  if (!first) return map;
  const at = mapPoint(map, first.photo);
  return [across, 0, map[2] + first.board.x - at.x, 0, -scale, map[5] + first.board.y - at.y, 0, 0, 1];
}
