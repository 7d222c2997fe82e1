/** How cells are parted: one of the delimiters, runs of blanks, or fixed columns. */
export type Separator = ',' | ';' | '\t' | '|' | '!' | 'blanks' | 'columns';

export const DELIMITERS = [',', ';', '\t', '|', '!'] as const;

/**
 * One line into trimmed cells. Quotes may stand behind blanks (`"a" ! "b"`). A doubled quote is one of the text; so is an inner
 * quote that is not doubled (`"HEADER .05" SMD"`): a cell ends at a quote that its delimiter, or the line's end, follows.
 */
export function splitDelimited(line: string, delimiter: string): string[] {
  if (!line.includes('"')) return line.split(delimiter).map((cell) => cell.trim());
  const cells: string[] = [];
  for (let at = 0; at <= line.length; ) {
    const quoted = quotedCell(line, at, delimiter);
    const end = quoted?.end ?? endOfCell(line, at, delimiter);
    cells.push((quoted?.text ?? line.slice(at, end)).trim());
    at = end + delimiter.length;
  }
  return cells;
}

function endOfCell(line: string, from: number, delimiter: string): number {
  const end = line.indexOf(delimiter, from);
  return end < 0 ? line.length : end;
}

/** A cell in quotes and where it ends; null where none begins, or none ends. */
function quotedCell(line: string, from: number, delimiter: string): { text: string; end: number } | null {
  const start = skipBlanks(line, from, delimiter);
  if (line[start] !== '"') return null;
  let text = '';
  for (let at = start + 1; at < line.length; ) {
    const quote = line.indexOf('"', at);
    if (quote < 0) return null;
    text += line.slice(at, quote);
    let last = quote;
    while (line[last + 1] === '"') last++;
    const run = last - quote + 1;
    const end = skipBlanks(line, last + 1, delimiter);
    const closes = end >= line.length || line.startsWith(delimiter, end);
    // Of an even run before a delimiter all are text, unless no later quote closes the cell.
    if (closes && (run % 2 === 1 || !closesLater(line, last + 1, delimiter))) {
      return { text: text + '"'.repeat(run >> 1), end };
    }
    text += '"'.repeat(Math.max(1, run >> 1));
    at = last + 1;
  }
  return null;
}

function skipBlanks(line: string, from: number, delimiter: string): number {
  let at = from;
  while ((line[at] === ' ' || line[at] === '\t') && line[at] !== delimiter) at++;
  return at;
}

/** True when a further quote ends a cell before another one begins. */
function closesLater(line: string, from: number, delimiter: string): boolean {
  const quote = line.indexOf('"', from);
  if (quote < 0) return false;
  const end = skipBlanks(line, quote + 1, delimiter);
  return end >= line.length || line.startsWith(delimiter, end);
}

/** True while a quoted cell is still open at the end of the line. */
export function hasOpenQuote(line: string): boolean {
  return (line.split('"').length - 1) % 2 === 1;
}

/** Runs of blanks part cells; blanks inside quotes do not. */
export function splitBlanks(line: string): string[] {
  const cells = line.match(/"[^"]*"(?=\s|$)|\S+/g) ?? [];
  return cells.map(unquote);
}

export function unquote(cell: string): string {
  const trimmed = cell.trim();
  const quoted = trimmed.length >= 2 && trimmed.startsWith('"') && trimmed.endsWith('"');
  return quoted ? trimmed.slice(1, -1).trim() : trimmed;
}

export interface Span {
  readonly start: number;
  readonly end: number;
}

/** Character columns that are not blank in any line, as spans; lines are the heading and all rows of a fixed-width table. */
export function findSpans(lines: readonly string[]): Span[] {
  const length = lines.reduce((most, line) => Math.max(most, line.length), 0);
  const inked = new Uint8Array(length + 1);
  for (const line of lines) for (let at = 0; at < line.length; at++) if (line.charCodeAt(at) > 32) inked[at] = 1;
  const spans: Span[] = [];
  let start = -1;
  for (let at = 0; at <= length; at++) {
    if (inked[at] && start < 0) start = at;
    else if (!inked[at] && start >= 0) {
      spans.push({ start, end: at });
      start = -1;
    }
  }
  return spans;
}

/**
 * One span per heading: spans under one heading join; a span under several headings cannot be parted, and null comes back.
 * The gap between two headings goes to the left one, so that long left-aligned texts stay whole.
 */
export function spansByHeading(spans: readonly Span[], headings: readonly Span[]): Span[] | null {
  const columns = headings.map((): { start: number; end: number } | null => null);
  for (const span of spans) {
    const over = headings.flatMap((heading, index) =>
      heading.start < span.end && span.start < heading.end ? [index] : [],
    );
    if (over.length > 1) return null;
    const index = over[0] ?? headings.findLastIndex((heading) => heading.start <= span.start);
    if (index < 0) return null;
    const column = columns[index];
    if (column) column.end = span.end;
    else columns[index] = { ...span };
  }
  // Nothing stands under a heading whose cells are all empty.
  return columns.map((column, index) => column ?? headings[index]);
}

export function cutColumns(line: string, spans: readonly Span[]): string[] {
  return spans.map(({ start, end }, index) => unquote(line.slice(start, index === spans.length - 1 ? undefined : end)));
}
