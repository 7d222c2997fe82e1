import type { Column } from './columns.ts';
import type { Heading } from './heading.ts';
import { isComment, type NumberedLine } from './rows.ts';
import { shapeOf } from './shape.ts';
import { DELIMITERS, type Separator, splitBlanks, splitDelimited } from './split.ts';
import type { PlacementTable } from './types.ts';
import { readLength } from './values.ts';

const LEAST_ROWS = 2;
const LEAST_COLUMNS = 3;
const MOST_COLUMNS = 40;
const LINES_SEARCHED = 400;
const SAMPLE_ROWS = 6;

/**
 * The columns of a text whose lines are alike, though nothing says what they mean; null where they are not. A first line
 * without a number is taken for the headings.
 */
export function anyColumns(lines: readonly NumberedLine[]): Heading | null {
  const body = lines
    .flatMap((line, index) => (isComment(line.text) ? [] : [{ ...line, index }]))
    .slice(0, LINES_SEARCHED);
  let best: { separator: Separator; count: number; rows: number } | null = null;
  for (const separator of [...DELIMITERS, 'blanks'] as Separator[]) {
    const counts = new Map<number, number>();
    for (const { text } of body) {
      const { length } = cellsOf(text, separator);
      if (length >= LEAST_COLUMNS && length <= MOST_COLUMNS) counts.set(length, (counts.get(length) ?? 0) + 1);
    }
    for (const [count, rows] of counts)
      if (rows >= Math.max(LEAST_ROWS, body.length * 0.6) && rows * count > (best?.rows ?? 0) * (best?.count ?? 0))
        best = { separator, count, rows };
  }
  if (best === null) return null;
  const { separator, count } = best;
  const first = body.find(({ text }) => cellsOf(text, separator).length === count);
  const cells = first ? cellsOf(first.text, separator) : [];
  const headed = cells.every((cell) => cell !== '' && readLength(cell, cell.includes(',')) === null);
  const columns = cells.map(
    (cell, at): Column => ({ heading: headed ? cell : `${at + 1}`, meaning: null, unit: null }),
  );
  return { index: headed && first ? first.index : -1, separator, columns, spans: [], score: 1 };
}

const cellsOf = (text: string, separator: Separator): string[] =>
  separator === 'blanks' ? splitBlanks(text) : splitDelimited(text, separator);

/** Such a text as a table without a single placement, for its columns to be assigned. */
export function readAnyTable(text: string, file: string, encoding: string): PlacementTable | null {
  const lines = text.split(/\r\n|\n|\r/).map((line, index): NumberedLine => ({ text: line, line: index + 1 }));
  const filled = lines.filter((line) => line.text.trim() !== '');
  const heading = anyColumns(filled);
  if (heading === null) return null;
  const { separator, columns, index } = heading;
  const rows = filled.slice(index + 1).map((line) => cellsOf(line.text, separator));
  return {
    ...{ file, encoding, encodingGuessed: false, separator, columns, columnsChosen: false },
    headingLine: index < 0 ? null : filled[index].line,
    shape: shapeOf(heading),
    sample: rows.slice(0, SAMPLE_ROWS).map((cells) => cells.map((cell) => cell.slice(0, 60))),
    ...{ mmPerUnit: null, unit: null, unitFrom: 'unknown', unitText: '', decimalComma: false, sideFrom: 'assumed' },
    ...{ sideWords: [], placements: [], faults: [] },
  };
}
