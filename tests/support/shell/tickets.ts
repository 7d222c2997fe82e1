import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, onTestFinished } from 'vitest';
import { unpackTicket } from '../../../main/document/ticket-archive.ts';
import { type FileSystem, nodeFileSystem } from '../../../main/files/file-system.ts';
import type { TicketSession } from '../../../main/files/session-types.ts';
import { createTickets, newTicketBytes, type Tickets } from '../../../main/files/tickets.ts';
import { bareTicket } from './small-ticket.ts';

const PAUSES = { journalAfterMs: 5, saveAfterMs: 60_000, retryAfterMs: 20 };

/** The tickets of one bench: shelf and app folder below `folder`, or an app folder of its own on a shared shelf. */
export function bench(
  folder: string,
  options: { app?: string; fs?: FileSystem; pauses?: Partial<typeof PAUSES>; now?: () => Date } = {},
): Tickets {
  const tickets = createTickets({
    fs: options.fs ?? nodeFileSystem,
    shelfFolder: join(folder, 'shelf'),
    appFolder: join(folder, options.app ?? 'app'),
    now: options.now,
    pauses: { ...PAUSES, ...options.pauses },
  });
  onTestFinished(async () => {
    await tickets.closeAll().catch(() => undefined);
  });
  return tickets;
}

export async function newTicket(tickets: Tickets, number = 'T-1'): Promise<TicketSession> {
  const opened = await tickets.create(number, newTicketBytes(bareTicket(number)), true);
  if (!opened.ok) throw new Error(opened.problem.code);
  return opened.value.session;
}

export async function openTicket(tickets: Tickets, id: string) {
  const opened = await tickets.open(id);
  if (!opened.ok) throw new Error(opened.problem.code);
  return opened.value;
}

export const ticketFiles = (folder: string): string[] => readdirSync(join(folder, 'shelf')).sort();
export const journals = (folder: string, app = 'app'): string[] => {
  try {
    return readdirSync(join(folder, app, 'journals'));
  } catch {
    return [];
  }
};

/** The notes in a ticket's file: what a test edits. */
export function notesIn(folder: string, name: string): string {
  const read = unpackTicket(new Uint8Array(readFileSync(join(folder, 'shelf', name))), name);
  return read.ok ? read.value.document.plan.ticket.notes : read.problem.code;
}

export const expectJournalled = (folder: string, app = 'app') =>
  expect.poll(() => journals(folder, app).length, { timeout: 5000 }).toBe(1);
