import { bareHeading, type Column } from '../placements/columns.ts';
import { isComment, type NumberedLine, type Row, readRows } from '../placements/rows.ts';
import { cutColumns, DELIMITERS, type Separator, type Span, splitDelimited } from '../placements/split.ts';
import { namesEmpty, saysNotFitted, withoutTextMark } from '../placements/values.ts';
import { listsReferences, splitReferences } from './references.ts';

/** What a bill of materials says of one reference; empty where it says nothing. */
export interface BillLine {
  readonly value: string;
  readonly packageName: string;
  readonly fitted: boolean;
}

export interface Bill {
  readonly file: string;
  readonly lines: ReadonlyMap<string, BillLine>;
}

type Meaning = 'references' | 'value' | 'package' | 'partNumber' | 'description' | 'quantity' | 'fitted';

/** Headings met in bills, letters and digits only, lower case. Common practice, no source. */
const HEADINGS: Readonly<Record<Meaning, string>> = {
  references:
    'reference references ref refs refdes refdesignator refdesignators designator designators designation designations referencedesignator referencedesignators partreference partreferences parts bezeichner componentreference componentreferences locations',
  value: 'value val comment componentvalue partvalue wert',
  package:
    'package footprint footprints pcbfootprint pattern case packagecase casepackage packagename footprintname housing device',
  partNumber:
    'mpn pn partnumber partno manufacturerpartnumber manufacturerpartno manufacturerpart manufacturerpn mfrpartnumber mfrpart mfrpn mfgpartnumber mfgpn manf',
  description: 'description desc partdescription beschreibung name',
  quantity: 'qty quantity count menge qnty',
  fitted:
    'fitted dnp dnf dni populate populated mount mounted assembly fit donotpopulate donotplace donotfit notfitted notmounted',
};

const MEANINGS = new Map(
  (Object.entries(HEADINGS) as [Meaning, string][]).flatMap(([meaning, words]) =>
    words.split(' ').map((word): [string, Meaning] => [word, meaning]),
  ),
);

const LINES_SEARCHED = 200;
const MAX_LINES = 200_000;
const MAX_REFERENCES = 50_000;
/** A longer cell lists no parts of one board. */
const MAX_CELL = 100_000;
const SAYS_SOMETHING: readonly Meaning[] = ['value', 'package', 'partNumber', 'description', 'fitted'];

interface Heading {
  readonly index: number;
  readonly separator: Separator;
  readonly names: readonly string[];
  /** Where each heading stands in its line; for fixed columns. */
  readonly spans: readonly Span[];
  readonly at: ReadonlyMap<Meaning, number>;
}

/** Reads a bill of materials: one row a part, or references listed in a cell. Null when the text is none. Never throws. */
export function readBill(text: string, file: string): Bill | null {
  const all = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  if (all.length > MAX_LINES) return null;
  const numbered = all.map((line, index): NumberedLine => ({ text: line, line: index + 1 }));
  const filled = numbered.filter((line) => line.text.trim() !== '');
  const heading = findHeading(filled);
  if (heading === null) return null;
  const columns = heading.names.map((name): Column => ({ heading: name, meaning: null, unit: null }));
  const { index, separator, spans } = heading;
  const below = { index, separator, columns, spans, score: 1 };
  const body = filled.slice(heading.index + 1);
  const rows = separator === 'blanks' ? fixedRows(body, spans) : readRows(body, below, () => 1).rows;
  const lines = new Map<string, BillLine>();
  for (const row of rows) {
    addRow(row, heading, lines);
    if (lines.size > MAX_REFERENCES) return null;
  }
  return lines.size > 0 ? { file, lines } : null;
}

/** Rows of fixed columns: cut where the headings begin, if a blank stands before each; else parted by two blanks or more. */
function fixedRows(body: readonly NumberedLine[], spans: readonly Span[]): Row[] {
  const columns = spans.map(({ start }, index) => ({
    start: index === 0 ? 0 : start,
    end: spans[index + 1]?.start ?? Number.POSITIVE_INFINITY,
  }));
  return body.flatMap(({ text, line }): Row[] => {
    if (isComment(text)) return [];
    if (columns.every(({ start }) => start === 0 || !/\S/.test(text[start - 1] ?? ' '))) {
      return [{ cells: cutColumns(text, columns), line, text }];
    }
    const wide = text.trim().split(/\s{2,}/);
    return wide.length === columns.length ? [{ cells: wide, line, text }] : [];
  });
}

/** The row that names references and something about them best. */
function findHeading(lines: readonly NumberedLine[]): Heading | null {
  let best: Heading | null = null;
  for (let index = 0; index < Math.min(lines.length, LINES_SEARCHED); index++) {
    const { text } = lines[index];
    if (text.length > 4000) continue;
    for (const { separator, names, spans } of readingsOf(text)) {
      const at = meaningsOf(names);
      const telling = at.has('references') && SAYS_SOMETHING.some((meaning) => at.has(meaning));
      if (telling && at.size > (best?.at.size ?? 0)) best = { index, separator, names, spans, at };
    }
  }
  return best;
}

type Reading = Pick<Heading, 'separator' | 'names' | 'spans'>;

/** A line parted by each delimiter in it, and by two blanks or more as fixed columns have them. */
function readingsOf(text: string): Reading[] {
  const delimited = DELIMITERS.filter((separator) => text.includes(separator)).map(
    (separator): Reading => ({ separator, names: splitDelimited(text, separator), spans: [] }),
  );
  const words = [...text.matchAll(/\S+(?: \S+)*/g)];
  const spans = words.map((match) => ({ start: match.index, end: match.index + match[0].length }));
  return [...delimited, { separator: 'blanks', names: words.map(([word]) => word), spans }];
}

function meaningsOf(names: readonly string[]): Map<Meaning, number> {
  const at = new Map<Meaning, number>();
  names.forEach((name, index) => {
    const meaning = MEANINGS.get(bareHeading(name).name);
    if (meaning !== undefined && !at.has(meaning)) at.set(meaning, index);
  });
  return at;
}

/** A reference met again, in a second table of the same file, adds only what was missing. */
function addRow({ cells }: Row, { names, at }: Heading, lines: Map<string, BillLine>): void {
  const cell = (meaning: Meaning) => withoutTextMark(cells[at.get(meaning) ?? -1] ?? '');
  const quantity = cell('quantity') === '' ? null : Number(cell('quantity'));
  const listed = cell('references');
  if (listed.length > MAX_CELL || !listsReferences(listed)) return;
  const empty = cells.some(namesEmpty) || saysNotFitted(names[at.get('fitted') ?? -1] ?? '', cell('fitted'));
  const told = (...meanings: Meaning[]) =>
    meanings.map(cell).find((text) => text !== '' && text !== '~' && !namesEmpty(text)) ?? '';
  const line = {
    value: told('value', 'partNumber', 'description'),
    packageName: told('package'),
    fitted: !empty && quantity !== 0,
  };
  for (const refdes of splitReferences(listed, quantity)) {
    const known = lines.get(refdes);
    lines.set(refdes, {
      value: known?.value || line.value,
      packageName: known?.packageName || line.packageName,
      fitted: (known?.fitted ?? true) && line.fitted,
    });
  }
}
