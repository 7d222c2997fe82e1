import { basename } from 'node:path';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { fail, type Result } from '../../shared-types/problem.ts';
import { LARGEST_JSON, readTicketDocument } from '../document/ticket-archive.ts';
import type { FileSystem } from './file-system.ts';
import { listingProblem, soundContent } from './ticket-file.ts';
import { type ListedEntry, LOCAL_BYTES, listZipEntries, startAfter } from './zip-directory.ts';

/** Holds the directory of some two thousand entries. */
const TAIL_BYTES = 256 * 1024;

/** A stretch of an open file; shorter at its end. */
type ReadAt = (at: number, length: number) => Promise<Uint8Array>;

/**
 * The document of a ticket file without its photos: the directory at its end and the two texts, each checked against the directory. That
 * every photo lies within the file is checked, its bytes are not: opening the ticket does that. Null: read it whole, the directory is too
 * long. Errors: damaged-ticket, missing-entry, too-large, and those of the texts.
 */
export async function readLargeTicketDocument(fs: FileSystem, path: string): Promise<Result<TicketDocument> | null> {
  const handle = await fs.open(path, 'r');
  try {
    // Of the file that is open: another program may have put a new one in its place since the shelf looked.
    const { size } = await handle.stat();
    return await readThrough(basename(path), size, async (at, length) => {
      const bytes = new Uint8Array(length);
      const { bytesRead } = await handle.read(bytes, 0, length, at);
      return bytes.subarray(0, bytesRead);
    });
  } finally {
    await handle.close();
  }
}

async function readThrough(file: string, size: number, readAt: ReadAt): Promise<Result<TicketDocument> | null> {
  const base = Math.max(0, size - TAIL_BYTES);
  const listed = listZipEntries(await readAt(base, size - base), base);
  if (listed === 'further-up') return null;
  if (!listed) return fail('damaged-ticket', { file });
  const { entries, directoryAt } = listed;
  const problem = listingProblem(entries, file);
  if (problem) return { ok: false, problem };
  const outside = entries.find(({ local, packedSize }) => local + LOCAL_BYTES + packedSize > directoryAt);
  if (outside) return fail('damaged-ticket', { file, where: outside.name });
  const texts: string[] = [];
  for (const name of ['board.json', 'plan.json']) {
    const entry = entries.find((one) => one.name === name);
    if (!entry) return fail('missing-entry', { file, detail: { entry: name } });
    if (entry.size > LARGEST_JSON) return fail('too-large', { file, detail: { limit: '64 MB of JSON' } });
    const content = await contentOf(entry, readAt);
    if (!content) return fail('damaged-ticket', { file, where: name });
    texts.push(new TextDecoder().decode(content));
  }
  return readTicketDocument(texts[0], texts[1], file);
}

async function contentOf(entry: ListedEntry, readAt: ReadAt): Promise<Uint8Array | null> {
  const start = startAfter(await readAt(entry.local, LOCAL_BYTES));
  return start === null ? null : soundContent(await readAt(entry.local + start, entry.packedSize), entry);
}
