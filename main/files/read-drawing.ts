import type { z } from 'zod';
import type { Board } from '../../shared-types/board.ts';
import type { importNoteSchema } from '../../shared-types/contract.ts';
import { type Result, succeed } from '../../shared-types/problem.ts';
import { importNoteSentence } from '../../shared-types/words/imports.ts';
import { importBoard } from '../document/imports/import-board.ts';

export type NamedFile = { name: string; bytes: Uint8Array };
export type DrawingNote = z.infer<typeof importNoteSchema>;
export type Drawing = { board: Board; notes: DrawingNote[] };

/** Drawing files to a board, with everything the import noticed as sentences. Errors: those of the import. */
export function readDrawing(files: readonly NamedFile[]): Result<Drawing> {
  const imported = importBoard(files);
  if (!imported.ok) return imported;
  const { board, report } = imported.value;
  const notes = report.notes.map((note) => ({
    weight: note.weight,
    sentence: importNoteSentence(note),
    ...(note.refdes ? { refdes: note.refdes } : {}),
  }));
  return succeed({ board, notes });
}
