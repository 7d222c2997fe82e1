import type { RememberedImport, WindowImportChoices } from '../../shared-types/import-choices.ts';
import type { ImportedTable } from '../../shared-types/import-report.ts';

/** Kinds of files kept in mind; older ones are forgotten. */
const LONGEST = 60;

type Read = { readonly tables: readonly ImportedTable[] };

const shapesOf = ({ tables }: Read): string[] => [...new Set(tables.map(({ shape }) => shape))];

/** What was chosen before for tables with the same headings; null: nothing. */
export function recall(kept: readonly RememberedImport[], report: Read): WindowImportChoices | null {
  const known = shapesOf(report).flatMap((shape) => kept.findLast((one) => one.shape === shape) ?? []);
  if (known.length === 0) return null;
  const { bottomX, bottomY, turn } = known[0];
  return {
    tables: Object.fromEntries(known.map(({ shape, table }) => [shape, table])),
    ...(bottomX ? { bottomX } : {}),
    ...(bottomY ? { bottomY } : {}),
    ...(turn ? { turn } : {}),
  };
}

/** What is kept in mind after an import: the choices for its kinds of tables; kinds without a choice are forgotten. */
export function remember(
  kept: readonly RememberedImport[],
  report: Read,
  { tables = {}, bottomX, bottomY, turn }: WindowImportChoices,
): RememberedImport[] {
  const shapes = shapesOf(report);
  const others = kept.filter(({ shape }) => !shapes.includes(shape));
  const chosen = shapes.flatMap((shape): RememberedImport[] => {
    const table = tables[shape] ?? {};
    const senses = { ...(bottomX ? { bottomX } : {}), ...(bottomY ? { bottomY } : {}), ...(turn ? { turn } : {}) };
    return Object.keys({ ...table, ...senses }).length === 0 ? [] : [{ shape, table, ...senses }];
  });
  return [...others, ...chosen].slice(-LONGEST);
}
