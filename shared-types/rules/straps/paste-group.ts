import type { Board } from '../../board.ts';
import { parseResistance } from '../resistance.ts';
import { isBlank, levelOf, splitCells } from './cells.ts';
import { emptyDraft, type StrapDraft } from './draft.ts';

const MAKER = /^(?:maker|make|manufacturer|vendor|mfr|brand)\b/i;
const CAPACITY = /^(?:capacity|size|density|memory size|amount)\b/i;

/**
 * A whole strap table pasted from a spreadsheet: a head row, one row for each setting, one column for each position
 * (its designator as head). A cell says fitted or empty (1, 0, fitted, DNP, -, a value such as 10k); x: it does not
 * matter, unless the table has nothing but x and blanks: then x is fitted. Null: no column is a part of the board.
 */
export function draftFromTable(text: string, board: Board, name: string): StrapDraft | null {
  const [head, ...rest] = splitCells(text).filter((row) => !isBlank(row));
  if (!head) return null;
  const known = new Map(board.parts.map((part) => [part.refdes.toUpperCase(), part]));
  const places = head.flatMap((title, column) => {
    const part = known.get(title.toUpperCase());
    return part ? [{ column, part }] : [];
  });
  if (places.length === 0) return null;
  const others = head.map((_, column) => column).filter((column) => !places.some((place) => place.column === column));
  const maker = others.find((column) => MAKER.test(head[column]));
  const capacity = others.find((column) => CAPACITY.test(head[column]));
  const labels = others.filter((column) => column !== maker && column !== capacity);
  const cells = rest.flatMap((row) => places.map(({ column }) => row[column] ?? ''));
  const crosses = cells.some((cell) => cell !== '') && cells.every((cell) => /^x?$/i.test(cell));
  const level = (cell: string): string => {
    if (crosses || cell === '') return cell === '' ? '0' : '1';
    return levelOf(cell) ?? (parseResistance(cell) ? '1' : cell);
  };
  const settings = rest.map((row, index) => {
    const label = labels
      .map((column) => row[column] ?? '')
      .filter(Boolean)
      .join(' ');
    const told = [maker, capacity].map((column) => (column === undefined ? '' : (row[column] ?? '')));
    const fallback = told.filter(Boolean).join(' ') || String(index + 1);
    return [label || fallback, ...told, ...places.map(({ column }) => level(row[column] ?? ''))];
  });
  const positions = places.map(({ column, part }) => {
    const written = rest
      .map((row) => row[column] ?? '')
      .find((cell) => levelOf(cell) === null && parseResistance(cell));
    return [part.refdes, written ?? part.value, '', ''];
  });
  return { ...emptyDraft('jumpers'), name, tables: { positions, bits: [], windows: [], settings } };
}
