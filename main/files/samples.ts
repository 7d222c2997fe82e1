import { join } from 'node:path';
import type { TicketCard } from '../../shared-types/contract.ts';
import { BOARD_EXTENSION } from '../../shared-types/format-version.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { type Result, succeed } from '../../shared-types/problem.ts';
import { readBoard, readPlan } from '../document/open-document.ts';
import { opaqueId } from './content-hash.ts';
import { attempt } from './file-problems.ts';
import type { FileSystem } from './file-system.ts';
import { damagedCard, ticketCard } from './ticket-card.ts';

const PLAN_EXTENSION = '.plan.json';

/** The pairs of NAME.board.json and NAME.plan.json that lie beside the program. */
export type Samples = {
  list(): Promise<TicketCard[]>;
  /** Null: no such sample. Errors: those of the disk and of reading. */
  read(id: string): Promise<Result<TicketDocument> | null>;
};

export function createSamples(fs: FileSystem, folder: string): Samples {
  const stems = async (): Promise<string[]> => {
    const names = await fs.readdir(folder).catch((): string[] => []);
    const boards = names.filter((name) => name.endsWith(BOARD_EXTENSION));
    const found = boards.map((name) => name.slice(0, -BOARD_EXTENSION.length));
    return found.filter((stem) => names.includes(stem + PLAN_EXTENSION)).sort();
  };
  const idOf = (stem: string) => opaqueId(`sample:${stem}`);
  return {
    async list() {
      const cards: TicketCard[] = [];
      for (const stem of await stems()) {
        const stat = await fs.stat(join(folder, stem + BOARD_EXTENSION)).catch(() => null);
        const changedAt = (stat?.mtime ?? new Date(0)).toISOString();
        const place = { id: idOf(stem), fileName: stem, sample: true, changedAt };
        const read = await readPair(fs, folder, stem);
        cards.push(read.ok ? ticketCard(read.value, place) : damagedCard(place, read.problem));
      }
      return cards;
    },
    async read(id) {
      const stem = (await stems()).find((candidate) => idOf(candidate) === id);
      return stem === undefined ? null : readPair(fs, folder, stem);
    },
  };
}

async function readPair(fs: FileSystem, folder: string, stem: string): Promise<Result<TicketDocument>> {
  const text = (name: string) => attempt(name, () => fs.readFile(join(folder, name), 'utf8'));
  const boardText = await text(stem + BOARD_EXTENSION);
  if (!boardText.ok) return boardText;
  const planText = await text(stem + PLAN_EXTENSION);
  if (!planText.ok) return planText;
  const board = readBoard(boardText.value, stem + BOARD_EXTENSION);
  if (!board.ok) return board;
  const plan = readPlan(planText.value, stem + PLAN_EXTENSION);
  return plan.ok ? succeed({ board: board.value, plan: plan.value }) : plan;
}
