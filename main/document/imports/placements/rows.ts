import type { Column } from './columns.ts';
import type { Heading } from './heading.ts';
import {
  cutColumns,
  findSpans,
  hasOpenQuote,
  type Separator,
  type Span,
  spansByHeading,
  splitBlanks,
  splitDelimited,
  unquote,
} from './split.ts';

export interface Row {
  readonly cells: readonly string[];
  /** Line number in the file, from 1. */
  readonly line: number;
  readonly text: string;
}

export interface RowSet {
  readonly separator: Separator;
  readonly rows: readonly Row[];
}

export interface NumberedLine {
  readonly text: string;
  readonly line: number;
}

/** Comment lines and rulers below the heading; they hold no part. */
export function isComment(text: string): boolean {
  return /^\s*(#|\/\/)/.test(text) || /^[\s\-=_+*"',;|!]*$/.test(text);
}

/** Rows of a table whose heading was found. `scoreOf` says how well cells make a row. */
export function readRows(lines: readonly NumberedLine[], heading: Heading, scoreOf: Fit): RowSet {
  const body = lines.filter(({ text }) => !isComment(text));
  if (heading.separator !== 'blanks') {
    return { separator: heading.separator, rows: delimitedRows(body, heading.separator, heading.columns.length) };
  }
  const count = heading.columns.length;
  const blanks = body.map(({ text, line }): Row => ({ cells: splitBlanks(text), line, text }));
  if (blanks.every(({ cells }) => cells.length === count && scoreOf(cells) > 0))
    return { separator: 'blanks', rows: blanks };
  const spans = trueSpans(body, heading, scoreOf);
  const byHeading = headingSpans(heading);
  let byColumns = 0;
  const rows = blanks.map((row): Row => {
    const cut = spans && cutColumns(row.text, spans);
    if (cut && scoreOf(cut)) {
      byColumns++;
      return { ...row, cells: cut };
    }
    return {
      ...row,
      cells:
        cellsByCount(row.cells, row.text, heading.columns, scoreOf) ??
        goodOr(cutColumns(row.text, byHeading), row.cells, scoreOf),
    };
  });
  return { separator: byColumns > rows.length / 2 ? 'columns' : 'blanks', rows };
}

/** How well cells fit the columns: 0 when reference or position cannot be read, else the number of cells of the right kind. */
type Fit = (cells: readonly string[]) => number;

function goodOr(cells: readonly string[], fallback: readonly string[], scoreOf: Fit): readonly string[] {
  return scoreOf(cells) ? cells : fallback;
}

/** Cells parted by blanks, if they fit the headings: all there, only last ones missing, or a text with blanks in it. */
function cellsByCount(
  cells: readonly string[],
  text: string,
  columns: readonly Column[],
  scoreOf: Fit,
): readonly string[] | null {
  if (cells.length <= columns.length && cells.length >= columns.length - 2 && scoreOf(cells)) return cells;
  // Blanks within a text are single as a rule, gaps between columns are wider.
  const wide = text.trim().split(/\s{2,}/);
  if (wide.length === columns.length && scoreOf(wide)) return wide.map(unquote);
  return fitCells(cells, columns, scoreOf);
}

/**
 * Columns of a table whose gaps run through every line; null where texts run into the next column. Headings may stand beside
 * their columns: then as many columns as headings are told without them, if more rows fit so.
 */
function trueSpans(body: readonly NumberedLine[], heading: Heading, scoreOf: Fit): Span[] | null {
  if (body.length === 0) return null;
  const lines = body.map(({ text }) => text);
  const headingLine = heading.spans.reduce((line, { start, end }) => line.padEnd(start) + 'x'.repeat(end - start), '');
  const headed = spansByHeading(findSpans([headingLine, ...lines]), heading.spans);
  const own = findSpans(lines);
  if (own.length !== heading.spans.length) return headed;
  const fitting = (spans: readonly Span[]): number =>
    lines.filter((line) => scoreOf(cutColumns(line, spans)) > 0).length;
  return headed && fitting(headed) >= fitting(own) ? headed : own;
}

/** Columns that begin where their headings begin. */
function headingSpans({ spans }: Heading): Span[] {
  return spans.map(({ start }, index) => ({
    start: index === 0 ? 0 : start,
    end: spans[index + 1]?.start ?? Number.POSITIVE_INFINITY,
  }));
}

/** Too many cells because a value holds blanks: joins neighbours in that text column which lets most cells fall into place. */
function fitCells(cells: readonly string[], columns: readonly Column[], scoreOf: Fit): string[] | null {
  const extra = cells.length - columns.length;
  if (extra <= 0 || extra > 40) return null;
  let best: { cells: string[]; score: number } | null = null;
  for (const [index, { meaning }] of columns.entries()) {
    if (meaning !== 'value' && meaning !== 'package' && meaning !== 'description' && meaning !== null) continue;
    const text = cells.slice(index, index + extra + 1).join(' ');
    const joined = [...cells.slice(0, index), text, ...cells.slice(index + extra + 1)];
    const score = scoreOf(joined);
    if (score > 0 && score >= (best?.score ?? 0)) best = { cells: joined, score };
  }
  return best?.cells ?? null;
}

const MOST_LINES_PER_CELL = 20;

/** One line is one row, unless a quoted cell runs on: then lines join until the row is full. */
function delimitedRows(body: readonly NumberedLine[], delimiter: string, count: number): Row[] {
  const rows: Row[] = [];
  for (let index = 0; index < body.length; index++) {
    const { line } = body[index];
    let { text } = body[index];
    let cells = splitDelimited(text, delimiter);
    if (cells.length < count && hasOpenQuote(text)) {
      let longer = text;
      for (let more = 1; more < MOST_LINES_PER_CELL && index + more < body.length; more++) {
        longer += ` ${body[index + more].text}`;
        const tried = splitDelimited(longer, delimiter);
        if (tried.length !== count || hasOpenQuote(longer)) continue;
        [cells, text] = [tried, longer];
        index += more;
        break;
      }
    }
    rows.push({ cells, line, text });
  }
  return rows;
}
