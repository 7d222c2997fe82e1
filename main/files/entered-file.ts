import { BOARD_EXTENSION } from '../../shared-types/format-version.ts';
import { fail, type Result, succeed } from '../../shared-types/problem.ts';
import { emptyPlan } from '../../shared-types/rules/new-plan.ts';
import { readBoard } from '../document/open-document.ts';
import { looksLikeZip, packTicket } from '../document/ticket-archive.ts';
import { type Drawing, type DrawingNote, type NamedFile, readDrawing } from './read-drawing.ts';
import { readTicketFile } from './ticket-file.ts';
import { isTicketName, withoutExtension } from './ticket-names.ts';

/** A file that came in as bytes, ready to lie on the shelf. */
export type EnteredFile = { stem: string; bytes: Uint8Array; notes: DrawingNote[] };

/**
 * A dropped or chosen file as a ticket: a ticket as it is, a board or a drawing with an empty plan whose number is the file's name.
 * Errors: those of reading a ticket, a board, or of the import.
 */
export function enterFile(file: NamedFile): Result<EnteredFile> {
  const name = baseName(file.name);
  if (isTicketName(name)) {
    const read = readTicketFile(file.bytes, name);
    return read.ok ? succeed({ stem: withoutExtension(name), bytes: file.bytes, notes: [] }) : read;
  }
  const stem = stemOf(name);
  const read = isBoardFile(name, file.bytes) ? boardOf({ ...file, name }) : readDrawing([{ ...file, name }]);
  if (!read.ok) return read;
  const plan = emptyPlan(stem.slice(0, 100));
  const bytes = packTicket({ document: { board: read.value.board, plan }, photos: new Map() });
  return succeed({ stem, bytes, notes: read.value.notes });
}

const baseName = (name: string): string => name.split(/[/\\]/).at(-1) || 'file';

function stemOf(name: string): string {
  const stem = name.toLowerCase().endsWith(BOARD_EXTENSION)
    ? name.slice(0, -BOARD_EXTENSION.length)
    : name.replace(/\.[^.]*$/, '');
  return stem.trim() || 'board';
}

/** Any .json is taken for a board: reading it then says what it is not. */
const isBoardFile = (name: string, bytes: Uint8Array): boolean =>
  name.toLowerCase().endsWith('.json') && !looksLikeZip(bytes);

function boardOf(file: NamedFile): Result<Drawing> {
  try {
    const board = readBoard(new TextDecoder('utf-8', { fatal: true }).decode(file.bytes), file.name);
    return board.ok ? succeed({ board: board.value, notes: [] }) : board;
  } catch {
    return fail('not-text', { file: file.name });
  }
}
