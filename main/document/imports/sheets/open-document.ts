import { readXml } from '../text/read-xml.ts';
import type { SheetRows } from './cells.ts';

const MAX_ROWS = 200_000;
const MAX_COLUMNS = 400;
/** Cells with anything in them, repeats counted: beyond, a file of few bytes would grow to any size. */
const MAX_CELLS = 2_000_000;

interface OpenSheet {
  readonly name: string;
  readonly hidden: boolean;
  readonly rows: string[][];
  /** Empty rows since the last one with anything in it; those at the end are none. */
  emptyRows: number;
}

interface State {
  readonly sheets: OpenSheet[];
  readonly hiddenStyles: Set<string>;
  style: string;
  sheet: OpenSheet | null;
  row: { cells: string[]; column: number; repeat: number } | null;
  cell: { given: Attributes; paragraphs: string[]; repeat: number } | null;
  /** Depth of elements whose texts are none of the cell: notes on it. */
  aside: number;
  cells: number;
  /** Rows of all sheets. */
  rows: number;
}

type Attributes = Readonly<Record<string, string>>;

/** An attribute by its name without the prefix. */
function attributeOf(given: Attributes, name: string): string | undefined {
  for (const key in given) if (key === name || key.endsWith(`:${name}`)) return given[key];
  return undefined;
}

const repeatOf = (given: Attributes, name: string): number => Math.max(1, Number(attributeOf(given, name) ?? 1) || 1);

/** The visible sheets of content.xml of an OpenDocument workbook (OpenDocument 1.3, part 3, 9.1). Null: broken, or too much in it. */
export function readOpenDocument(content: Uint8Array): { name: string; rows: SheetRows }[] | null {
  const state: State = {
    sheets: [],
    hiddenStyles: new Set(),
    style: '',
    sheet: null,
    row: null,
    cell: null,
    aside: 0,
    cells: 0,
    rows: 0,
  };
  const read = readXml<'tooMany'>(content, {
    open(name, given) {
      if (Object.hasOwn(OPENERS, name)) OPENERS[name](state, given);
      return isTooMuch(state) ? 'tooMany' : null;
    },
    close(name) {
      if (Object.hasOwn(CLOSERS, name)) CLOSERS[name](state);
    },
    text: (text) => addText(state, text),
  });
  if (!read.ok || isTooMuch(state)) return null;
  return state.sheets.filter(({ hidden }) => !hidden).map(({ name, rows }) => ({ name, rows }));
}

function isTooMuch({ cells, rows }: State): boolean {
  return cells > MAX_CELLS || rows > MAX_ROWS;
}

function addText({ cell, aside }: State, text: string): void {
  if (cell && aside === 0 && cell.paragraphs.length > 0) cell.paragraphs[cell.paragraphs.length - 1] += text;
}

const OPENERS: Readonly<Record<string, (state: State, given: Attributes) => void>> = {
  style(state, given) {
    state.style = attributeOf(given, 'name') ?? '';
  },
  'table-properties'(state, given) {
    if (attributeOf(given, 'display') === 'false') state.hiddenStyles.add(state.style);
  },
  table(state, given) {
    const hidden = state.hiddenStyles.has(attributeOf(given, 'style-name') ?? '');
    state.sheet = { name: attributeOf(given, 'name') ?? '', hidden, rows: [], emptyRows: 0 };
    state.sheets.push(state.sheet);
  },
  'table-row'(state, given) {
    state.row = { cells: [], column: 0, repeat: repeatOf(given, 'number-rows-repeated') };
  },
  'table-cell': openCell,
  'covered-table-cell': openCell,
  annotation(state) {
    state.aside++;
  },
  p(state) {
    if (state.aside === 0) state.cell?.paragraphs.push('');
  },
  s(state, given) {
    addText(state, ' '.repeat(Math.min(1000, repeatOf(given, 'c'))));
  },
  tab: (state) => addText(state, ' '),
  'line-break': (state) => addText(state, ' '),
};

function openCell(state: State, given: Attributes): void {
  state.cell = { given, paragraphs: [], repeat: repeatOf(given, 'number-columns-repeated') };
}

const CLOSERS: Readonly<Record<string, (state: State) => void>> = {
  annotation(state) {
    state.aside--;
  },
  'table-cell': closeCell,
  'covered-table-cell': closeCell,
  'table-row': closeRow,
  table(state) {
    state.sheet = null;
  },
};

function closeCell(state: State): void {
  const { cell, row } = state;
  state.cell = null;
  if (!cell || !row) return;
  const text = cellText(cell.given, cell.paragraphs);
  const end = Math.min(MAX_COLUMNS, row.column + cell.repeat);
  if (text !== '') {
    state.cells += end - row.column;
    while (row.cells.length < row.column) row.cells.push('');
    for (let column = row.column; column < end; column++) row.cells[column] = text;
  }
  row.column = end;
}

/** Numbers and truths as stored, all else as it is shown. */
function cellText(given: Attributes, paragraphs: readonly string[]): string {
  const type = attributeOf(given, 'value-type');
  const value = attributeOf(given, 'value');
  if (value !== undefined && (type === 'float' || type === 'percentage' || type === 'currency')) return value;
  if (type === 'boolean') return attributeOf(given, 'boolean-value') === 'true' ? 'yes' : 'no';
  return paragraphs.join(' ').trim();
}

function closeRow(state: State): void {
  const { row, sheet } = state;
  state.row = null;
  if (!row || !sheet) return;
  if (row.cells.length === 0) {
    sheet.emptyRows += row.repeat;
    return;
  }
  state.rows += sheet.emptyRows + row.repeat;
  state.cells += row.cells.length * (row.repeat - 1);
  if (isTooMuch(state)) return;
  for (; sheet.emptyRows > 0; sheet.emptyRows--) sheet.rows.push([]);
  for (let copy = 0; copy < row.repeat; copy++) sheet.rows.push(row.cells);
}
