import type { Point } from '../geometry.ts';
import type { PhotoFit } from './photo-fit.ts';
import { divisorAt, mapPoint } from './plane-maps.ts';

/** Of a photo that reaches to the horizon, what lies further off than ten times the middle of the pairs is left out. */
const LEAST_DIVISOR = 0.1;

/** The same polygon on the photo (pixels) and on the board (mm). */
export type PhotoPatch = { photo: Point[]; board: Point[] };

/** The part of a photo that lies on the board's plane this side of the horizon: for a photo from above its four corners. */
export function photoPatch({ toBoard }: Pick<PhotoFit, 'toBoard'>, widthPx: number, heightPx: number): PhotoPatch {
  const corners = [
    { x: 0, y: 0 },
    { x: widthPx, y: 0 },
    { x: widthPx, y: heightPx },
    { x: 0, y: heightPx },
  ];
  const height = (point: Point) => divisorAt(toBoard, point) - LEAST_DIVISOR;
  const photo = corners.flatMap((corner, index) => {
    const next = corners[(index + 1) % 4];
    const [here, there] = [height(corner), height(next)];
    const kept = here >= 0 ? [corner] : [];
    if (here >= 0 === there >= 0) return kept;
    const share = here / (here - there);
    return [...kept, { x: corner.x + share * (next.x - corner.x), y: corner.y + share * (next.y - corner.y) }];
  });
  return { photo, board: photo.map((point) => mapPoint(toBoard, point)) };
}
