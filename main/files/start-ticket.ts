import { basename, resolve } from 'node:path';
import type { Problem } from '../../shared-types/problem.ts';
import { enterFile } from './entered-file.ts';
import { attempt } from './file-problems.ts';
import type { FileSystem } from './file-system.ts';
import type { DrawingNote } from './read-drawing.ts';
import { isTicketName } from './ticket-names.ts';
import type { Tickets } from './tickets.ts';

/** `notes`: what the import of a drawing had to say. */
export type StartTicket = { id: string | null; notes: DrawingNote[]; problem: Problem | null };

const nothing = (problem: Problem | null): StartTicket => ({ id: null, notes: [], problem });

/**
 * The id of the ticket that the program was started with. A ticket is edited where it lies; a board or drawing becomes a ticket on the
 * shelf. Null without a file, or with one that cannot be read: the problem says why.
 */
export async function findStartTicket(fs: FileSystem, tickets: Tickets, file: string | null): Promise<StartTicket> {
  if (file === null) return nothing(null);
  const path = resolve(file);
  if (isTicketName(basename(path))) return { ...nothing(null), id: tickets.shelf.register(path) };
  const bytes = await attempt(basename(path), async () => new Uint8Array(await fs.readFile(path)));
  if (!bytes.ok) return nothing(bytes.problem);
  const entered = enterFile({ name: basename(path), bytes: bytes.value });
  if (!entered.ok) return nothing(entered.problem);
  const opened = await tickets.create(entered.value.stem, entered.value.bytes, false);
  if (!opened.ok) return nothing(opened.problem);
  const { session } = opened.value;
  const problem = await tickets.release(session);
  return { id: session.id, notes: entered.value.notes, problem };
}
