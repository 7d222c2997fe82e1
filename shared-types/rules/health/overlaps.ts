import Flatbush from 'flatbush';
import type { Part } from '../../board.ts';
import { type Box, boxOf, rectangleCorners } from '../../geometry.ts';
import { type FlatBody, flatBody, overlapDepth } from './overlap-depth.ts';

/** Two parts of one side whose bodies reach into each other. */
export type Overlap = { first: Part; second: Part; depthMm: number };

/** A heap of parts on one spot makes pairs by the million: the search ends after so many on a side. */
export const MOST_PAIRS = 2000;

/** Pairs of parts of one side that reach into each other by more than `leastMm`, in the board's order; at most `MOST_PAIRS` of a side. */
export function overlapsOf(parts: readonly Part[], leastMm: number): Overlap[] {
  return (['top', 'bottom'] as const).flatMap((side) =>
    overlapsOnSide(
      parts.filter((part) => part.side === side),
      leastMm,
    ),
  );
}

function overlapsOnSide(parts: readonly Part[], leastMm: number): Overlap[] {
  if (parts.length < 2) return [];
  const bodies = parts.map(flatBody);
  const boxes = bodies.map(boxOfBody);
  const tree = new Flatbush(parts.length);
  for (const box of boxes) tree.add(box.minX, box.minY, box.maxX, box.maxY);
  tree.finish();
  const found: Overlap[] = [];
  for (const [index, { minX, minY, maxX, maxY }] of boxes.entries()) {
    const near = tree.search(minX, minY, maxX, maxY, (other) => other > index).sort((a, b) => a - b);
    for (const other of near) {
      const depthMm = overlapDepth(bodies[index], bodies[other]);
      if (depthMm > leastMm) found.push({ first: parts[index], second: parts[other], depthMm });
      if (found.length === MOST_PAIRS) return found;
    }
  }
  return found;
}

function boxOfBody(body: FlatBody): Box {
  if (body.shape === 'rectangle') return boxOf(rectangleCorners(body));
  const radius = body.lengthMm / 2;
  return { minX: body.x - radius, minY: body.y - radius, maxX: body.x + radius, maxY: body.y + radius };
}
