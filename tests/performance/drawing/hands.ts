import type { Page } from '@playwright/test';
import type { Point } from '../../../shared-types/geometry.ts';

/**
 * Seconds that the operations of a practised person take, without errors: the keystroke-level model of S. K. Card, T. P. Moran,
 * A. Newell, 'The keystroke-level model for user performance time with interactive systems', Communications of the ACM 23 (1980)
 * 396-410: a key 0.28 (who is no typist; 0.20 an average skilled one), a hand that changes between keyboard and mouse 0.4, a thought 1.35,
 * pointing 0.8 + 0.1 log2(distance / size + 0.5), between 0.8 and 1.5 (1.1 on average). A press or a release of the button 0.1: the
 * later form of the model (D. Kieras, 1993). Figures from memory.
 */
export const SECONDS = { key: 0.28, home: 0.4, think: 1.35, button: 0.1 };
export const pointingSeconds = (distancePx: number, sizePx: number): number =>
  Math.min(1.5, Math.max(0.8, 0.8 + 0.1 * Math.log2(distancePx / sizePx + 0.5)));

export type Tally = {
  keys: number;
  points: number;
  buttons: number;
  homes: number;
  thoughts: number;
  seconds: number;
  waitedMs: number;
};
const EMPTY: Tally = { keys: 0, points: 0, buttons: 0, homes: 0, thoughts: 0, seconds: 0, waitedMs: 0 };

export type Hands = ReturnType<typeof handsOn>;

/** Hands at keyboard and mouse of a page: they do, and count what they do under the work at hand. */
export function handsOn(page: Page) {
  const tallies = new Map<string, Tally>();
  let work = '';
  let on: 'keys' | 'mouse' = 'mouse';
  let at: Point = { x: 683, y: 384 };
  const add = (fields: Partial<Tally>) => {
    const tally = tallies.get(work) ?? { ...EMPTY };
    for (const [name, value] of Object.entries(fields)) tally[name as keyof Tally] += value;
    tallies.set(work, tally);
  };
  const home = (to: 'keys' | 'mouse') => {
    if (on !== to) add({ homes: 1, seconds: SECONDS.home });
    on = to;
  };
  /** Two frames later what was done is on the screen; the way there and back is counted too. */
  const seen = async () => {
    const began = performance.now();
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
    add({ waitedMs: performance.now() - began });
  };
  const point = async (to: Point, sizePx: number, through?: Point) => {
    home('mouse');
    add({ points: 1, seconds: pointingSeconds(Math.hypot(to.x - at.x, to.y - at.y), sizePx) });
    const mid = through ?? { x: (at.x + to.x) / 2, y: (at.y + to.y) / 2 };
    await page.mouse.move(mid.x, mid.y);
    await page.mouse.move(to.x, to.y);
    at = to;
  };
  const buttons = (count: number) => add({ buttons: count, seconds: count * SECONDS.button });
  return {
    tallies,
    begin(name: string) {
      work = name;
    },
    think: () => add({ thoughts: 1, seconds: SECONDS.think }),
    /** Time of something outside of the window, as counted by the model. */
    outside: (fields: Partial<Tally>) => add(fields),
    async press(key: string) {
      home('keys');
      const count = key.split('+').length;
      add({ keys: count, seconds: count * SECONDS.key });
      await page.keyboard.press(key);
      await seen();
    },
    async type(text: string) {
      home('keys');
      add({ keys: text.length, seconds: text.length * SECONDS.key });
      await page.keyboard.type(text);
      await seen();
    },
    async click(to: Point, sizePx: number) {
      await point(to, sizePx);
      buttons(2);
      await page.mouse.down();
      await page.mouse.up();
      await seen();
    },
    /** Another click where the pointer is. */
    async clickAgain() {
      buttons(2);
      await page.mouse.down();
      await page.mouse.up();
      await seen();
    },
    async drag(from: Point, to: Point, sizePx: number, fromSizePx = sizePx) {
      await point(from, fromSizePx);
      buttons(1);
      await page.mouse.down();
      await point(to, sizePx);
      buttons(1);
      await page.mouse.up();
      await seen();
    },
    /** Where the pointer was left by something that is not counted. */
    leftAt(there: Point) {
      at = there;
    },
  };
}

export function totalOf(tallies: Iterable<Tally>): Tally {
  const total = { ...EMPTY };
  for (const tally of tallies) for (const name of Object.keys(total) as (keyof Tally)[]) total[name] += tally[name];
  return total;
}
