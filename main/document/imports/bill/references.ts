import { looksLikeRefdes } from '../placements/values.ts';

const MAX_RANGE = 1000;

/**
 * `C1, C4 C7-C9` as single references. A range needs letters on both ends, and is none where the row's quantity fits the
 * cells as they stand (`J1-A2` may be one name).
 */
export function splitReferences(cell: string, quantity: number | null): string[] {
  const joined = cell.replace(/\s*(-|–|\.{2,3})\s*(?=[A-Za-z]+\d)/g, '$1');
  const words = joined.split(/[\s,;/]+/).filter((word) => word !== '');
  if (quantity === words.length) return words;
  return words.flatMap(expand);
}

function expand(word: string): string[] {
  const [, letters, first, otherLetters, last] = /^([A-Za-z_]+)(\d+)(?:-|–|\.{2,3})([A-Za-z_]+)(\d+)$/.exec(word) ?? [];
  const count = Number(last) - Number(first) + 1;
  if (letters === undefined || letters !== otherLetters || !(count > 1 && count <= MAX_RANGE)) return [word];
  return Array.from({ length: count }, (_, index) => `${letters}${Number(first) + index}`);
}

/** True when the cell lists references: at least most of its words are such. */
export function listsReferences(cell: string): boolean {
  const words = splitReferences(cell, null);
  return words.length > 0 && words.filter(looksLikeRefdes).length * 2 > words.length;
}
