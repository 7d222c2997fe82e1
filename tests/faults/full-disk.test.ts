import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { replayJournal } from '../../main/files/journal-replay.ts';
import type { SessionEvent } from '../../main/files/session-types.ts';
import { temporaryFolder } from '../support/shell/folders.ts';
import { faultyDisk } from '../support/shell/full-disk.ts';
import { notePatch } from '../support/shell/small-ticket.ts';
import { bench, journals, newTicket, notesIn, openTicket, ticketFiles } from '../support/shell/tickets.ts';

const isTicketFile = (path: string) => path.includes('.hmticket');
const isJournal = (path: string) => path.endsWith('.journal');

test('the ticket file cannot be written: the old one stands, the edit is in the journal, the user is told once', async () => {
  const folder = temporaryFolder();
  const disk = faultyDisk();
  const tickets = bench(folder, { fs: disk.fs });
  const session = await newTicket(tickets);
  const told: SessionEvent[] = [];
  session.tell((event) => told.push(event));
  disk.refuse = (path) => (isTicketFile(path) && !path.includes('versions') ? 'ENOSPC' : null);
  session.patch(0, [notePatch('while the disk is full')]);

  expect(await session.save()).toMatchObject({ ok: false, problem: { code: 'disk-full', file: 'T-1.hmticket' } });
  expect(await session.save()).toMatchObject({ ok: false, problem: { code: 'disk-full' } });
  expect(told.filter((event) => event.name === 'ticket.problem')).toHaveLength(1);
  expect(notesIn(folder, 'T-1.hmticket')).toBe('');
  expect(ticketFiles(folder)).toEqual(['T-1.hmticket']);
  expect(journals(folder)).toHaveLength(1);

  disk.refuse = null;
  await expect.poll(() => notesIn(folder, 'T-1.hmticket'), { timeout: 5000 }).toBe('while the disk is full');
  await expect.poll(() => journals(folder)).toEqual([]);
});

test('nothing can be written at all: the edits stay in memory and reach the disk when it has room again', async () => {
  const folder = temporaryFolder();
  const disk = faultyDisk();
  const tickets = bench(folder, { fs: disk.fs });
  const session = await newTicket(tickets);
  const told: SessionEvent[] = [];
  session.tell((event) => told.push(event));
  disk.refuse = () => 'ENOSPC';
  session.patch(0, [notePatch('one')]);
  await expect.poll(() => told.some((event) => event.name === 'ticket.problem')).toBe(true);
  session.patch(1, [notePatch('two')]);
  expect(await tickets.release(session)).toMatchObject({ code: 'disk-full' });

  // The window was closed; a new one finds the ticket as it was left.
  const again = await openTicket(tickets, session.id);
  expect(again.session.document.plan.ticket.notes).toBe('two');
  disk.refuse = null;
  expect(await again.session.close()).toMatchObject({ ok: true });
  expect(notesIn(folder, 'T-1.hmticket')).toBe('two');
});

test('a journal write that broke off half-way is cut off, and the next one is whole', async () => {
  const folder = temporaryFolder();
  const disk = faultyDisk();
  const session = await newTicket(bench(folder, { fs: disk.fs }));
  session.patch(0, [notePatch('one')]);
  await expect.poll(() => journals(folder)).toHaveLength(1);
  disk.refuse = (path) => (isJournal(path) ? 'ENOSPC' : null);
  session.patch(1, [notePatch('two')]);
  await new Promise((resolve) => setTimeout(resolve, 50));
  disk.refuse = null;
  session.patch(2, [notePatch('three')]);
  const written = new Promise<void>((resolve) =>
    session.tell((event) => {
      if (event.name === 'ticket.saved' && event.revision === 3) resolve();
    }),
  );
  await written;

  const text = readFileSync(join(folder, 'app/journals', journals(folder)[0]), 'utf8');
  expect(replayJournal(text)).toMatchObject({ revision: 3, document: { plan: { ticket: { notes: 'three' } } } });
  expect(
    text
      .split('\n')
      .slice(1)
      .every((line) => /^[0-9a-f]{8} \{.*\}$/.test(line)),
  ).toBe(true);
});

test('an earlier version that cannot be kept is told, and does not stop the saving', async () => {
  const folder = temporaryFolder();
  const disk = faultyDisk();
  const session = await newTicket(bench(folder, { fs: disk.fs }));
  const told: SessionEvent[] = [];
  session.tell((event) => told.push(event));
  disk.refuse = (path) => (path.includes('versions') ? 'ENOSPC' : null);
  session.patch(0, [notePatch('saved')]);
  expect(await session.save()).toMatchObject({ ok: true });
  expect(notesIn(folder, 'T-1.hmticket')).toBe('saved');
  expect(told.map((event) => event.name)).toContain('ticket.problem');
});

test('a folder that may not be written says so', async () => {
  const folder = temporaryFolder();
  const disk = faultyDisk();
  const tickets = bench(folder, { fs: disk.fs });
  const session = await newTicket(tickets);
  disk.refuse = (path) => (isTicketFile(path) ? 'EROFS' : null);
  session.patch(0, [notePatch('x')]);
  expect(await session.save()).toMatchObject({ ok: false, problem: { code: 'not-allowed', file: 'T-1.hmticket' } });
  disk.refuse = null;
});
