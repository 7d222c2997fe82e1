import type { SideMeaning, WindowImportChoices } from '../../../../shared-types/import-choices.ts';
import type { SideWordUse } from './types.ts';
import { readMirror, readSide, type SideWord } from './values.ts';

/** What was said of side words: word in small letters -> side. */
export type SaidSides = ReadonlyMap<string, SideMeaning>;

/** What the choices say of the words of a table of this shape. */
export function saidSides(
  { tables, sideWords }: Pick<WindowImportChoices, 'tables' | 'sideWords'>,
  shape: string,
): SaidSides {
  const all = { ...sideWords, ...tables?.[shape]?.sideWords };
  return new Map(Object.entries(all).map(([word, side]) => [plain(word), side]));
}

const plain = (word: string): string => word.trim().toLowerCase();

/** The side that a cell of the side column means: as it was said, else as usual; null: an unknown word. */
export function sideOfWord(cell: string, said: SaidSides): SideWord | null {
  return said.get(plain(cell)) ?? readSide(cell) ?? (/^(yes|no|m)$/i.test(cell) ? readMirror(cell) : null);
}

const MOST_WORDS = 12;

/** The different words of a side column and what each was taken for. */
export function wordsOfColumn(cells: readonly string[], said: SaidSides): SideWordUse[] {
  const counts = new Map<string, number>();
  for (const cell of cells) if (cell !== '') counts.set(cell.slice(0, 60), (counts.get(cell.slice(0, 60)) ?? 0) + 1);
  return [...counts]
    .sort((a, b) => b[1] - a[1])
    .slice(0, MOST_WORDS)
    .map(([word, count]) => ({ word, side: sideOfWord(word, said), count, chosen: said.has(plain(word)) }));
}
