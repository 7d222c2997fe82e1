import { join } from 'node:path';
import type { TicketVersion } from '../../shared-types/contract.ts';
import { contentHash, opaqueId } from './content-hash.ts';
import type { FileSystem } from './file-system.ts';
import { writeExclusively } from './write-atomically.ts';

/**
 * Earlier versions of tickets, in the app's own folder: one at most every ten minutes, the newest forty, and of tickets with large
 * photos no more than fit into a gigabyte.
 */
export type Versions = {
  /** Keeps bytes that are about to be replaced, unless a version of the last ten minutes stands. */
  keep(path: string, bytes: Uint8Array): Promise<void>;
  list(path: string): Promise<TicketVersion[]>;
  read(path: string, versionId: string): Promise<Uint8Array | undefined>;
};

const LEAST_GAP_MS = 10 * 60 * 1000;
const MOST_KEPT = 40;
const MOST_BYTES = 1024 * 1024 * 1024;
const NAME = /^(\d{13})-([0-9a-f]{12})\.hmticket$/;

export function createVersions(fs: FileSystem, folder: string, now: () => Date, mostBytes = MOST_BYTES): Versions {
  const folderOf = (path: string) => join(folder, opaqueId(path));
  /** Names, oldest first. */
  const names = async (path: string): Promise<string[]> => {
    const found = await fs.readdir(folderOf(path)).catch((): string[] => []);
    return found.filter((name) => NAME.test(name)).sort();
  };
  return {
    async keep(path, bytes) {
      const kept = await names(path);
      const newest = kept.at(-1);
      const hash = contentHash(bytes).slice(0, 12);
      const at = now().getTime();
      if (newest && (newest.includes(hash) || at - Number(NAME.exec(newest)?.[1]) < LEAST_GAP_MS)) return;
      await fs.mkdir(folderOf(path), { recursive: true });
      await writeExclusively(fs, join(folderOf(path), `${String(at).padStart(13, '0')}-${hash}.hmticket`), bytes);
      let room = mostBytes - bytes.byteLength;
      for (const [index, name] of [...kept].reverse().entries()) {
        const place = join(folderOf(path), name);
        room -= (await fs.stat(place).catch(() => ({ size: 0 }))).size;
        if (index + 1 >= MOST_KEPT || room < 0) await fs.unlink(place).catch(() => undefined);
      }
    },
    async list(path) {
      const kept = await names(path);
      return kept.reverse().map((id) => ({ id, savedAt: new Date(Number(NAME.exec(id)?.[1])).toISOString() }));
    },
    async read(path, versionId) {
      if (!(await names(path)).includes(versionId)) return undefined;
      return new Uint8Array(await fs.readFile(join(folderOf(path), versionId)));
    },
  };
}
