import { boxOf, flattenContour, type Point } from '../../shared-types/geometry.ts';
import type { Modifiers, ToolView } from './tool.ts';

const ARROWS: Record<string, Point> = {
  ArrowRight: { x: 1, y: 0 },
  ArrowLeft: { x: -1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
};

/**
 * The way of an arrow key on the board, mm; with Shift ten steps. Arrows follow what the eye sees, also on the turned
 * bottom. Null: no arrow, or a chord that belongs to somebody else.
 */
export function boardStep(key: string, modifiers: Modifiers, stepMm: number, view: ToolView): Point | null {
  const arrow = ARROWS[key];
  if (!arrow || modifiers.ctrl || modifiers.alt) return null;
  const step = stepMm * (modifiers.shift ? 10 : 1);
  const origin = view.toBoard({ x: 0, y: 0 });
  const ahead = view.toBoard({ x: arrow.x * 100, y: arrow.y * 100 });
  const length = Math.hypot(ahead.x - origin.x, ahead.y - origin.y);
  return { x: ((ahead.x - origin.x) / length) * step, y: ((ahead.y - origin.y) / length) * step };
}

/** The middle of the outline, on whole millimetres: where a part starts that is placed by keys alone. */
export function boardMiddle(view: ToolView): Point {
  const box = boxOf(flattenContour(view.model().document.board.outline, 0.5));
  return { x: Math.round((box.minX + box.maxX) / 2), y: Math.round((box.minY + box.maxY) / 2) };
}
