import type { PhotoPlace } from '../../../shared-types/rules/photo-place.ts';
import { derivativeAt, divisorAt, mapPoint } from '../../../shared-types/rules/plane-maps.ts';
import { type Projection, project } from '../view/projection.ts';

/** A piece of the picture, in pixels of the drawn level, from its upper left corner. */
export type PhotoTile = { x: number; y: number; width: number; height: number };

/** Pieces a side of a picture under a projective map: each is laid by the map's derivative at its middle, off by less than a pixel. */
const PIECES = 24;
/** Neighbours overlap by this much, so that no ground shows between them. */
const OVERLAP_PX = 1;

/** True for a map without perspective: one piece is exact then. */
export const isFlat = ({ toBoard }: PhotoPlace): boolean => toBoard[6] === 0 && toBoard[7] === 0;

/** The pieces of a picture. */
export function tilesFor(place: PhotoPlace, width: number, height: number): PhotoTile[] {
  if (isFlat(place)) return [{ x: 0, y: 0, width, height }];
  const tiles: PhotoTile[] = [];
  const edge = (index: number, size: number) => Math.round((index * size) / PIECES);
  for (let row = 0; row < PIECES; row++)
    for (let column = 0; column < PIECES; column++) {
      const [x, y] = [edge(column, width), edge(row, height)];
      const right = Math.min(width, edge(column + 1, width) + OVERLAP_PX);
      const bottom = Math.min(height, edge(row + 1, height) + OVERLAP_PX);
      if (right > x && bottom > y) tiles.push({ x, y, width: right - x, height: bottom - y });
    }
  return tiles;
}

/** As in `photo-patch.ts`: what lies further off than ten times the middle of the pairs is left out. */
const LEAST_DIVISOR = 0.1;

/**
 * a, b, c, d, tx, ty of the matrix that lays a tile on the scene; null: it reaches to the horizon.
 * `perPixel`: photo pixels for a pixel of the level.
 */
export function tileMatrix(
  { toBoard }: PhotoPlace,
  { x, y, width, height }: PhotoTile,
  perPixel: number,
  projection: Projection,
): [number, number, number, number, number, number] | null {
  const onPhoto = (acrossPx: number, downPx: number) => ({ x: acrossPx * perPixel, y: downPx * perPixel });
  const corners = [onPhoto(x, y), onPhoto(x + width, y), onPhoto(x, y + height), onPhoto(x + width, y + height)];
  if (corners.some((corner) => divisorAt(toBoard, corner) < LEAST_DIVISOR)) return null;
  const middle = onPhoto(x + width / 2, y + height / 2);
  const [xx, xy, yx, yy] = derivativeAt(toBoard, middle).map((value) => value * perPixel);
  const { a, b, c, d } = projection;
  const matrix = [a * xx + c * yx, b * xx + d * yx, a * xy + c * yy, b * xy + d * yy] as const;
  const at = project(projection, mapPoint(toBoard, middle));
  const left = at.x - (matrix[0] * width + matrix[2] * height) / 2;
  const top = at.y - (matrix[1] * width + matrix[3] * height) / 2;
  return [...matrix, left, top];
}

/** Index of the level to draw: the smallest that still has a pixel for every pixel of the screen. Sizes in pixels. */
export function levelFor(
  { toBoard }: PhotoPlace,
  photo: { widthPx: number; heightPx: number },
  levelWidths: readonly number[],
  projection: Projection,
): number {
  const [xx, xy, yx, yy] = derivativeAt(toBoard, { x: photo.widthPx / 2, y: photo.heightPx / 2 });
  const wanted = photo.widthPx * Math.sqrt(Math.abs(xx * yy - xy * yx)) * projection.zoom * projection.ratio;
  let level = 0;
  while (level + 1 < levelWidths.length && levelWidths[level + 1] >= wanted) level++;
  return level;
}
