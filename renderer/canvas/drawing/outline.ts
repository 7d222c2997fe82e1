import type { Corner, TurnedRectangle } from '../../../shared-types/geometry.ts';
import { flattenContour, rectangleCorners } from '../../../shared-types/geometry.ts';
import { crisp, type Projection, projectAll } from '../view/projection.ts';
import type { PixelBox } from './boxes.ts';
import type { Mark } from './marks.ts';

/** A contour in scene pixels, its arcs as chords within a tenth of a pixel. */
export function contourPixels(contour: readonly Corner[], projection: Projection): number[] {
  return projectAll(projection, flattenContour([...contour], Math.max(0.001, 0.1 / projection.zoom)));
}

/** The rectangle grown on screen by `byPx` on every side, and to at least `leastPx` across. */
export function grown(area: TurnedRectangle, projection: Projection, byPx: number, leastPx = 0): TurnedRectangle {
  const span = (mm: number) => Math.max(mm + (2 * byPx) / projection.zoom, leastPx / projection.zoom);
  return { ...area, lengthMm: span(area.lengthMm), widthMm: span(area.widthMm) };
}

/** True when the rectangle's edges lie along the screen's. */
export function liesUpright(turnDeg: number, projection: Projection): boolean {
  const seen = (((turnDeg + (projection.side === 'bottom' ? -1 : 1) * projection.turnDeg) % 90) + 90) % 90;
  return seen < 1e-6 || seen > 90 - 1e-6;
}

/** Corners of a turned rectangle in scene pixels, flat. */
export const areaPixels = (area: TurnedRectangle, projection: Projection): number[] =>
  projectAll(projection, rectangleCorners(area));

/** Upright box round flat points. */
export function boxOfPixels(points: readonly number[]): PixelBox {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (let i = 0; i < points.length; i += 2) {
    box.minX = Math.min(box.minX, points[i]);
    box.maxX = Math.max(box.maxX, points[i]);
    box.minY = Math.min(box.minY, points[i + 1]);
    box.maxY = Math.max(box.maxY, points[i + 1]);
  }
  return box;
}

/** The four corners set on whole device pixels for a stroke, when the rectangle lies upright; else as they are. */
export function crispArea(area: TurnedRectangle, projection: Projection, strokePx: number): number[] {
  const points = areaPixels(area, projection);
  if (!liesUpright(area.turnDeg, projection)) return points;
  return points.map((value) => crisp(value, strokePx, projection.ratio));
}

/** A turned rectangle as the cheapest mark: an upright one as a rectangle on whole pixels. */
export function areaShape(
  area: TurnedRectangle,
  projection: Projection,
  strokePx: number,
): Extract<Mark, { kind: 'rectangle' | 'polygon' }> {
  const points = crispArea(area, projection, strokePx);
  if (!liesUpright(area.turnDeg, projection)) return { kind: 'polygon', points };
  const box = boxOfPixels(points);
  return { kind: 'rectangle', x: box.minX, y: box.minY, width: box.maxX - box.minX, height: box.maxY - box.minY };
}
