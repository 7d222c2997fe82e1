import type { Point, Side } from '../../../shared-types/geometry.ts';
import { type Camera, type Linear, linearOf, toScreen } from './camera.ts';

/**
 * Board to scene: pixels at one zoom, turn and side, measured from a fixed board point. Panning leaves it as it is,
 * so that what was drawn with it stays drawn; a new zoom, turn or side makes a new one.
 */
export type Projection = Linear & {
  /** Board point at the scene's origin, mm. */
  origin: Point;
  zoom: number;
  turnDeg: number;
  side: Side;
  /** Device pixels per CSS pixel. */
  ratio: number;
};

export function projectionOf(camera: Camera, origin: Point, ratio: number): Projection {
  const { zoom, turnDeg, side } = camera;
  return { ...linearOf(camera), origin, zoom, turnDeg, side, ratio };
}

/** Board point (mm) to scene pixels. */
export function project(projection: Projection, at: Point): Point {
  const x = at.x - projection.origin.x;
  const y = at.y - projection.origin.y;
  return { x: projection.a * x + projection.c * y, y: projection.b * x + projection.d * y };
}

/** Points as a flat list x, y, x, y in scene pixels. */
export function projectAll(projection: Projection, points: readonly Point[]): number[] {
  const flat: number[] = [];
  for (const point of points) {
    const { x, y } = project(projection, point);
    flat.push(x, y);
  }
  return flat;
}

/** Where the scene's container stands and how much it is stretched while a zoom has not been redrawn yet. */
export function scenePlacement(projection: Projection, camera: Camera): { x: number; y: number; scale: number } {
  const at = toScreen(camera, projection.origin);
  const whole = (value: number) => Math.round(value * projection.ratio) / projection.ratio;
  return { x: whole(at.x), y: whole(at.y), scale: camera.zoom / projection.zoom };
}

/** True when the drawing only has to be moved or stretched, not turned over or turned. */
export function sameLie(projection: Projection, camera: Camera): boolean {
  return projection.side === camera.side && projection.turnDeg === camera.turnDeg;
}

/** A coordinate on which a stroke of this width (CSS px) covers whole device pixels. */
export function crisp(value: number, strokePx: number, ratio: number): number {
  const odd = Math.max(1, Math.round(strokePx * ratio)) % 2 === 1;
  return odd ? (Math.floor(value * ratio) + 0.5) / ratio : Math.round(value * ratio) / ratio;
}
