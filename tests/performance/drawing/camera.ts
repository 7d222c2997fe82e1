import type { Board } from '../../../shared-types/board.ts';
import { boxOf, flattenContour, type Point, type Side } from '../../../shared-types/geometry.ts';

/** Photo size, pixels: a small picture of a telephone. */
export const PHOTO_PX = { width: 2400, height: 1800 };

/** How a camera held by hand looks down on a board: lengths in mm, angles in degrees. */
export type Stand = { distanceMm: number; turnDeg: number; leanXDeg: number; leanYDeg: number; shareOfWidth: number };

/** A point above the board, mm: x and y of the board, z away from the side that is looked at. */
export type Space = Point & { z: number };

/** A pinhole over the middle of the board: from board mm and height to photo pixels. The bottom is seen turned over. */
export function cameraOver(board: Pick<Board, 'outline'>, side: Side, stand: Stand): (at: Space) => Point {
  const { minX, maxX, minY, maxY } = boxOf(flattenContour(board.outline, 0.1));
  const [turn, leanX, leanY] = [stand.turnDeg, stand.leanXDeg, stand.leanYDeg].map((deg) => (deg * Math.PI) / 180);
  const focal = (stand.shareOfWidth * PHOTO_PX.width * stand.distanceMm) / (maxX - minX);
  return ({ x, y, z }) => {
    const across = (side === 'top' ? 1 : -1) * (x - (minX + maxX) / 2);
    const up = y - (minY + maxY) / 2;
    const u = across * Math.cos(turn) - up * Math.sin(turn);
    const v = across * Math.sin(turn) + up * Math.cos(turn);
    const w = v * Math.cos(leanX) - z * Math.sin(leanX);
    const near = v * Math.sin(leanX) + z * Math.cos(leanX);
    const r = u * Math.cos(leanY) + near * Math.sin(leanY);
    const depth = stand.distanceMm - (near * Math.cos(leanY) - u * Math.sin(leanY));
    return { x: PHOTO_PX.width / 2 + (focal * r) / depth, y: PHOTO_PX.height / 2 - (focal * w) / depth };
  };
}
