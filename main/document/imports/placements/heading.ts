import { bareHeading, type Column, headingScore, meaningOf, readHeadings } from './columns.ts';
import { DELIMITERS, type Separator, type Span, splitDelimited } from './split.ts';

export interface Heading {
  /** Index of the heading's line. */
  readonly index: number;
  readonly separator: Separator;
  readonly columns: readonly Column[];
  /** Where each heading stands in its line; for tables parted by blanks or fixed columns. */
  readonly spans: readonly Span[];
  readonly score: number;
}

const LINES_SEARCHED = 200;

/** Marks that put a heading into a comment: `# Ref Val ...`. Replaced by blanks so that columns keep their place. */
export function uncomment(line: string): string {
  return line.replace(/^\s*(#+|\/\/+|;+|\*+)/, (marks) => ' '.repeat(marks.length));
}

/** The line that reads best as the row of headings, or null: then the table has none. */
export function findHeading(lines: readonly string[]): Heading | null {
  let best: Heading | null = null;
  const last = Math.min(lines.length, LINES_SEARCHED);
  for (let index = 0; index < last; index++) {
    const line = uncomment(lines[index]);
    if (line.length > 4000) continue;
    for (const candidate of [...delimited(line, index), ...blank(line, index)]) {
      if (candidate.score > (best?.score ?? 0)) best = candidate;
    }
  }
  return best;
}

function delimited(line: string, index: number): Heading[] {
  return DELIMITERS.filter((delimiter) => line.includes(delimiter)).map((separator) => {
    const columns = readHeadings(splitDelimited(line, separator));
    return { index, separator, columns, spans: [], score: headingScore(columns) };
  });
}

/** Headings parted by blanks, read twice: 'Mid X' as one heading, and every word by itself ('Ref X Y'). */
function blank(line: string, index: number): Heading[] {
  const words = [...line.matchAll(/\S+/g)].map((match) => ({
    text: match[0],
    start: match.index,
    end: match.index + match[0].length,
  }));
  return [joinPhrases(words), words].map((parts) => {
    const columns = readHeadings(parts.map(({ text }) => text));
    return { index, separator: 'blanks', columns, spans: parts, score: headingScore(columns) };
  });
}

interface Word extends Span {
  readonly text: string;
}

function joinPhrases(words: readonly Word[]): Word[] {
  const joined: Word[] = [];
  for (let index = 0; index < words.length; ) {
    const size = [3, 2].find((count) => isPhrase(words.slice(index, index + count), count)) ?? 1;
    const parts = words.slice(index, index + size);
    joined.push({ text: parts.map(({ text }) => text).join(' '), start: parts[0].start, end: parts[size - 1].end });
    index += size;
  }
  return joined;
}

/** Words one blank apart that are a known heading together; a bracketed unit belongs to the word before it. */
function isPhrase(words: readonly Word[], count: number): boolean {
  if (words.length < count) return false;
  if (words.some(({ start }, index) => index > 0 && start - words[index - 1].end !== 1)) return false;
  const { name, unit } = bareHeading(words.map(({ text }) => text).join(' '));
  return meaningOf(name) !== null && (unit !== null || words.every(({ text }) => !/[()]/.test(text)));
}
