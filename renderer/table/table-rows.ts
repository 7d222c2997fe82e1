import { classById } from '../../shared-types/library/classes.ts';
import { ORDINARY_RANK, type PartRow } from '../state/part-rows.ts';

export const FILTERS = ['exceptions', 'over', 'reflow', 'remove', 'shield', 'all'] as const;
export type Filter = (typeof FILTERS)[number];

export const COLUMNS = [
  'refdes',
  'side',
  'class',
  'clearance',
  'body',
  'skin',
  'joint',
  'limit',
  'margin',
  'state',
  'action',
  'tag',
] as const;
export type Column = (typeof COLUMNS)[number];

/** `column` null: exceptions first. */
export type Sorting = { column: Column | null; down: boolean };

export type TableView = { filter: Filter; text: string; sorting: Sorting };
export const startingTable: TableView = { filter: 'exceptions', text: '', sorting: { column: null, down: false } };

/** The rows that a filter and a text let through, in order. */
export function shownRows(rows: readonly PartRow[], view: TableView): PartRow[] {
  const text = view.text.trim().toLowerCase();
  const kept = rows.filter((row) => passes(row, view.filter) && (text === '' || mentions(row, text)));
  return kept.toSorted(orderBy(view.sorting));
}

export function passes(row: PartRow, filter: Filter): boolean {
  const { exposure, action, tags, rank } = row;
  switch (filter) {
    case 'all':
      return true;
    case 'exceptions':
      return rank < ORDINARY_RANK;
    case 'over':
      return exposure?.state === 'over' || exposure?.state === 'unsure';
    case 'reflow':
      return exposure !== null && exposure.reflow !== 'none';
    case 'remove':
      return action?.action === 'remove-first' || tags.some((tag) => tag.kind === 'remove');
    case 'shield':
      return action?.action === 'shield' || tags.some((tag) => tag.kind === 'shield');
  }
}

const mentions = ({ part }: PartRow, text: string): boolean =>
  [part.refdes, part.value, part.package.name, classById(part.class).name].some((one) =>
    one.toLowerCase().includes(text),
  );

/** Designators as people count: C2 before C10. */
export const byDesignator = new Intl.Collator('en', { numeric: true }).compare;

function orderBy({ column, down }: Sorting): (a: PartRow, b: PartRow) => number {
  const tie = (a: PartRow, b: PartRow) => byDesignator(a.part.refdes, b.part.refdes);
  if (column === null) return (a, b) => a.rank - b.rank || compareFigures(margin(a), margin(b), false) || tie(a, b);
  return (a, b) => {
    const [x, y] = [sortKey(a, column), sortKey(b, column)];
    if (typeof x === 'string' && typeof y === 'string') return (down ? -1 : 1) * byDesignator(x, y) || tie(a, b);
    return compareFigures(x as number | null, y as number | null, down) || tie(a, b);
  };
}

const margin = (row: PartRow): number | null => row.exposure?.marginK ?? null;

/** Rows without a figure come last whichever way the column is sorted. */
function compareFigures(a: number | null, b: number | null, down: boolean): number {
  if (a === null || b === null) return a === b ? 0 : a === null ? 1 : -1;
  return down ? b - a : a - b;
}

function sortKey(row: PartRow, column: Column): string | number | null {
  const { part, exposure } = row;
  switch (column) {
    case 'refdes':
      return part.refdes;
    case 'side':
      return part.side;
    case 'class':
      return classById(part.class).name;
    case 'clearance':
      return exposure?.clearanceMm ?? null;
    case 'body':
      return exposure?.body.maxC ?? null;
    case 'skin':
      return exposure?.skin.maxC ?? null;
    case 'joint':
      return exposure?.joint.maxC ?? null;
    case 'limit':
      return governingLimit(row);
    case 'margin':
      return margin(row);
    case 'state':
      return exposure ? { over: 0, unsure: 1, clear: exposure.reflow === 'none' ? 3 : 2 }[exposure.state] : null;
    case 'action':
      return row.action ? row.rank : null;
    case 'tag':
      return row.tags[0]?.order ?? null;
  }
}

/** The limit that the smallest margin belongs to, C; null: none applies. */
export function governingLimit({ exposure }: PartRow): number | null {
  return exposure?.limits[exposure.governedBy]?.celsius ?? null;
}
