import { randomBytes } from 'node:crypto';
import { basename, dirname, join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { diskCode } from './file-problems.ts';
import type { FileSystem } from './file-system.ts';

/** Codes that a virus scanner or an indexer causes while it holds the file for a moment. */
const HELD = new Set(['EPERM', 'EACCES', 'EBUSY']);
const PAUSES_MS = [10, 20, 40, 80, 160, 320, 640];
const NO_LINKS = new Set(['EPERM', 'ENOSYS', 'ENOTSUP', 'EOPNOTSUPP', 'EMLINK']);

const temporaryName = (path: string): string =>
  join(dirname(path), `.${basename(path)}.${process.pid}-${randomBytes(4).toString('hex')}.tmp`);

/**
 * Replaces a file's content as one step: whoever reads sees the old or the new bytes, even after a power cut.
 * When anything fails the old file stands as it was. Errors: those of the disk.
 */
export async function writeAtomically(fs: FileSystem, path: string, bytes: Uint8Array): Promise<void> {
  const target = await fs.realpath(path).catch(() => path);
  await throughTemporary(fs, target, bytes, (temporary) => renameWithPatience(fs, temporary, target));
}

/** As `writeAtomically`, for a name that must be free. Errors: those of the disk; EEXIST when the name is taken. */
export async function writeExclusively(fs: FileSystem, path: string, bytes: Uint8Array): Promise<void> {
  await throughTemporary(fs, path, bytes, async (temporary) => {
    try {
      await fs.link(temporary, path);
      await fs.unlink(temporary);
    } catch (error) {
      if (!NO_LINKS.has(diskCode(error) ?? '')) throw error;
      // Disks without links: claim the name with an empty file, then put the full one in its place.
      await (await fs.open(path, 'wx')).close();
      await renameWithPatience(fs, temporary, path);
    }
  });
}

async function throughTemporary(
  fs: FileSystem,
  path: string,
  bytes: Uint8Array,
  place: (temporary: string) => Promise<void>,
): Promise<void> {
  const temporary = temporaryName(path);
  try {
    await writeAndSync(fs, temporary, bytes);
    await place(temporary);
  } catch (error) {
    await fs.unlink(temporary).catch(() => undefined);
    throw error;
  }
  await syncFolder(fs, dirname(path));
}

async function writeAndSync(fs: FileSystem, path: string, bytes: Uint8Array): Promise<void> {
  const handle = await fs.open(path, 'wx');
  try {
    await handle.writeFile(bytes);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

async function renameWithPatience(fs: FileSystem, from: string, to: string): Promise<void> {
  for (const pause of PAUSES_MS) {
    try {
      return await fs.rename(from, to);
    } catch (error) {
      if (!HELD.has(diskCode(error) ?? '')) throw error;
      await wait(pause);
    }
  }
  await fs.rename(from, to);
}

/** Makes the new name itself durable; systems that cannot open a folder do it on their own. */
async function syncFolder(fs: FileSystem, folder: string): Promise<void> {
  try {
    const handle = await fs.open(folder, 'r');
    await handle.sync().finally(() => handle.close());
  } catch {
    // Windows refuses; the rename is journaled by the file system there.
  }
}
