import type { LogTable } from '../study.ts';
import type { TagOf } from '../tags.ts';

/** What a column's samples become when the run began at a second of the log: s from there, none from before. */
export function samplesFrom(
  { atS, celsius }: LogTable['columns'][number]['samples'],
  startS: number,
): LogTable['columns'][number]['samples'] {
  const rows = Array.from(atS.keys()).filter((row) => atS[row]! >= startS);
  return {
    atS: Float32Array.from(rows, (row) => atS[row]! - startS),
    celsius: Float32Array.from(rows, (row) => celsius[row]!),
  };
}

const numberIn = (name: string): string | null => /(\d+)(?!.*\d)/.exec(name.replace(/[([].*$/, ''))?.[1] ?? null;
const wordsIn = (name: string): string[] =>
  name
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter(Boolean);

/** A column that never left the room's warmth is the logger's own junction or an unused socket. */
const COLD_C = 45;

/**
 * Which watch point each column is likely of: one that it names, else one of its number, else the next in order.
 * null: none, or a column that stayed cold. A guess for the technician to check.
 */
export function guessColumns(
  columns: readonly Pick<LogTable['columns'][number], 'name' | 'samples'>[],
  points: readonly Pick<TagOf<'watchPoint'>, 'id' | 'name' | 'refdes'>[],
): (string | null)[] {
  const guess: (string | null)[] = columns.map(() => null);
  const warm = columns.map(({ samples }) => samples.celsius.some((celsius) => celsius > COLD_C));
  const take = (fits: (column: string, point: (typeof points)[number]) => boolean) => {
    for (const point of points) {
      if (guess.includes(point.id)) continue;
      const found = columns.findIndex(({ name }, index) => guess[index] === null && warm[index] && fits(name, point));
      if (found >= 0) guess[found] = point.id;
    }
  };
  take((column, point) => wordsIn(column).includes(point.name.toLowerCase()));
  take((column, point) => point.refdes !== null && wordsIn(column).includes(point.refdes.toLowerCase()));
  take((column, point) => numberIn(column) !== null && numberIn(column) === numberIn(point.name));
  take(() => true);
  return guess;
}

/** Seconds between the points at which rises are compared, and over which they are taken. */
const EVERY_S = 2;
const OVER_S = 10;

type Samples = { atS: ArrayLike<number>; celsius: ArrayLike<number> };

/** A curve at every EVERY_S seconds from 0 on, run straight between its samples; NaN outside them. */
function evenly({ atS, celsius }: Samples): number[] {
  const count = atS.length;
  const values: number[] = [];
  let row = 0;
  for (let s = 0; s <= (atS[count - 1] ?? -1); s += EVERY_S) {
    while (row < count - 1 && atS[row + 1]! <= s) row += 1;
    const [from, to] = [atS[row]!, atS[Math.min(row + 1, count - 1)]!];
    const share = to > from ? (s - from) / (to - from) : 0;
    values.push(
      s < from ? Number.NaN : celsius[row]! + share * (celsius[Math.min(row + 1, count - 1)]! - celsius[row]!),
    );
  }
  return values;
}

const rises = (values: readonly number[]): number[] =>
  values.map((value, index) => value - (values[index - OVER_S / EVERY_S] ?? Number.NaN));

/** How alike two rows of rises are, the second begun `shift` points later: the cosine between them. */
function likeness(read: readonly number[], said: readonly number[], shift: number): [both: number, own: number] {
  let both = 0;
  let own = 0;
  for (let index = 0; index < said.length; index++) {
    const a = read[index + shift];
    const b = said[index]!;
    if (a === undefined || Number.isNaN(a) || Number.isNaN(b)) continue;
    both += a * b;
    own += a * a;
  }
  return [both, own];
}

/**
 * Second of the log at which the run likely began: where its rises are most like those that the model says, whatever
 * their size. Each pair is a column and what the model says for its bead, both with their times in s. null: no pair.
 */
export function likelyStart(pairs: readonly { read: Samples; said: Samples }[]): number | null {
  const rows = pairs.map(({ read, said }) => ({ read: rises(evenly(read)), said: rises(evenly(said)) }));
  if (rows.length === 0) return null;
  const longest = Math.max(...rows.map(({ read }) => read.length));
  let best = { shift: 0, like: Number.NEGATIVE_INFINITY };
  // At least half of the run must lie in the log.
  const latest = longest - Math.min(...rows.map(({ said }) => said.length)) / 2;
  for (let shift = 0; shift <= latest; shift++) {
    let [both, own] = [0, 0];
    for (const { read, said } of rows) {
      const [a, b] = likeness(read, said, shift);
      both += a;
      own += b;
    }
    const like = own > 0 ? both / Math.sqrt(own) : Number.NEGATIVE_INFINITY;
    if (like > best.like) best = { shift, like };
  }
  return best.shift * EVERY_S;
}
