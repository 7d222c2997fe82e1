import type { Point } from '../../../shared-types/geometry.ts';
import type { ToolView } from '../tool.ts';

const REACH_PX = { mouse: 9, touch: 22 };
/** How far from a thing a press still means it, mm. */
export const reachOf = (event: { touch: boolean }, view: ToolView): number =>
  (event.touch ? REACH_PX.touch : REACH_PX.mouse) / view.zoom();

/** Arrow keys as ways along the screen. */
export const ARROWS: Record<string, Point> = {
  ArrowRight: { x: 1, y: 0 },
  ArrowLeft: { x: -1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
};

/** A step along the screen as a step on the board, mm. */
export function seenStep(arrow: Point, stepMm: number, view: ToolView): Point {
  const origin = view.toBoard({ x: 0, y: 0 });
  const ahead = view.toBoard({ x: arrow.x * 100, y: arrow.y * 100 });
  const length = Math.hypot(ahead.x - origin.x, ahead.y - origin.y);
  const clean = (value: number) => Math.round((value / length) * stepMm * 1e9) / 1e9;
  return { x: clean(ahead.x - origin.x), y: clean(ahead.y - origin.y) };
}
