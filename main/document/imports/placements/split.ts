import Papa from 'papaparse';

/** How cells are parted: one of the delimiters, runs of blanks, or fixed columns. */
export type Separator = ',' | ';' | '\t' | '|' | '!' | 'blanks' | 'columns';

export const DELIMITERS = [',', ';', '\t', '|', '!'] as const;

/** One line into trimmed cells. An inner quote that is not doubled stays in its cell (`"HEADER .05" SMD"`). */
export function splitDelimited(line: string, delimiter: string): string[] {
  if (!line.includes('"')) return line.split(delimiter).map((cell) => cell.trim());
  const result = Papa.parse<string[]>(line.trim(), { delimiter, header: false, newline: '\n' });
  return (result.data[0] ?? []).map((cell) => cell.trim());
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
  return columns.every((column) => column !== null) ? columns : null;
}

export function cutColumns(line: string, spans: readonly Span[]): string[] {
  return spans.map(({ start, end }, index) => unquote(line.slice(start, index === spans.length - 1 ? undefined : end)));
}
