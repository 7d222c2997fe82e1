import type { Part } from '../../../shared-types/board.ts';
import type { Point, Side } from '../../../shared-types/geometry.ts';
import { readNumbered } from '../../../shared-types/rules/refdes.ts';
import { looksTheSameTurned, typedFor } from './bench-boards.ts';
import type { Space } from './camera.ts';
import { SECONDS } from './hands.ts';
import { markOf, middleOf, missOf, type Technician } from './technician.ts';

/** What stands at hand in the window: who looks at the drawing sees it. */
type AtHand = { typed: string; next: string; turn: number; pin1: Map<string, Point>; side: Side };

/** Every part of one side, one package after the other, where its picture lies. */
export async function drawParts(at: Technician, side: Side, hand: AtHand): Promise<void> {
  const { hands, bench } = at;
  hands.begin(`parts, ${side}`);
  hand.side = side;
  const { toPage, pxPerMm } = await at.lie();
  const picture = await at.picture(side);
  const onPage = (place: Space) => toPage(picture(place));
  for (const group of groupsOf(bench.truth.parts.filter((part) => part.side === side)))
    for (let index = 0; index < group.length; index++) {
      const row = rowFrom(group, index);
      await choose(at, group[index], hand);
      await placeOne(at, group[index], hand, onPage, pxPerMm);
      if (row === null) continue;
      hands.think();
      await placeOne(at, group[index + 1], hand, onPage, pxPerMm);
      await goOnTo(at, group[row], hand, onPage);
      index = row;
    }
  await bench.shot(`06-parts-${side}`);
}

export const emptyHand = (): AtHand => ({ typed: '', next: '', turn: 0, pin1: new Map(), side: 'top' });

/** Parts of the same package and letters, in the order of their numbers. */
function groupsOf(parts: readonly Part[]): Part[][] {
  const groups = new Map<string, Part[]>();
  for (const part of parts) {
    const name = `${readNumbered(part.refdes)?.prefix} ${typedFor(part)}`;
    groups.set(name, [...(groups.get(name) ?? []), part]);
  }
  return [...groups.values()];
}

const follows = (part: Part | undefined, before: Part): boolean =>
  part !== undefined && readNumbered(part.refdes)?.number === (readNumbered(before.refdes)?.number ?? 0) + 1;

/** Index of the last part of an even, straight row of at least four that begins here; null: none does. */
function rowFrom(group: readonly Part[], first: number): number | null {
  const [one, two] = [group[first], group[first + 1]];
  if (!two || !follows(two, one)) return null;
  const step = { x: two.x - one.x, y: two.y - one.y };
  if (Math.abs(step.x) > 0.01 && Math.abs(step.y) > 0.01) return null;
  let last = first + 1;
  for (let index = last + 1; index < group.length; index++) {
    const [before, part] = [group[index - 1], group[index]];
    const even = Math.hypot(part.x - before.x - step.x, part.y - before.y - step.y) < 0.1 * Math.hypot(step.x, step.y);
    if (!follows(part, before) || !even || part.turn !== one.turn || part.fitted !== one.fitted) break;
    last = index;
  }
  return last >= first + 3 ? last : null;
}

/** Package and designator as they are read in the picture. */
async function choose({ hands, page, press }: Technician, part: Part, hand: AtHand): Promise<void> {
  const typed = `${readNumbered(part.refdes)?.prefix} ${typedFor(part)}`;
  hands.think();
  const first = hand.typed === '';
  if (typed !== hand.typed) {
    await hands.press('a');
    await hands.type(`${part.refdes.toLowerCase()} ${typedFor(part)}`);
    await hands.press('Enter');
    // A skew is not kept for the next package.
    hand.turn = (90 * Math.round(hand.turn / 90)) % 360;
  } else if (part.refdes !== hand.next) await hands.type(String(readNumbered(part.refdes)?.number));
  hand.typed = typed;
  if (first && part.coated) await press(page.getByRole('checkbox', { name: 'Coated board' }));
}

