import type { Box, Point, Side } from '../../../shared-types/geometry.ts';
import { degreesToRadians } from '../../../shared-types/units.ts';

/** Where the eye is: the board point in the middle of the view, and how the board lies under it. */
export type Camera = {
  /** Board point in the middle of the view, mm. */
  centre: Point;
  /** CSS pixels per mm. */
  zoom: number;
  /** Degrees counter-clockwise as seen, on top of mirroring the bottom side. */
  turnDeg: number;
  side: Side;
  /** Size of the view, CSS pixels. */
  width: number;
  height: number;
};

/** Room kept free round a fitted box, CSS pixels: words above, legend and scale bar below. */
export type Margins = { left: number; right: number; top: number; bottom: number };
const FIT_MARGINS: Margins = { left: 32, right: 32, top: 44, bottom: 96 };

const SMALLEST_ZOOM = 0.2;
const LARGEST_ZOOM = 240;

/** Linear part of the way from board (mm, y up) to screen (px, y down): x' = a x + c y, y' = b x + d y. */
export type Linear = { a: number; b: number; c: number; d: number };

/** Mirror of the bottom side first, then the turn as seen, then the zoom with y pointing down. */
export function linearOf(camera: Pick<Camera, 'zoom' | 'turnDeg' | 'side'>): Linear {
  const angle = degreesToRadians(camera.turnDeg);
  const mirror = camera.side === 'bottom' ? -1 : 1;
  const cosine = cleaned(Math.cos(angle)) * camera.zoom;
  const sine = cleaned(Math.sin(angle)) * camera.zoom;
  return { a: mirror * cosine, b: -mirror * sine, c: -sine, d: -cosine };
}

/** Quarter turns come out exact, so that upright edges stay upright. */
const cleaned = (value: number): number => (Math.abs(value) < 1e-12 ? 0 : value);

/** Board point (mm) to CSS pixels from the upper left of the view. */
export function toScreen(camera: Camera, at: Point): Point {
  const { a, b, c, d } = linearOf(camera);
  const x = at.x - camera.centre.x;
  const y = at.y - camera.centre.y;
  return { x: camera.width / 2 + a * x + c * y, y: camera.height / 2 + b * x + d * y };
}

/** CSS pixels from the upper left of the view to a board point (mm). */
export function toBoard(camera: Camera, screen: Point): Point {
  const { a, b, c, d } = linearOf(camera);
  const x = screen.x - camera.width / 2;
  const y = screen.y - camera.height / 2;
  const determinant = a * d - b * c;
  return {
    x: camera.centre.x + (d * x - c * y) / determinant,
    y: camera.centre.y + (-b * x + a * y) / determinant,
  };
}

/** Zooms so that the board point under `screen` stays there. */
export function zoomAt(camera: Camera, screen: Point, factor: number): Camera {
  const held = toBoard(camera, screen);
  const zoomed = { ...camera, zoom: clampZoom(camera.zoom * factor) };
  const moved = toScreen(zoomed, held);
  return panBy(zoomed, screen.x - moved.x, screen.y - moved.y);
}

/** Moves the drawing by screen pixels. */
export function panBy(camera: Camera, dx: number, dy: number): Camera {
  const centre = toBoard(camera, { x: camera.width / 2 - dx, y: camera.height / 2 - dy });
  return { ...camera, centre };
}

export const clampZoom = (zoom: number): number => Math.min(LARGEST_ZOOM, Math.max(SMALLEST_ZOOM, zoom));

/** Puts a box of the board (mm) into the middle of the free part of the view, as large as it goes. */
export function fitBox(camera: Camera, box: Box, margins: Margins = FIT_MARGINS): Camera {
  const unit = linearOf({ ...camera, zoom: 1 });
  const spanX = Math.max(0.1, box.maxX - box.minX);
  const spanY = Math.max(0.1, box.maxY - box.minY);
  const seenX = Math.abs(unit.a) * spanX + Math.abs(unit.c) * spanY;
  const seenY = Math.abs(unit.b) * spanX + Math.abs(unit.d) * spanY;
  const freeX = Math.max(40, camera.width - margins.left - margins.right);
  const freeY = Math.max(40, camera.height - margins.top - margins.bottom);
  const centred = {
    ...camera,
    zoom: clampZoom(Math.min(freeX / seenX, freeY / seenY)),
    centre: { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 },
  };
  return panBy(centred, (margins.left - margins.right) / 2, (margins.top - margins.bottom) / 2);
}

/** Box of the board (mm) that holds everything in view, widened by screen pixels. */
export function visibleBox(camera: Camera, marginPx = 0): Box {
  const corners = [
    { x: -marginPx, y: -marginPx },
    { x: camera.width + marginPx, y: -marginPx },
    { x: camera.width + marginPx, y: camera.height + marginPx },
    { x: -marginPx, y: camera.height + marginPx },
  ].map((corner) => toBoard(camera, corner));
  const xs = corners.map((corner) => corner.x);
  const ys = corners.map((corner) => corner.y);
  return { minX: Math.min(...xs), minY: Math.min(...ys), maxX: Math.max(...xs), maxY: Math.max(...ys) };
}
