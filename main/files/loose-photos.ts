import { join } from 'node:path';
import { contentHash } from './content-hash.ts';
import { diskCode } from './file-problems.ts';
import type { FileSystem } from './file-system.ts';
import { writeExclusively } from './write-atomically.ts';

/**
 * Pictures that came in but lie in no ticket's file yet, by their hash, in the app's own folder: a journal names them, so a crash
 * before the next saving loses none.
 */
export type LoosePhotos = {
  /** Keeps a picture until no journal names it. Errors: those of the disk. */
  keep(sha256: string, bytes: Uint8Array): Promise<void>;
  /** Undefined: it is not here, or not whole. */
  read(sha256: string): Promise<Uint8Array | undefined>;
  /** Takes away what no journal names and what did not just come in. */
  sweep(): Promise<void>;
};

const HASH = /^[0-9a-f]{64}$/;
/** A picture comes in a moment before the patch that names it. */
const NEW_FOR_MS = 10 * 60 * 1000;

export function createLoosePhotos(fs: FileSystem, folder: string, journalFolder: string, now: () => Date): LoosePhotos {
  return {
    async keep(sha256, bytes) {
      await fs.mkdir(folder, { recursive: true });
      const path = join(folder, sha256);
      try {
        await writeExclusively(fs, path, bytes);
      } catch (error) {
        if (diskCode(error) !== 'EEXIST') throw error;
        await fs.utimes(path, now(), now());
      }
    },
    async read(sha256) {
      const bytes = await fs.readFile(join(folder, sha256)).catch(() => null);
      return bytes && contentHash(bytes) === sha256 ? new Uint8Array(bytes) : undefined;
    },
    async sweep() {
      const kept = (await namesIn(fs, folder)).filter((name) => HASH.test(name));
      if (kept.length === 0) return;
      const journals = await Promise.all(
        (await namesIn(fs, journalFolder)).map((name) =>
          fs.readFile(join(journalFolder, name), 'utf8').catch(() => ''),
        ),
      );
      for (const name of kept) {
        const path = join(folder, name);
        const stat = await fs.stat(path).catch(() => null);
        const isNew = stat !== null && now().getTime() - stat.mtimeMs < NEW_FOR_MS;
        if (!isNew && !journals.some((text) => text.includes(name))) await fs.unlink(path).catch(() => undefined);
      }
    },
  };
}

const namesIn = (fs: FileSystem, folder: string): Promise<string[]> => fs.readdir(folder).catch((): string[] => []);
