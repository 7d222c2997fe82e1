import { join } from 'node:path';
import type { TicketCard } from '../../shared-types/contract.ts';
import { TICKET_EXTENSION } from '../../shared-types/format-version.ts';
import type { Result } from '../../shared-types/problem.ts';
import type { TicketContents } from '../document/ticket-archive.ts';
import { opaqueId } from './content-hash.ts';
import { attempt } from './file-problems.ts';
import type { FileSystem } from './file-system.ts';
import { damagedCard, ticketCard } from './ticket-card.ts';
import { readTicketFile } from './ticket-file.ts';

/** The tickets that lie beside the program. */
export type Samples = {
  list(): Promise<TicketCard[]>;
  /** Null: no such sample. Errors: those of the disk and of reading. */
  read(id: string): Promise<Result<TicketContents> | null>;
};

export function createSamples(fs: FileSystem, folder: string): Samples {
  const files = async (): Promise<string[]> => {
    const names = await fs.readdir(folder).catch((): string[] => []);
    return names.filter((name) => name.endsWith(TICKET_EXTENSION)).sort();
  };
  const idOf = (name: string) => opaqueId(`sample:${name}`);
  return {
    async list() {
      const cards: TicketCard[] = [];
      for (const name of await files()) {
        const stat = await fs.stat(join(folder, name)).catch(() => null);
        const changedAt = (stat?.mtime ?? new Date(0)).toISOString();
        const fileName = name.slice(0, -TICKET_EXTENSION.length);
        const place = { id: idOf(name), fileName, sample: true, changedAt };
        const read = await readSample(fs, folder, name);
        cards.push(read.ok ? ticketCard(read.value.document, place) : damagedCard(place, read.problem));
      }
      return cards;
    },
    async read(id) {
      const name = (await files()).find((candidate) => idOf(candidate) === id);
      return name === undefined ? null : readSample(fs, folder, name);
    },
  };
}

async function readSample(fs: FileSystem, folder: string, name: string): Promise<Result<TicketContents>> {
  const bytes = await attempt(name, async () => new Uint8Array(await fs.readFile(join(folder, name))));
  return bytes.ok ? readTicketFile(bytes.value, name) : bytes;
}
