import type { Point } from '../../shared-types/geometry.ts';
import type { Effect } from './tool.ts';

/** Moving the view in every tool: Space-drag, middle-drag, two fingers, wheel. Comes before the tool itself. */
export type Navigation = {
  space: boolean;
  /** Pointer that pans. */
  pan: { pointerId: number; last: Point } | null;
  fingers: ReadonlyMap<number, Point>;
};

export const RESTING: Navigation = { space: false, pan: null, fingers: new Map() };

export type NavigationEvent =
  | { type: 'down'; pointerId: number; button: number; touch: boolean; screen: Point }
  | { type: 'move'; pointerId: number; screen: Point }
  | { type: 'up'; pointerId: number }
  | { type: 'space'; held: boolean };

/** `taken`: the tool must not see the event; `abandon`: the tool loses the gesture it had begun. */
export type NavigationStep = { state: Navigation; effects: Effect[]; taken: boolean; abandon: boolean };

export function navigate(state: Navigation, event: NavigationEvent): NavigationStep {
  switch (event.type) {
    case 'space':
      return { state: { ...state, space: event.held }, effects: [], taken: true, abandon: false };
    case 'down':
      return pressed(state, event);
    case 'move':
      return moved(state, event.pointerId, event.screen);
    case 'up':
      return lifted(state, event.pointerId);
  }
}

const quiet = (state: Navigation, taken: boolean): NavigationStep => ({ state, effects: [], taken, abandon: false });

function pressed(state: Navigation, event: NavigationEvent & { type: 'down' }): NavigationStep {
  if (event.touch) {
    const fingers = new Map(state.fingers).set(event.pointerId, event.screen);
    const next = { ...state, fingers };
    return { state: next, effects: [], taken: fingers.size > 1, abandon: fingers.size === 2 };
  }
  const pans = event.button === 1 || (event.button === 0 && state.space);
  if (!pans) return quiet(state, state.pan !== null);
  return quiet({ ...state, pan: { pointerId: event.pointerId, last: event.screen } }, true);
}

function moved(state: Navigation, pointerId: number, screen: Point): NavigationStep {
  if (state.pan?.pointerId === pointerId) {
    const { last } = state.pan;
    const effect: Effect = { do: 'pan', dx: screen.x - last.x, dy: screen.y - last.y };
    return { state: { ...state, pan: { pointerId, last: screen } }, effects: [effect], taken: true, abandon: false };
  }
  if (!state.fingers.has(pointerId)) return quiet(state, false);
  const fingers = new Map(state.fingers).set(pointerId, screen);
  if (fingers.size < 2) return quiet({ ...state, fingers }, false);
  return { state: { ...state, fingers }, effects: pinch(state.fingers, fingers), taken: true, abandon: false };
}

/** A finger that stays after the other was lifted moves nothing more: its gesture ended with the pinch. */
function lifted(state: Navigation, pointerId: number): NavigationStep {
  if (state.pan?.pointerId === pointerId) return quiet({ ...state, pan: null }, true);
  if (!state.fingers.has(pointerId)) return quiet(state, false);
  const fingers = new Map(state.fingers);
  fingers.delete(pointerId);
  return quiet({ ...state, fingers }, state.fingers.size > 1);
}

/** Two fingers: the drawing follows their middle and stretches with their distance. */
function pinch(before: ReadonlyMap<number, Point>, after: ReadonlyMap<number, Point>): Effect[] {
  const [a, b] = [...before.values()];
  const [c, d] = [...after.values()];
  const middle = (p: Point, q: Point) => ({ x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 });
  const apart = (p: Point, q: Point) => Math.max(1, Math.hypot(p.x - q.x, p.y - q.y));
  const from = middle(a, b);
  const to = middle(c, d);
  return [
    { do: 'pan', dx: to.x - from.x, dy: to.y - from.y },
    { do: 'zoom', at: to, factor: apart(c, d) / apart(a, b) },
  ];
}

/** One turn of the wheel as the browser tells it; `mode` 0: deltas are pixels, 1: lines, 2: pages. */
export type WheelTurn = { screen: Point; dx: number; dy: number; mode: number; ctrl: boolean; shift: boolean };

const pixelsOf = (delta: number, mode: number): number => delta * (mode === 1 ? 33 : mode === 2 ? 400 : 1);

/** What a turn of the wheel does: 'zoom' zooms always; 'pan' pans, sideways with Shift, and zooms with Ctrl. */
export function wheelEffect(turn: WheelTurn, wheelDoes: 'zoom' | 'pan'): Effect {
  const { screen, dx, dy, mode, ctrl, shift } = turn;
  if (wheelDoes === 'zoom' || ctrl) return { do: 'zoom', at: screen, factor: wheelFactor(dy || dx, mode, ctrl) };
  const sideways = shift && dx === 0;
  // The drawing goes against the wheel, as a page does under its scroll bar; without a negative zero.
  return { do: 'pan', dx: 0 - pixelsOf(sideways ? dy : dx, mode), dy: 0 - pixelsOf(sideways ? 0 : dy, mode) };
}

/** Factor of one wheel event. Lines and pages are turned into pixels; a pinch on a touch pad comes as Ctrl+wheel in small steps. */
export function wheelFactor(delta: number, mode: number, pinching: boolean): number {
  const bounded = Math.max(-240, Math.min(240, pixelsOf(delta, mode)));
  return Math.exp(-bounded * (pinching && Math.abs(bounded) < 50 ? 0.01 : 0.0018));
}
