import type { Part } from '../../../../shared-types/board.ts';
import type { Contour } from '../../../../shared-types/geometry.ts';
import type { OutlineChoice } from '../outline/choose.ts';
import { contourOf } from '../outline/contour.ts';
import { type Box, boxOfPoints, growBox, type Point } from '../plane.ts';

/** The outline as the board holds it, and the move that brought its lower left to 0, 0. */
export interface BoardContour {
  readonly outline: Contour;
  readonly cutouts: Contour[];
  readonly shift: Point;
  /** Box of the outline before the move, mm. */
  readonly box: Box;
  readonly arcs: number;
}

export const MARGIN_MM = 3;

/** Contours of the chosen outline; without one, a rectangle round the parts. */
export function outlineContours(choice: OutlineChoice | null, parts: readonly Part[]): BoardContour {
  if (choice === null) return rectangleRound(parts);
  const { box, segments } = choice.outline;
  const shift = { x: -box.minX, y: -box.minY };
  const loops = [segments, ...choice.cutouts.map((cutout) => cutout.segments)];
  const [outline, ...cutouts] = loops.map((loop) => contourOf(loop, shift.x, shift.y));
  const arcs = loops.flat().filter(({ kind }) => kind === 'arc').length;
  return { outline, cutouts, shift, box, arcs };
}

function rectangleRound(parts: readonly Part[]): BoardContour {
  const corners = parts.flatMap(({ x, y, package: { lengthMm, widthMm } }) => {
    const reach = Math.hypot(lengthMm, widthMm) / 2;
    return [
      { x: x - reach, y: y - reach },
      { x: x + reach, y: y + reach },
    ];
  });
  const box = growBox(boxOfPoints(corners), MARGIN_MM);
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  const outline = [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: height },
    { x: 0, y: height },
  ];
  return { outline, cutouts: [], shift: { x: -box.minX, y: -box.minY }, box, arcs: 0 };
}
