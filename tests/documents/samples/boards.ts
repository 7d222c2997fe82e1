import { readFileSync } from 'node:fs';
import { type Board, boardSchema, bodyOf, type Part } from '../../../shared-types/board.ts';
import {
  boxOf,
  distanceToPolygon,
  flattenContour,
  gapBetween,
  insidePolygon,
  type Point,
  rectangleCorners,
} from '../../../shared-types/geometry.ts';
import { type Plan, planSchema } from '../../../shared-types/plan.ts';

const folder = new URL('../../../sample-boards/', import.meta.url);

export const SAMPLE_NAMES = ['greenhouse-gateway', 'tide-gauge-logger'] as const;

export const textOf = (file: string): string => readFileSync(new URL(file, folder), 'utf8');
export const readSample = (name: string): { board: Board; plan: Plan } => ({
  board: boardSchema.parse(JSON.parse(textOf(`${name}.board.json`))),
  plan: planSchema.parse(JSON.parse(textOf(`${name}.plan.json`))),
});

/** The body as a polygon: a round one as 48 corners, so that its empty corners do not count. */
export function bodyPolygon(part: Part): Point[] {
  if (part.package.shape === 'rectangle') return rectangleCorners(bodyOf(part));
  const radius = part.package.lengthMm / 2;
  return Array.from({ length: 48 }, (_, i) => ({
    x: part.x + radius * Math.cos((i * Math.PI) / 24),
    y: part.y + radius * Math.sin((i * Math.PI) / 24),
  }));
}

/** Pairs of parts on one side whose bodies come closer than `gapMm`. */
export function crowdedPairs(board: Board, gapMm: number): string[] {
  const bodies = board.parts.map((part) => {
    const polygon = bodyPolygon(part);
    return { part, polygon, box: boxOf(polygon) };
  });
  return bodies.flatMap((a, index) =>
    bodies.slice(index + 1).flatMap((b) => {
      const apart =
        a.part.side !== b.part.side ||
        a.box.maxX + gapMm < b.box.minX ||
        b.box.maxX + gapMm < a.box.minX ||
        a.box.maxY + gapMm < b.box.minY ||
        b.box.maxY + gapMm < a.box.minY;
      return apart || gapBetween(a.polygon, b.polygon) >= gapMm ? [] : [`${a.part.refdes} and ${b.part.refdes}`];
    }),
  );
}

/** Parts that reach over the outline or into a cutout. */
export function misplaced(board: Board): { overEdge: Part[]; inCutout: Part[] } {
  const outline = flattenContour(board.outline, 0.02);
  const cutouts = board.cutouts.map((cutout) => flattenContour(cutout, 0.02));
  return {
    overEdge: board.parts.filter((part) =>
      bodyPolygon(part).some((corner) => !insidePolygon(corner, outline) || distanceToPolygon(corner, outline) < 0.3),
    ),
    inCutout: board.parts.filter((part) => cutouts.some((cutout) => gapBetween(bodyPolygon(part), cutout) < 0.3)),
  };
}
