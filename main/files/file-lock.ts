import { randomBytes } from 'node:crypto';
import { basename, dirname, join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { diskCode } from './file-problems.ts';
import type { FileSystem } from './file-system.ts';

const PAUSE_MS = 25;
/** A lock is held for the blink of one save; one that stands this long was left by a bench that died. */
export const STALE_AFTER_MS = 10_000;

/**
 * Runs work while no other bench saves the same file. The lock is a small file beside it, made exclusively and removed again.
 * Clocks of other machines are not trusted: a lock is stale when the same one stood for the whole time that we waited.
 */
export async function withFileLock<T>(
  fs: FileSystem,
  path: string,
  work: () => Promise<T>,
  staleAfterMs = STALE_AFTER_MS,
): Promise<T> {
  const lock = join(dirname(path), `.${basename(path)}.lock`);
  const token = randomBytes(12).toString('hex');
  await takeLock(fs, lock, token, staleAfterMs);
  try {
    return await work();
  } finally {
    if ((await contentOf(fs, lock)) === token) await fs.unlink(lock).catch(() => undefined);
  }
}

async function takeLock(fs: FileSystem, lock: string, token: string, staleAfterMs: number): Promise<void> {
  let seen: string | null = null;
  let seenSince = Date.now();
  while (!(await tryLock(fs, lock, token))) {
    const holder = await contentOf(fs, lock);
    if (holder !== seen) {
      seen = holder;
      seenSince = Date.now();
    } else if (holder !== null && Date.now() - seenSince > staleAfterMs) {
      await fs.unlink(lock).catch(() => undefined);
    }
    await wait(PAUSE_MS);
  }
}

async function tryLock(fs: FileSystem, lock: string, token: string): Promise<boolean> {
  const handle = await fs.open(lock, 'wx').catch((error: unknown) => {
    if (diskCode(error) === 'EEXIST') return null;
    throw error;
  });
  if (!handle) return false;
  try {
    await handle.writeFile(token).finally(() => handle.close());
    return true;
  } catch (error) {
    // A full disk takes the name but not the content: no lock may be left behind.
    await fs.unlink(lock).catch(() => undefined);
    throw error;
  }
}

const contentOf = (fs: FileSystem, path: string): Promise<string | null> => fs.readFile(path, 'utf8').catch(() => null);
