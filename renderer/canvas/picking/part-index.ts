import Flatbush from 'flatbush';
import type { Board, Part } from '../../../shared-types/board.ts';
import { boxOf, type Point, type Side } from '../../../shared-types/geometry.ts';
import { bodyCorners, convexTouch, distanceToBody } from './body-outline.ts';

/** Finds parts of one side by place. */
export type PartIndex = {
  /** The smallest body under the point, else the nearest one within reach, mm. */
  at(point: Point, reachMm: number): Part | null;
  /** Parts whose body touches a convex polygon, in the board's order. */
  touching(polygon: readonly Point[]): Part[];
};

export function partIndex(board: Board, side: Side): PartIndex {
  const parts = board.parts.filter((part) => part.side === side);
  if (parts.length === 0) return { at: () => null, touching: () => [] };
  const tree = new Flatbush(parts.length);
  for (const part of parts) {
    const box = boxOf(bodyCorners(part));
    tree.add(box.minX, box.minY, box.maxX, box.maxY);
  }
  tree.finish();
  const around = (point: Point, reach: number) =>
    tree.search(point.x - reach, point.y - reach, point.x + reach, point.y + reach).map((index) => parts[index]);
  return {
    at: (point, reachMm) => closest(around(point, reachMm), point, reachMm),
    touching: (polygon) => {
      const box = boxOf(polygon);
      return tree
        .search(box.minX, box.minY, box.maxX, box.maxY)
        .sort((a, b) => a - b)
        .map((index) => parts[index])
        .filter((part) => convexTouch(bodyCorners(part), polygon));
    },
  };
}

const areaOf = (part: Part): number => part.package.lengthMm * part.package.widthMm;

function closest(candidates: readonly Part[], point: Point, reachMm: number): Part | null {
  let best: Part | null = null;
  let bestDistance = reachMm;
  for (const part of candidates) {
    const distance = distanceToBody(point, part);
    const nearer =
      distance < bestDistance || (distance === bestDistance && best !== null && areaOf(part) < areaOf(best));
    if (distance > reachMm || (best !== null && !nearer)) continue;
    best = part;
    bestDistance = distance;
  }
  return best;
}
