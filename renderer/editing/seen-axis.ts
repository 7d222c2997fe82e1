import { type Side, turnVector } from '../../shared-types/geometry.ts';
import type { Axis, Edge } from './arrange.ts';

/** An edge as the eye has it; 'upright': middles one above the other, 'level': side by side. */
export type SeenWay = 'left' | 'right' | 'up' | 'down' | 'upright' | 'level';

const WAYS: Record<SeenWay, { x: number; y: number; middle?: true }> = {
  left: { x: -1, y: 0 },
  right: { x: 1, y: 0 },
  up: { x: 0, y: 1 },
  down: { x: 0, y: -1 },
  upright: { x: 1, y: 0, middle: true },
  level: { x: 0, y: 1, middle: true },
};

/** The axis and edge of the board that a way on screen stands for, the view turned and, on the bottom, mirrored. */
export function seenAxis(
  way: SeenWay,
  { shownSide, viewTurnDeg }: { shownSide: Side; viewTurnDeg: number },
): {
  axis: Axis;
  edge: Edge;
} {
  const { x, y, middle } = WAYS[way];
  const turned = turnVector(x, y, -viewTurnDeg);
  const onBoard = { x: shownSide === 'bottom' ? -turned.x : turned.x, y: turned.y };
  const axis: Axis = Math.abs(onBoard.x) >= Math.abs(onBoard.y) ? 'x' : 'y';
  if (middle) return { axis, edge: 'middle' };
  return { axis, edge: onBoard[axis] < 0 ? 'least' : 'most' };
}
