import type { Point } from '../../shared-types/geometry.ts';
import type { Modifiers } from '../tools/tool.ts';
import type { PointerInput, ToolHost } from '../tools/tool-host.ts';

/** What the DOM's events are turned into. */
export type InputTarget = {
  tools: ToolHost;
  toBoard(screen: Point): Point;
  /** Pointer over the canvas without a gesture, or gone (null). */
  hovered(screen: Point | null, touch: boolean): void;
  openMenu(screen: Point, page: Point): void;
  /** After every event: the cursor may have changed. */
  settled(screen: Point | null): void;
};

const modifiersOf = (event: MouseEvent | KeyboardEvent): Modifiers => ({
  shift: event.shiftKey,
  ctrl: event.ctrlKey || event.metaKey,
  alt: event.altKey,
});

/** Listens on the canvas element; returns what takes the listeners away. */
export function listen(surface: HTMLElement, target: InputTarget): () => void {
  const off = new AbortController();
  const pointer = { over: null as Point | null };
  pointerEvents(surface, target, pointer, off.signal);
  longPress(surface, target, off.signal);
  wheelEvents(surface, target, off.signal);
  keyEvents(surface, target, pointer, off.signal);
  return () => off.abort();
}

function screenOf(surface: HTMLElement, event: MouseEvent): Point {
  const box = surface.getBoundingClientRect();
  return { x: event.clientX - box.left, y: event.clientY - box.top };
}

function pointerEvents(
  surface: HTMLElement,
  target: InputTarget,
  pointer: { over: Point | null },
  signal: AbortSignal,
) {
  const input = (event: PointerEvent): PointerInput => {
    const screen = screenOf(surface, event);
    const touch = event.pointerType === 'touch';
    const { pointerId, button } = event;
    return { pointerId, button, screen, board: target.toBoard(screen), modifiers: modifiersOf(event), touch };
  };
  const on = (name: 'pointerdown' | 'pointermove' | 'pointerup', handle: (event: PointerInput) => void) =>
    surface.addEventListener(
      name,
      (event) => {
        const facts = input(event);
        pointer.over = facts.screen;
        handle(facts);
        target.settled(facts.screen);
      },
      { signal },
    );
  surface.addEventListener(
    'pointerdown',
    (event) => {
      surface.focus({ preventScroll: true });
      // A made-up pointer (a test, a remote desk) cannot be captured; the gesture works without.
      if (event.isTrusted) surface.setPointerCapture(event.pointerId);
      if (event.button === 1) event.preventDefault();
    },
    { signal },
  );
  on('pointerdown', (facts) => target.tools.pointerDown(facts));
  on('pointermove', (facts) => {
    target.tools.pointerMove(facts);
    target.hovered(target.tools.busy() ? null : facts.screen, facts.touch);
  });
  on('pointerup', (facts) => target.tools.pointerUp(facts));
  surface.addEventListener('pointercancel', (event) => target.tools.pointerLost(event.pointerId), { signal });
  surface.addEventListener(
    'pointerleave',
    () => {
      pointer.over = null;
      target.hovered(null, false);
    },
    { signal },
  );
  surface.addEventListener(
    'contextmenu',
    (event) => {
      event.preventDefault();
      target.openMenu(screenOf(surface, event), { x: event.clientX, y: event.clientY });
    },
    { signal },
  );
}

/** A finger that rests for so long (ms) within so few pixels asks for the menu, as the right button does. */
const LONG_PRESS_MS = 550;
const REST_PX = 10;

/** Not every browser makes a menu's event of a long press, and none while a gesture may still be under way. */
function longPress(surface: HTMLElement, target: InputTarget, signal: AbortSignal) {
  let timer = 0;
  let down: PointerEvent | null = null;
  const end = () => {
    clearTimeout(timer);
    down = null;
  };
  const press = () => {
    if (!down) return;
    const event = down;
    end();
    // What the finger began is taken back: it neither moves a part nor draws.
    target.tools.pointerLost(event.pointerId);
    target.openMenu(screenOf(surface, event), { x: event.clientX, y: event.clientY });
  };
  surface.addEventListener(
    'pointerdown',
    (event) => {
      const second = down !== null;
      end();
      if (event.pointerType !== 'touch' || !event.isPrimary || second) return;
      down = event;
      timer = window.setTimeout(press, LONG_PRESS_MS);
    },
    { signal },
  );
  surface.addEventListener(
    'pointermove',
    (event) => {
      const from = down;
      if (from && Math.hypot(event.clientX - from.clientX, event.clientY - from.clientY) > REST_PX) end();
    },
    { signal },
  );
  for (const name of ['pointerup', 'pointercancel'] as const) surface.addEventListener(name, end, { signal });
  signal.addEventListener('abort', end);
}

function wheelEvents(surface: HTMLElement, target: InputTarget, signal: AbortSignal) {
  surface.addEventListener(
    'wheel',
    (event) => {
      event.preventDefault();
      const { shift, ctrl } = modifiersOf(event);
      const { deltaX: dx, deltaY: dy, deltaMode: mode } = event;
      const screen = screenOf(surface, event);
      target.tools.wheel({ screen, dx, dy, mode, ctrl, shift });
      // The board has moved under a pointer that rests.
      if (!target.tools.busy()) target.hovered(screen, false);
    },
    { signal, passive: false },
  );
}

/** True when a key press belongs to a field, a list or a button elsewhere in the window. */
function typedElsewhere(surface: HTMLElement): boolean {
  const active = document.activeElement;
  return active !== null && active !== document.body && !surface.contains(active);
}

function keyEvents(surface: HTMLElement, target: InputTarget, pointer: { over: Point | null }, signal: AbortSignal) {
  const used = (event: KeyboardEvent) => {
    event.preventDefault();
    event.stopPropagation();
    target.settled(pointer.over);
  };
  window.addEventListener(
    'keydown',
    (event) => {
      // Space pans while the pointer is over the drawing, Escape ends a gesture, wherever the focus was left.
      const space = event.key === ' ' && pointer.over !== null && !typedElsewhere(surface);
      if (space) {
        target.tools.space(true);
        used(event);
      } else if (event.key === 'Escape' && target.tools.busy() && target.tools.keyDown(event.key, modifiersOf(event)))
        used(event);
    },
    { signal, capture: true },
  );
  window.addEventListener(
    'keyup',
    (event) => {
      if (event.key !== ' ') return;
      target.tools.space(false);
      target.settled(pointer.over);
    },
    { signal, capture: true },
  );
  window.addEventListener('blur', () => target.tools.space(false), { signal });
  surface.addEventListener(
    'keydown',
    (event) => {
      if (target.tools.keyDown(event.key, modifiersOf(event))) used(event);
    },
    { signal },
  );
}
