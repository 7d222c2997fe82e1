import { type Box, boxOf, flattenContour, type Point } from '../../../shared-types/geometry.ts';
import type { CanvasModel } from '../../state/canvas-model.ts';
import { remembered } from '../scene.ts';
import { type Camera, fitBox, toScreen } from './camera.ts';
import { type Projection, projectionOf, sameLie } from './projection.ts';

/** The outline as a polygon, fine enough for picking and framing. */
export const outlineOf = remembered((outline: CanvasModel['document']['board']['outline']): Point[] =>
  flattenContour(outline, 0.05),
);

export const boardBox = (model: CanvasModel): Box => boxOf(outlineOf(model.document.board.outline));

const middleOf = (box: Box): Point => ({ x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 });

/**
 * The camera as the model wants it. Turned over or turned, the board point in the middle stays in the middle; a board
 * that was wholly in view is fitted anew, so that it stays so.
 */
export function followModel(camera: Camera, model: CanvasModel): Camera {
  if (camera.side === model.shownSide && camera.turnDeg === model.viewTurnDeg) return camera;
  const turned = { ...camera, side: model.shownSide, turnDeg: model.viewTurnDeg };
  return sees(camera, boardBox(model)) ? fitBox(turned, boardBox(model)) : turned;
}

/** The camera in a view of another size: the board point in the middle stays there; a board wholly in view stays so. */
export function followView(camera: Camera, model: CanvasModel, width: number, height: number): Camera {
  if (camera.width === width && camera.height === height) return camera;
  const resized = { ...camera, width, height };
  return sees(camera, boardBox(model)) ? fitBox(resized, boardBox(model)) : resized;
}

/** True when a box of the board lies wholly in view. */
export function sees(camera: Camera, box: Box): boolean {
  const corners = [
    { x: box.minX, y: box.minY },
    { x: box.maxX, y: box.minY },
    { x: box.maxX, y: box.maxY },
    { x: box.minX, y: box.maxY },
  ].map((corner) => toScreen(camera, corner));
  return corners.every(({ x, y }) => x >= -1 && y >= -1 && x <= camera.width + 1 && y <= camera.height + 1);
}

export function firstCamera(model: CanvasModel, width: number, height: number): Camera {
  const camera: Camera = {
    centre: { x: 0, y: 0 },
    zoom: 1,
    turnDeg: model.viewTurnDeg,
    side: model.shownSide,
    width,
    height,
  };
  return fitBox(camera, boardBox(model));
}

/**
 * The projection to draw with. While a zoom is under way the old one is stretched (`settled` false); it is made anew
 * when the zoom rests, or at once when the board was turned, turned over or exchanged, or the pixel ratio changed.
 */
export function nextProjection(
  current: Projection | null,
  camera: Camera,
  model: CanvasModel,
  ratio: number,
  settled: boolean,
): Projection {
  const origin = middleOf(boardBox(model));
  const fits =
    current !== null &&
    current.ratio === ratio &&
    current.origin.x === origin.x &&
    current.origin.y === origin.y &&
    sameLie(current, camera) &&
    (current.zoom === camera.zoom || !settled);
  return fits ? current : projectionOf(camera, origin, ratio);
}
