import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { listen } from '../../../../renderer/canvas/input.ts';
import type { ToolHost } from '../../../../renderer/tools/tool-host.ts';

/** The canvas element as far as the listeners use it, and what comes of a finger on it. */
function surface() {
  const element = Object.assign(new EventTarget(), {
    getBoundingClientRect: () => ({ left: 100, top: 50 }),
    focus: () => undefined,
    contains: () => true,
  });
  const menus: { x: number; y: number }[] = [];
  const lost: number[] = [];
  const tools = {
    ...{ pointerDown: () => {}, pointerMove: () => {}, pointerUp: () => {}, busy: () => true, cursor: () => '' },
    pointerLost: (id: number) => lost.push(id),
  } as unknown as ToolHost;
  listen(element as unknown as HTMLElement, {
    tools,
    toBoard: (at) => at,
    hovered: () => undefined,
    settled: () => undefined,
    openMenu: (screen) => menus.push(screen),
  });
  const finger = (name: string, x: number, y: number, fields: object = {}) =>
    element.dispatchEvent(
      Object.assign(new Event(name), {
        ...{ pointerType: 'touch', pointerId: 1, isPrimary: true, button: 0, clientX: x, clientY: y },
        ...fields,
      }),
    );
  return { finger, menus, lost };
}

beforeEach(() => {
  vi.useFakeTimers();
  const page = Object.assign(new EventTarget(), { setTimeout: (run: () => void, ms: number) => setTimeout(run, ms) });
  vi.stubGlobal('window', page);
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

test('a finger that rests opens the menu where it is, and what it began is taken back', () => {
  const { finger, menus, lost } = surface();
  finger('pointerdown', 300, 250);
  finger('pointermove', 304, 252);
  vi.advanceTimersByTime(1000);
  expect(menus).toEqual([{ x: 200, y: 200 }]);
  expect(lost).toEqual([1]);
});

test.each<[string, (finger: ReturnType<typeof surface>['finger']) => void]>([
  ['is lifted', (finger) => finger('pointerup', 300, 250)],
  ['moves on', (finger) => finger('pointermove', 330, 250)],
  ['gets a second one beside it', (finger) => finger('pointerdown', 400, 250, { pointerId: 2, isPrimary: false })],
  ['is taken over by the system', (finger) => finger('pointercancel', 300, 250)],
])('a finger that %s opens none', (_how, then) => {
  const { finger, menus, lost } = surface();
  finger('pointerdown', 300, 250);
  vi.advanceTimersByTime(300);
  then(finger);
  const before = lost.length;
  vi.advanceTimersByTime(2000);
  expect(menus).toEqual([]);
  expect(lost.length).toBe(before);
});

test('a mouse that rests opens none: it has its right button', () => {
  const { finger, menus } = surface();
  finger('pointerdown', 300, 250, { pointerType: 'mouse' });
  vi.advanceTimersByTime(2000);
  expect(menus).toEqual([]);
});
