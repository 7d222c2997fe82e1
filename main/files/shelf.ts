import { basename, join, resolve } from 'node:path';
import type { TicketCard } from '../../shared-types/contract.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { type Result, succeed } from '../../shared-types/problem.ts';
import { opaqueId } from './content-hash.ts';
import { attempt, diskCode } from './file-problems.ts';
import type { FileSystem } from './file-system.ts';
import { damagedCard, ticketCard } from './ticket-card.ts';
import { readLargeTicketDocument } from './ticket-document.ts';
import { LARGEST_TICKET, readTicketFile } from './ticket-file.ts';
import { freeName, isTicketName } from './ticket-names.ts';
import { writeExclusively } from './write-atomically.ts';

/** The folder of tickets. Pages name a ticket by its id; only the shelf knows which file that is. */
export type Shelf = {
  readonly folder: string;
  /** Makes a file known (also one outside the folder) and gives its id. */
  register(path: string): string;
  /** Path of a known ticket, or of one that lies in the folder; undefined: no such ticket. */
  find(id: string): Promise<string | undefined>;
  list(): Promise<Result<TicketCard[]>>;
  /** Writes a new ticket under a free name made from the stem, and gives its path. */
  add(stem: string, bytes: Uint8Array): Promise<Result<string>>;
};

type Cached = { size: number; mtimeMs: number; card: TicketCard };

export function createShelf(fs: FileSystem, wantedFolder: string): Shelf {
  const folder = resolve(wantedFolder);
  const paths = new Map<string, string>();
  const cards = new Map<string, Cached>();

  const register = (path: string): string => {
    const id = opaqueId(resolve(path));
    paths.set(id, resolve(path));
    return id;
  };
  const names = () => ticketNames(fs, folder);

  return {
    folder,
    register,
    async find(id) {
      if (!paths.has(id)) for (const name of await names().catch(() => [])) register(join(folder, name));
      return paths.get(id);
    },
    list: () =>
      attempt(basename(folder), async () => {
        const listed: TicketCard[] = [];
        for (const name of await names()) {
          const path = join(folder, name);
          const card = await cardOf(fs, path, register(path), cards.get(path));
          if (card) cards.set(path, card);
          if (card) listed.push(card.card);
        }
        return listed.sort((a, b) => (a.changedAt < b.changedAt ? 1 : -1));
      }),
    add: (stem, bytes) => addToFolder(fs, folder, stem, bytes),
  };
}

/** Writes a new ticket into a folder, under the first free name made from the stem. Gives its path. */
export function addToFolder(fs: FileSystem, folder: string, stem: string, bytes: Uint8Array): Promise<Result<string>> {
  return attempt(stem, async () => {
    for (;;) {
      const path = join(folder, freeName(stem, await ticketNames(fs, folder)));
      try {
        await writeExclusively(fs, path, bytes);
        return path;
      } catch (error) {
        // Another bench took the name in between: look again.
        if (diskCode(error) !== 'EEXIST') throw error;
      }
    }
  });
}

async function ticketNames(fs: FileSystem, folder: string): Promise<string[]> {
  await fs.mkdir(folder, { recursive: true });
  const entries = await fs.readdir(folder, { withFileTypes: true });
  return entries.filter((entry) => !entry.isDirectory() && isTicketName(entry.name)).map((entry) => entry.name);
}

async function cardOf(fs: FileSystem, path: string, id: string, cached?: Cached): Promise<Cached | null> {
  const fileName = basename(path);
  const stat = await fs.stat(path).catch(() => null);
  if (!stat) return null;
  if (cached && cached.size === stat.size && cached.mtimeMs === stat.mtimeMs) return cached;
  const place = { id, fileName, sample: false, changedAt: stat.mtime.toISOString() };
  const read = await readDocumentAt(fs, path, stat.size);
  const card = read.ok ? ticketCard(read.value, place) : damagedCard(place, read.problem);
  return { size: stat.size, mtimeMs: stat.mtimeMs, card };
}

/** So small a file is read whole, with all its checks. */
const SMALL_BYTES = 1024 * 1024;

/** What a card shows, without the photos of a large ticket. Errors: those of the disk and of reading. */
async function readDocumentAt(fs: FileSystem, path: string, size: number): Promise<Result<TicketDocument>> {
  if (size > SMALL_BYTES && size <= LARGEST_TICKET) {
    const read = await attempt(basename(path), () => readLargeTicketDocument(fs, path));
    if (!read.ok) return read;
    if (read.value) return read.value;
  }
  const whole = await readTicketAt(fs, path);
  return whole.ok ? succeed(whole.value.contents.document) : whole;
}

/** A ticket file from the disk, with its bytes. Errors: those of the disk and of `readTicketFile`. */
export async function readTicketAt(fs: FileSystem, path: string) {
  const fileName = basename(path);
  const bytes = await attempt(fileName, async () => {
    const { size } = await fs.stat(path);
    return size > LARGEST_TICKET ? null : new Uint8Array(await fs.readFile(path));
  });
  if (!bytes.ok) return bytes;
  if (!bytes.value)
    return { ok: false as const, problem: { code: 'too-large' as const, file: fileName, detail: { limit: '512 MB' } } };
  const contents = readTicketFile(bytes.value, fileName);
  return contents.ok ? succeed({ contents: contents.value, bytes: bytes.value }) : contents;
}
