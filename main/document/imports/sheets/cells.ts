import { readXml } from '../text/read-xml.ts';

/** Rows of one sheet as texts; rows and cells that are not written are empty. */
export type SheetRows = string[][];

/** As many rows as a placement table may have lines; columns beyond are none of a table. */
const MAX_ROWS = 200_000;
const MAX_COLUMNS = 400;

/** The shared texts of a workbook in their order (ECMA-376 part 1, 18.4): runs joined, phonetic hints left out. */
export function readSharedTexts(bytes: Uint8Array): string[] | null {
  const texts: string[] = [];
  const open: string[] = [];
  const read = readXml<never>(bytes, {
    open(name) {
      open.push(name);
      if (name === 'si') texts.push('');
      return null;
    },
    close: () => void open.pop(),
    text(text) {
      if (open.at(-1) === 't' && !open.includes('rPh')) texts[texts.length - 1] += text;
    },
  });
  return read.ok ? texts : null;
}

interface Cell {
  readonly column: number;
  readonly type: string;
  text: string;
}

/** The cells of a worksheet (ECMA-376 part 1, 18.3.1). Values are what is stored, not how it is shown. */
export function readCells(bytes: Uint8Array, shared: readonly string[]): SheetRows | null {
  const rows: SheetRows = [];
  const open: string[] = [];
  let row = -1;
  let column = -1;
  let cell: Cell | null = null;
  const read = readXml<'tooMany'>(bytes, {
    open(name, { r, t }) {
      open.push(name);
      if (name === 'row') {
        row = r === undefined ? row + 1 : Number(r) - 1;
        column = -1;
        if (!(row >= rows.length) || row >= MAX_ROWS) return 'tooMany';
        while (rows.length <= row) rows.push([]);
      } else if (name === 'c') {
        column = r === undefined ? column + 1 : columnOf(r);
        cell = { column, type: t ?? 'n', text: '' };
      }
      return null;
    },
    close(name) {
      open.pop();
      if (name !== 'c' || cell === null) return;
      if (cell.column < MAX_COLUMNS) put(rows[row], cell.column, cellText(cell, shared));
      cell = null;
    },
    text(text) {
      const at = open.at(-1);
      if (cell && (at === 'v' || (at === 't' && !open.includes('rPh')))) cell.text += text;
    },
  });
  return read.ok ? rows : null;
}

function put(cells: string[], column: number, text: string): void {
  while (cells.length < column) cells.push('');
  cells[column] = text;
}

/** `AB12` to its column, from 0. */
function columnOf(reference: string): number {
  const letters = /^[A-Z]{1,3}/.exec(reference)?.[0] ?? '';
  return [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
}

function cellText({ type, text }: Cell, shared: readonly string[]): string {
  switch (type) {
    case 's':
      return shared[Number(text)] ?? '';
    case 'b':
      return text === '1' ? 'yes' : 'no';
    case 'e':
      return '';
    case 'n':
      return text === '' ? '' : plainNumber(text);
    default:
      return text;
  }
}

/** Stored numbers carry the last digits of binary fractions: 12.700000000000001. */
function plainNumber(text: string): string {
  const value = Number(text);
  return Number.isFinite(value) ? String(Number(value.toPrecision(15))) : text;
}
