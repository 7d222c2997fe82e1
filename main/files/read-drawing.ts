import type { z } from 'zod';
import type { Board } from '../../shared-types/board.ts';
import type { importNoteSchema } from '../../shared-types/contract.ts';
import type { ImportFacts } from '../../shared-types/import-report.ts';
import { type Result, succeed } from '../../shared-types/problem.ts';
import { importNoteSentence } from '../../shared-types/words/imports.ts';
import { type ImportChoices, importBoard } from '../document/imports/import-board.ts';

export type NamedFile = { name: string; bytes: Uint8Array };
export type DrawingNote = z.infer<typeof importNoteSchema>;
export type Drawing = { board: Board; notes: DrawingNote[] };
export type ReadDrawing = Drawing & { report: ImportFacts };

/** Drawing files to a board, with everything the import noticed as sentences. Errors: those of the import. */
export function readDrawing(files: readonly NamedFile[], choices: ImportChoices = {}): Result<ReadDrawing> {
  const imported = importBoard(files, choices);
  if (!imported.ok) return imported;
  const { board, report: whole } = imported.value;
  const { notes: found, ...report } = whole;
  const notes = found.map((note) => ({
    weight: note.weight,
    sentence: importNoteSentence(note),
    ...(note.refdes ? { refdes: note.refdes } : {}),
  }));
  return succeed({ board, notes, report });
}
