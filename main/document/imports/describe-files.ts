import type { ImportedFile, ImportedTable } from '../../../shared-types/import-report.ts';
import { fileLine, tableLine } from './build/report.ts';
import { type GivenFile, recognise } from './files/recognise.ts';
import { unpackFiles } from './files/unpack.ts';
import type { ImportChoices } from './import-board.ts';
import { readAnyTable } from './placements/any-table.ts';
import { decodeText } from './text/decode-text.ts';

/**
 * What files that give no board were taken for, and the tables among them, so that a user can say what the columns mean.
 * A text that does not read as placements is shown too where its lines are alike: as a table of which nothing is known.
 */
export function describeFiles(
  files: readonly GivenFile[],
  choices: ImportChoices,
): { files: ImportedFile[]; tables: ImportedTable[] } {
  const unpacked = unpackFiles(files);
  if (!unpacked.ok) return { files: [], tables: [] };
  const unsaid = { assumedUnit: null, unitBy: 'none' } as const;
  const described = unpacked.value.files.map((file) => {
    const one = recognise(file, choices);
    if (one.kind === 'placements') return { line: fileLine(one), table: tableLine(one.table, unsaid) };
    const text = one.kind === 'other' && one.what === 'text' ? decodeText(file.bytes) : null;
    const any = text?.ok ? readAnyTable(text.text, file.name, text.encoding) : null;
    return { line: fileLine(one), table: any && tableLine(any, unsaid) };
  });
  return {
    files: described.map(({ line }) => line),
    tables: described.flatMap(({ table }) => (table ? [table] : [])),
  };
}
