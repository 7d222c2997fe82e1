import type { Board, Part } from '../../board.ts';
import { type Box, boxOf, distanceToPolygon, flattenContour, insidePolygon, type Point } from '../../geometry.ts';
import { hasBody } from './bodies.ts';
import { bodyHolds, flatBody } from './overlap-depth.ts';
import type { HealthEntry } from './types.ts';

/** A centre nearer to the edge than this counts as on it, mm: arcs are read as chords. */
const EDGE_MM = 0.05;

type Area = { polygon: readonly Point[]; box: Box };
const areaOf = (polygon: readonly Point[]): Area => ({ polygon, box: boxOf(polygon) });

function holds({ polygon, box }: Area, at: Point): boolean {
  const near = at.x >= box.minX && at.x <= box.maxX && at.y >= box.minY && at.y <= box.maxY;
  return near && insidePolygon(at, polygon);
}

/**
 * Parts whose centre lies outside the outline, or over a cutout that their body does not span. Bodies may stand over
 * the edge: connectors do, and mid-mount parts hang in a slot.
 */
export function placeEntries(board: Board): HealthEntry[] {
  const outline = areaOf(flattenContour(board.outline, EDGE_MM));
  const cutouts = board.cutouts.map((cutout) => areaOf(flattenContour(cutout, EDGE_MM)));
  return board.parts.filter(hasBody).flatMap((part): HealthEntry[] => {
    if (!holds(outline, part)) return outsideEntry(part, outline);
    const cutout = cutouts.find((one) => holds(one, part));
    if (!cutout || spans(part, cutout) || distanceToPolygon(part, cutout.polygon) < EDGE_MM) return [];
    return [{ kind: 'over-cutout', refdes: [part.refdes], figures: {} }];
  });
}

function outsideEntry(part: Part, outline: Area): HealthEntry[] {
  const byMm = distanceToPolygon(part, outline.polygon);
  return byMm < EDGE_MM ? [] : [{ kind: 'outside', refdes: [part.refdes], figures: { byMm } }];
}

/** A screw's head over its hole, a lamp over its light: the body stands all round the cutout. */
function spans(part: Part, cutout: Area): boolean {
  const body = flatBody(part);
  return cutout.polygon.every((point) => bodyHolds(body, point));
}
