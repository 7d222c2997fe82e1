import type { z } from 'zod';
import type { Board } from '../../shared-types/board.ts';
import type { importNoteSchema, RequestOutput } from '../../shared-types/contract.ts';
import type { ImportFacts } from '../../shared-types/import-report.ts';
import { type Result, succeed } from '../../shared-types/problem.ts';
import { importNoteSentence } from '../../shared-types/words/imports.ts';
import { describeFiles } from '../document/imports/describe-files.ts';
import { type ImportChoices, type ImportedBoard, importBoard } from '../document/imports/import-board.ts';
import { importForUpdate } from '../document/imports/update-board.ts';

export type NamedFile = { name: string; bytes: Uint8Array };
export type DrawingNote = z.infer<typeof importNoteSchema>;
export type Drawing = { board: Board; notes: DrawingNote[] };
export type ReadDrawing = Drawing & { report: ImportFacts };

/**
 * Drawing files as the import shows them: the board, or why there is none, and what each file was taken for. `onto`: the
 * board that they are to update.
 */
export function readForImport(
  files: readonly NamedFile[],
  choices: ImportChoices,
  onto: Board | null,
): RequestOutput<'import.read'> {
  const imported = onto ? importForUpdate(files, choices, onto) : importBoard(files, choices);
  if (!imported.ok) return { read: null, problem: imported.problem, ...describeFiles(files, choices) };
  const read = told(imported.value);
  return { read, problem: null, files: read.report.files, tables: read.report.tables };
}

/** Drawing files to a board, with everything the import noticed as sentences. Errors: those of the import. */
export function readDrawing(files: readonly NamedFile[], choices: ImportChoices = {}): Result<ReadDrawing> {
  const imported = importBoard(files, choices);
  return imported.ok ? succeed(told(imported.value)) : imported;
}

function told({ board, report: whole }: ImportedBoard): ReadDrawing {
  const { notes: found, ...report } = whole;
  const notes = found.map((note) => ({
    weight: note.weight,
    sentence: importNoteSentence(note),
    ...(note.refdes ? { refdes: note.refdes } : {}),
  }));
  return { board, notes, report };
}