/** Turned by keys and clicked, or pulled towards pin 1 or along. */
async function placeOne(
  { hands, page, aimed }: Technician,
  part: Part,
  hand: AtHand,
  onPage: (at: Space) => Point,
  pxPerMm: number,
): Promise<void> {
  if (!part.fitted) await hands.press('g');
  const twoEnds = (part.pinCount ?? 0) === 2;
  if (!twoEnds) await turnByKeys(hands, part, hand);
  const middle = aimed(onPage(middleOf(part)), missOf(part));
  const pull = twoEnds ? pullAlong(part, hand, PULL_PX / pxPerMm) : pullToMark(part, hand);
  const skew = pull !== null && part.turn % 90 !== 0;
  if (skew) await held(page, hands, 'Alt', () => hands.drag(middle, onPage(pull), 8, 4));
  else if (pull) await hands.drag(middle, onPage(pull), Math.max(8, (part.package.widthMm * pxPerMm) / 2), 4);
  else await hands.click(middle, 4);
  hand.next = `${readNumbered(part.refdes)?.prefix}${(readNumbered(part.refdes)?.number ?? 0) + 1}`;
  if (!part.fitted) await hands.press('g');
}

async function turnByKeys(hands: Technician['hands'], part: Part, hand: AtHand): Promise<void> {
  const period = looksTheSameTurned(part) ? 180 : 360;
  const off = (((part.turn - hand.turn) % period) + period) % period;
  const way = off > 180 ? off - 360 : off;
  const key = way > 0 === (hand.side === 'top') ? ',' : '.';
  const quarters = Math.floor(Math.abs(way) / 90);
  for (let turn = 0; turn < quarters; turn++) await hands.press(key);
  // Between the quarters steps of 15 degrees.
  for (let rest = Math.abs(way) - 90 * quarters; rest > 7; rest -= 15) await hands.press(`Alt+${key}`);
  hand.turn = part.turn;
}

/** A short pull. */
const PULL_PX = 20;

/** Where a part of two ends is pulled to; null: it lies right already. */
function pullAlong(part: Part, hand: AtHand, leastMm: number): Space | null {
  const mark = markOf(part);
  const lies = mark ? hand.turn === part.turn && hand.pin1.has(typedFor(part)) : (hand.turn - part.turn) % 180 === 0;
  if (!lies) hand.turn = part.class.startsWith('chip-') ? part.turn % 180 : part.turn;
  if (mark) hand.pin1.set(typedFor(part), part.pin1 as Point);
  if (lies) return null;
  const reach = -Math.max(leastMm, part.package.lengthMm / 2);
  const radians = (part.turn * Math.PI) / 180;
  return { x: part.x + reach * Math.cos(radians), y: part.y + reach * Math.sin(radians), z: 0 };
}

/** Where pin 1 is pulled to; null: it is marked there already, or there is none. */
function pullToMark(part: Part, hand: AtHand): Space | null {
  const before = hand.pin1.get(typedFor(part));
  const same = before && part.pin1 && Math.hypot(before.x - part.pin1.x, before.y - part.pin1.y) < 0.01;
  if (!part.pin1 || same) return null;
  hand.pin1.set(typedFor(part), part.pin1);
  return markOf(part);
}

async function goOnTo({ hands, page, aimed }: Technician, last: Part, hand: AtHand, onPage: (at: Space) => Point) {
  hands.think();
  await held(page, hands, 'Shift', () => hands.click(aimed(onPage(middleOf(last)), missOf(last)), 4));
  hand.next = `${readNumbered(last.refdes)?.prefix}${(readNumbered(last.refdes)?.number ?? 0) + 1}`;
}

/** With a key held by the other hand. */
async function held(page: Technician['page'], hands: Technician['hands'], key: string, work: () => Promise<void>) {
  hands.outside({ keys: 1, seconds: SECONDS.key });
  await page.keyboard.down(key);
  await work();
  await page.keyboard.up(key);
}
