import type { Column, Meaning } from './columns.ts';
import type { Heading } from './heading.ts';
import { isComment, type NumberedLine } from './rows.ts';
import { cutColumns, DELIMITERS, findSpans, type Separator, splitBlanks, splitDelimited } from './split.ts';
import { looksLikeRefdes, readAngle, readLength, readSide } from './values.ts';

const SAMPLE_ROWS = 400;
const SHARE_NEEDED = 0.8;

/**
 * Columns of a table without headings, told by their content: references first, the first two neighbouring columns of
 * lengths are x and y, a further one of angles the rotation, one of side words the side, the texts left over value and package.
 */
export function guessColumns(lines: readonly NumberedLine[]): Heading | null {
  const body = lines.filter(({ text }) => !isComment(text) && text.length < 4000).slice(0, SAMPLE_ROWS);
  let best: Heading | null = null;
  for (const separator of [...DELIMITERS, 'blanks'] as Separator[]) {
    const rows = body.map(({ text }) => (separator === 'blanks' ? splitBlanks(text) : splitDelimited(text, separator)));
    const guess = guessFrom(rows, separator);
    if (guess && guess.score > (best?.score ?? 0)) best = guess;
  }
  return fixedGuesses(body).reduce((a, b) => (b.score > (a?.score ?? 0) ? b : a), best);
}

/** Fixed columns whose texts hold blanks: parted by two blanks or more, or where a blank runs through all lines. */
function fixedGuesses(body: readonly NumberedLine[]): Heading[] {
  const spans = findSpans(body.map(({ text }) => text));
  const wide = guessFrom(
    body.map(({ text }) => text.trim().split(/\s{2,}/)),
    'blanks',
  );
  const cut = guessFrom(
    body.map(({ text }) => cutColumns(text, spans)),
    'blanks',
  );
  return [...(wide ? [wide] : []), ...(cut ? [{ ...cut, spans }] : [])];
}

function guessFrom(all: readonly string[][], separator: Separator): Heading | null {
  const count = commonLength(all);
  const rows = all.filter((cells) => cells.length === count);
  if (count < 3 || rows.length < Math.max(1, all.length * 0.6)) return null;
  const share = (column: number, test: (cell: string) => boolean) =>
    rows.filter((cells) => test(cells[column])).length / rows.length;
  const is = (column: number, test: (cell: string) => boolean) => share(column, test) >= SHARE_NEEDED;
  const isNumber = (cell: string) => readLength(cell, cell.includes(',') && !cell.includes('.')) !== null;
  const indices = Array.from({ length: count }, (_, column) => column);
  const refdes = indices.find((column) => is(column, looksLikeRefdes));
  if (refdes === undefined) return null;
  const numeric = indices.filter((column) => column !== refdes && is(column, isNumber));
  const x = numeric.find((column) => numeric.includes(column + 1));
  if (x === undefined) return null;
  const meanings: (Meaning | null)[] = indices.map(() => null);
  meanings[refdes] = 'refdes';
  meanings[x] = 'x';
  meanings[x + 1] = 'y';
  const rotation = numeric.find((column) => column > x + 1 && is(column, isTurn));
  if (rotation !== undefined) meanings[rotation] = 'rotation';
  const side = indices.find((column) => meanings[column] === null && is(column, (cell) => readSide(cell) !== null));
  if (side !== undefined) meanings[side] = 'side';
  const texts = indices.filter((column) => meanings[column] === null && !numeric.includes(column));
  texts.slice(0, 2).forEach((column, index) => {
    meanings[column] = index === 0 && texts.length > 1 ? 'value' : 'package';
  });
  const columns = meanings.map((meaning, index): Column => ({ heading: `${index + 1}`, meaning, unit: null }));
  const score = columns.filter(({ meaning }) => meaning !== null).length + rows.length / (all.length + 1);
  return { index: -1, separator, columns, spans: [], score };
}

function isTurn(cell: string): boolean {
  const angle = readAngle(cell, cell.includes(',') && !cell.includes('.'));
  return angle !== null && Math.abs(angle) <= 360;
}

function commonLength(rows: readonly string[][]): number {
  const counts = new Map<number, number>();
  for (const { length } of rows) counts.set(length, (counts.get(length) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 0;
}
