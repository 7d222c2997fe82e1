import { type Box, boxOf, type Point, type Side, turnVector } from '../../../shared-types/geometry.ts';
import type { PageBox, PagePoint } from '../paper.ts';
import { POINTS_PER_MM } from '../paper.ts';

/** How a stretch of the board lies on the page. */
export type View = {
  side: Side;
  turnDeg: number;
  /** Page millimetres for one board millimetre. */
  scale: number;
  frame: PageBox;
  toPage(point: Point): PagePoint;
};

/** Board to view axes: the bottom is mirrored first (seen from below), then both sides turn as the board is clamped. */
export const turned = (point: Point, side: Side, turnDeg: number): Point =>
  turnVector(side === 'bottom' ? -point.x : point.x, point.y, turnDeg);

/** Box of board points in view axes, mm. */
export const turnedBox = (points: readonly Point[], side: Side, turnDeg: number): Box =>
  boxOf(points.map((point) => turned(point, side, turnDeg)));

/** A view that shows `middle` (view axes, mm) in the middle of the frame. */
export function createView(side: Side, turnDeg: number, scale: number, frame: PageBox, middle: Point): View {
  const perMm = scale * POINTS_PER_MM;
  const centre = { x: (frame.x0 + frame.x1) / 2, y: (frame.y0 + frame.y1) / 2 };
  return {
    side,
    turnDeg,
    scale,
    frame,
    toPage(point) {
      const at = turned(point, side, turnDeg);
      return { x: centre.x + (at.x - middle.x) * perMm, y: centre.y - (at.y - middle.y) * perMm };
    },
  };
}

/** The largest of the given scales at which a stretch of `widthMm` x `heightMm` fits the space; the smallest if none does. */
export function fittingScale(
  scales: readonly number[],
  content: { widthMm: number; heightMm: number },
  space: { width: number; height: number },
): number {
  const fits = scales.find(
    (scale) =>
      content.widthMm * scale * POINTS_PER_MM <= space.width &&
      content.heightMm * scale * POINTS_PER_MM <= space.height,
  );
  return fits ?? scales[scales.length - 1];
}
