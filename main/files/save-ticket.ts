import { basename, dirname } from 'node:path';
import { type Problem, type Result, succeed } from '../../shared-types/problem.ts';
import { contentHash } from './content-hash.ts';
import { withFileLock } from './file-lock.ts';
import { attempt, diskCode, fileProblem } from './file-problems.ts';
import type { FileSystem } from './file-system.ts';
import { addToFolder } from './shelf.ts';
import { conflictStem } from './ticket-names.ts';
import type { Versions } from './versions.ts';
import { writeAtomically } from './write-atomically.ts';

/** `hash`: of the bytes, which a large ticket is not asked for twice; `fileHash`: of the file as read or written last. */
export type SaveRequest = { path: string; bytes: Uint8Array; hash: string; fileHash: string };
/** `path` is another one when the file was changed elsewhere: then both are kept, and work goes on in the copy. */
export type Saved = { path: string; conflict: boolean; versionProblem: Problem | null };
export type SavePlace = { fs: FileSystem; versions: Versions; now: () => Date };

/**
 * Writes a ticket over its file, if the file still is what this bench read or wrote last; else beside it. Nobody's work is replaced
 * unseen: content is compared under a lock that every bench takes. Errors: those of the disk.
 */
export async function saveTicket(place: SavePlace, request: SaveRequest): Promise<Result<Saved>> {
  const { fs } = place;
  const { path, bytes, hash, fileHash } = request;
  const saved = await attempt(basename(path), () =>
    withFileLock(fs, path, async (): Promise<Result<Saved>> => {
      const present = await presentBytes(fs, path);
      const presentHash = present && contentHash(present);
      if (presentHash === hash) return succeed({ path, conflict: false, versionProblem: null });
      if (presentHash !== null && presentHash !== fileHash) return keepBoth(place, request);
      const versionProblem = present && (await keepVersion(place.versions, path, present));
      await writeAtomically(fs, path, bytes);
      return succeed({ path, conflict: false, versionProblem });
    }),
  );
  return saved.ok ? saved.value : saved;
}

async function keepBoth({ fs, now }: SavePlace, { path, bytes }: SaveRequest): Promise<Result<Saved>> {
  const copy = await addToFolder(fs, dirname(path), conflictStem(basename(path), now()), bytes);
  return copy.ok ? succeed({ path: copy.value, conflict: true, versionProblem: null }) : copy;
}

/** Null when the file is gone: it is then simply written again. */
async function presentBytes(fs: FileSystem, path: string): Promise<Uint8Array | null> {
  try {
    return new Uint8Array(await fs.readFile(path));
  } catch (error) {
    if (diskCode(error) === 'ENOENT') return null;
    throw error;
  }
}

/** A version that cannot be kept is told, but never stands in the way of saving. */
async function keepVersion(versions: Versions, path: string, bytes: Uint8Array): Promise<Problem | null> {
  try {
    await versions.keep(path, bytes);
    return null;
  } catch (error) {
    return fileProblem(error, basename(path));
  }
}
