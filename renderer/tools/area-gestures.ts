import { type Point, type TurnedRectangle, turnVector } from '../../shared-types/geometry.ts';
import type { Grip } from '../canvas/picking/grips.ts';
import type { Modifiers } from './tool.ts';

/** Moving, sizing and turning a rework area by the pointer. Alt suspends snapping. Lengths in mm. */

const GRID_MM = 0.1;
const SMALLEST_MM = 0.5;
const TURN_STEP_DEG = 15;

const onGrid = (value: number, step: number): number => Math.round(value / step) * step;
/** Figures as a person would type them: no trailing dust from floating point. */
const tidy = (value: number): number => Math.round(value * 1000) / 1000;

/** The area moved by the way of the pointer; its centre snaps to `magnet` when within reach, else to tenths of a mm. */
export function movedArea(
  start: TurnedRectangle,
  from: Point,
  to: Point,
  magnet: { at: Point; reachMm: number } | null,
  modifiers: Modifiers,
): TurnedRectangle {
  const free = { x: start.x + to.x - from.x, y: start.y + to.y - from.y };
  // Shift keeps the move on one axis: the longer way wins.
  if (modifiers.shift) {
    if (Math.abs(to.x - from.x) >= Math.abs(to.y - from.y)) free.y = start.y;
    else free.x = start.x;
  }
  if (modifiers.alt) return { ...start, x: tidy(free.x), y: tidy(free.y) };
  if (magnet && Math.hypot(free.x - magnet.at.x, free.y - magnet.at.y) <= magnet.reachMm)
    return { ...start, x: magnet.at.x, y: magnet.at.y };
  return { ...start, x: tidy(onGrid(free.x, GRID_MM)), y: tidy(onGrid(free.y, GRID_MM)) };
}

/** The area with the held corner or edge at the pointer; the opposite one stays. Shift keeps the proportions. */
export function resizedArea(
  start: TurnedRectangle,
  grip: Grip & { kind: 'resize' },
  to: Point,
  modifiers: Modifiers,
): TurnedRectangle {
  const own = turnVector(to.x - start.x, to.y - start.y, -start.turnDeg);
  const step = modifiers.alt ? 0.001 : GRID_MM;
  const span = (e: number, whole: number, at: number) =>
    e === 0 ? whole : Math.max(SMALLEST_MM, tidy(onGrid(e * at + whole / 2, step)));
  let lengthMm = span(grip.ex, start.lengthMm, own.x);
  let widthMm = span(grip.ey, start.widthMm, own.y);
  if (modifiers.shift && grip.ex !== 0 && grip.ey !== 0) {
    const scale = Math.max(lengthMm / start.lengthMm, widthMm / start.widthMm);
    lengthMm = tidy(start.lengthMm * scale);
    widthMm = tidy(start.widthMm * scale);
  }
  const shift = turnVector(
    (grip.ex * (lengthMm - start.lengthMm)) / 2,
    (grip.ey * (widthMm - start.widthMm)) / 2,
    start.turnDeg,
  );
  return { ...start, x: tidy(start.x + shift.x), y: tidy(start.y + shift.y), lengthMm, widthMm };
}

/** The area turned by the way of the pointer round its centre, in steps of 15 degrees unless Alt is held. */
export function turnedArea(start: TurnedRectangle, from: Point, to: Point, modifiers: Modifiers): TurnedRectangle {
  const angle = (at: Point) => (Math.atan2(at.y - start.y, at.x - start.x) * 180) / Math.PI;
  const free = start.turnDeg + angle(to) - angle(from);
  const turn = modifiers.alt ? onGrid(free, 0.1) : onGrid(free, TURN_STEP_DEG);
  return { ...start, turnDeg: tidy(((((turn + 180) % 360) + 360) % 360) - 180) };
}

/** Direction from a point to the pointer, degrees counter-clockwise from 0 to 360, in steps of 15 unless Alt is held. */
export function headingTo(middle: Point, to: Point, modifiers: Modifiers): number {
  const free = (Math.atan2(to.y - middle.y, to.x - middle.x) * 180) / Math.PI;
  return tidy(((onGrid(free, modifiers.alt ? 0.1 : TURN_STEP_DEG) % 360) + 360) % 360);
}

/** The area between two board points, its edges along the screen's; null when it is no more than a line. */
export function drawnArea(
  from: Point,
  to: Point,
  screenTurnDeg: number,
  stepMm = GRID_MM,
  leastMm = SMALLEST_MM,
): TurnedRectangle | null {
  const own = turnVector(to.x - from.x, to.y - from.y, -screenTurnDeg);
  const lengthMm = tidy(onGrid(Math.abs(own.x), stepMm));
  const widthMm = tidy(onGrid(Math.abs(own.y), stepMm));
  if (lengthMm < leastMm || widthMm < leastMm) return null;
  return { x: tidy((from.x + to.x) / 2), y: tidy((from.y + to.y) / 2), lengthMm, widthMm, turnDeg: screenTurnDeg };
}

/** Direction of the screen's x axis on the board, degrees counter-clockwise, between -90 and 90. */
export function screenTurn(toBoard: (screen: Point) => Point): number {
  const origin = toBoard({ x: 0, y: 0 });
  const right = toBoard({ x: 100, y: 0 });
  const degrees = (Math.atan2(right.y - origin.y, right.x - origin.x) * 180) / Math.PI;
  const half = degrees > 90 ? degrees - 180 : degrees <= -90 ? degrees + 180 : degrees;
  return tidy(half) || 0;
}
