import { basename, resolve } from 'node:path';
import type { Problem } from '../../shared-types/problem.ts';
import { enterFile } from './entered-file.ts';
import { attempt } from './file-problems.ts';
import type { FileSystem } from './file-system.ts';
import { isTicketName } from './ticket-names.ts';
import type { Tickets } from './tickets.ts';

/**
 * The id of the ticket that the program was started with. A ticket is edited where it lies; a board or drawing becomes a ticket on the
 * shelf. Null without a file, or with one that cannot be read: the problem says why.
 */
export async function findStartTicket(
  fs: FileSystem,
  tickets: Tickets,
  file: string | null,
): Promise<{ id: string | null; problem: Problem | null }> {
  if (file === null) return { id: null, problem: null };
  const path = resolve(file);
  if (isTicketName(basename(path))) return { id: tickets.shelf.register(path), problem: null };
  const bytes = await attempt(basename(path), async () => new Uint8Array(await fs.readFile(path)));
  if (!bytes.ok) return { id: null, problem: bytes.problem };
  const entered = enterFile({ name: basename(path), bytes: bytes.value });
  if (!entered.ok) return { id: null, problem: entered.problem };
  const opened = await tickets.create(entered.value.stem, entered.value.bytes, false);
  if (!opened.ok) return { id: null, problem: opened.problem };
  const { session } = opened.value;
  const problem = await tickets.release(session);
  return { id: session.id, problem };
}
