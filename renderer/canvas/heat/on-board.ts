import type { Board } from '../../../shared-types/board.ts';
import {
  type Box,
  boxOf,
  type Contour,
  flattenContour,
  insidePolygon,
  type Point,
} from '../../../shared-types/geometry.ts';
import { remembered } from '../scene.ts';

type Shape = { polygon: Point[]; box: Box };

const shapeOf = remembered((contour: Contour): Shape => {
  const polygon = flattenContour(contour, 0.05);
  return { polygon, box: boxOf(polygon) };
});

const within = ({ x, y }: Point, box: Box): boolean => x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY;

/** True when a board point (mm) lies on laminate: inside the outline and in no cutout. */
export function onLaminate(board: Pick<Board, 'outline' | 'cutouts'>, at: Point): boolean {
  const holds = (contour: Contour) => {
    const shape = shapeOf(contour);
    return within(at, shape.box) && insidePolygon(at, shape.polygon);
  };
  return holds(board.outline) && !board.cutouts.some(holds);
}
