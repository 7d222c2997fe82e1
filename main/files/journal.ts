import { randomBytes } from 'node:crypto';
import { join } from 'node:path';
import { opaqueId } from './content-hash.ts';
import type { FileSystem } from './file-system.ts';
import { JOURNAL_FORMAT, JOURNAL_VERSION, type JournalEntry, journalLine } from './journal-lines.ts';
import { journalName } from './journal-owner.ts';

/** The journal of one open ticket. It has a file only while there is something that the ticket's file lacks. */
export type Journal = {
  readonly path: string | null;
  /** Writes entries and waits until they lie on the disk. Errors: those of the disk; nothing counts as written then. */
  append(entries: readonly JournalEntry[]): Promise<void>;
  /** Tells other instances that this one still lives. */
  beat(now: Date): Promise<void>;
  remove(): Promise<void>;
};

export type JournalPlace = {
  fs: FileSystem;
  folder: string;
  /** The ticket's file and its content at the moment in which a journal begins. */
  origin(): { ticketPath: string; baseHash: string };
};

/** A journal in the app's own folder; `existing` is one taken over from a run that died. */
export function createJournal(place: JournalPlace, existing: string | null = null): Journal {
  const { fs, folder } = place;
  let path = existing;
  /** Length of what surely lies on the disk; whatever a failed write left behind it is cut off or passed over. */
  let soundBytes: number | null = null;

  const begin = async (): Promise<string> => {
    await fs.mkdir(folder, { recursive: true });
    const { ticketPath, baseHash } = place.origin();
    const started = join(folder, journalName(opaqueId(ticketPath), randomBytes(4).toString('hex')));
    const header = { kind: 'header', format: JOURNAL_FORMAT, version: JOURNAL_VERSION } as const;
    try {
      soundBytes = await appendDurably(fs, started, journalLine({ ...header, path: ticketPath, baseHash }));
    } catch (error) {
      await fs.unlink(started).catch(() => undefined);
      throw error;
    }
    return started;
  };

  return {
    get path() {
      return path;
    },
    async append(entries) {
      path ??= await begin();
      try {
        soundBytes = await appendDurably(fs, path, entries.map(journalLine).join(''));
      } catch (error) {
        if (soundBytes !== null) await fs.truncate(path, soundBytes).catch(() => undefined);
        throw error;
      }
    },
    async beat(now) {
      if (path) await fs.utimes(path, now, now).catch(() => undefined);
    },
    async remove() {
      const finished = path;
      path = null;
      soundBytes = null;
      if (finished) await fs.unlink(finished).catch(() => undefined);
    },
  };
}

/** Appends and syncs; gives the length of the file afterwards. */
async function appendDurably(fs: FileSystem, path: string, text: string): Promise<number> {
  const handle = await fs.open(path, 'a', 0o600);
  try {
    await handle.appendFile(text);
    await handle.sync();
    return (await handle.stat()).size;
  } finally {
    await handle.close();
  }
}
