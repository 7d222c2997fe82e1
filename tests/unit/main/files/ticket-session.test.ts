import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { nodeFileSystem } from '../../../../main/files/file-system.ts';
import { replayJournal } from '../../../../main/files/journal-replay.ts';
import type { SessionEvent } from '../../../../main/files/session-types.ts';
import { temporaryFolder } from '../../../support/shell/folders.ts';
import { bareTicket, notePatch, smallPart } from '../../../support/shell/small-ticket.ts';
import { bench, journals, newTicket, notesIn, openTicket } from '../../../support/shell/tickets.ts';

test('patches raise the revision one by one; another base is a gap and changes nothing', async () => {
  const session = await newTicket(bench(temporaryFolder()));
  expect(session.patch(0, [notePatch('a')])).toEqual({ ok: true, value: { revision: 1, gap: false } });
  expect(session.patch(0, [notePatch('b')])).toEqual({ ok: true, value: { revision: 1, gap: true } });
  expect(session.patch(1, [{ op: 'replace', path: ['plan', 'sites', 9, 'name'], value: 'x' }])).toEqual({
    ...{ ok: true, value: { revision: 1, gap: true } },
  });
  expect(session.document.plan.ticket.notes).toBe('a');
  expect(session.replace(bareTicket('T-2'))).toEqual({ ok: true, value: { revision: 2 } });
});

test.each([
  ['a field that does not fit', ['board', 'parts', 0, 'x'], 'wide'],
  ['a field that nobody knows', ['plan', 'colour'], 'red'],
  ['a format of its own', ['board', 'format'], 'other'],
  ['a second part of one name', ['board', 'parts', 1], smallPart('U1', 30, 10, 2, 2)],
  ['an outline that crosses itself', ['board', 'outline', 1], { x: 20, y: 40 }],
  ['a place beside board and plan', ['other'], {}],
  ['nothing of the document left', [], 'gone'],
])('a patch with %s is refused and changes nothing', async (_name, path, value) => {
  const session = await newTicket(bench(temporaryFolder()));
  const before = session.document;
  const refused = session.patch(0, [{ op: 'replace', path, value }]);
  expect(refused).toMatchObject({ ok: false, problem: { code: 'invalid-field' } });
  expect(session.document).toBe(before);
  expect(session.revision).toBe(0);
  expect(session.unsaved).toBe(false);
});

test('no patch reaches a prototype', async () => {
  const session = await newTicket(bench(temporaryFolder()));
  session.patch(0, [{ op: 'add', path: ['plan', '__proto__', 'polluted'], value: 1 }]);
  session.patch(0, [{ op: 'add', path: ['plan', 'constructor', 'prototype', 'polluted'], value: 1 }]);
  expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  expect(session.revision).toBe(0);
});

test('the journal has the patch within a second, the file at rest, and then the journal goes', async () => {
  const folder = temporaryFolder();
  const session = await newTicket(bench(folder, { pauses: { journalAfterMs: 200, saveAfterMs: 600 } }));
  const told: [string, number][] = [];
  const started = performance.now();
  session.tell((event: SessionEvent) => {
    if (event.name === 'ticket.saved') told.push([event.state, performance.now() - started]);
  });
  session.patch(0, [notePatch('kept')]);
  await expect.poll(() => told.map(([state]) => state), { timeout: 5000 }).toEqual(['journal', 'file']);
  expect(told[0][1]).toBeLessThan(1000);
  expect(notesIn(folder, 'T-1.hmticket')).toBe('kept');
  expect(journals(folder)).toEqual([]);
});

test('edits made while the file is being saved are in the journal, not lost with it', async () => {
  const folder = temporaryFolder();
  let duringSave: (() => void) | null = null;
  const fs: typeof nodeFileSystem = {
    ...nodeFileSystem,
    async rename(from, to) {
      duringSave?.();
      duringSave = null;
      await nodeFileSystem.rename(from, to);
    },
  };
  const session = await newTicket(bench(folder, { fs }));
  session.patch(0, [notePatch('one')]);
  duringSave = () => void session.patch(1, [notePatch('two')]);
  await session.save();
  expect(session.unsaved).toBe(true);
  await expect.poll(() => journalNotes(folder)).toBe('two');
  expect(notesIn(folder, 'T-1.hmticket')).toBe('one');
  expect(await session.close()).toMatchObject({ ok: true });
  expect(notesIn(folder, 'T-1.hmticket')).toBe('two');
});

const journalNotes = (folder: string) => {
  const [name] = journals(folder);
  return name && replayJournal(readFileSync(join(folder, 'app/journals', name), 'utf8'))?.document.plan.ticket.notes;
};

test('a ticket from elsewhere is edited where it lies', async () => {
  const folder = temporaryFolder();
  const elsewhere = temporaryFolder();
  const made = bench(elsewhere);
  await (await newTicket(made, 'T-5')).close();
  const tickets = bench(folder);
  const id = tickets.shelf.register(join(elsewhere, 'shelf/T-5.hmticket'));
  const { session } = await openTicket(tickets, id);
  session.patch(0, [notePatch('in place')]);
  await session.close();
  expect(notesIn(elsewhere, 'T-5.hmticket')).toBe('in place');
  expect(readdirSync(folder)).not.toContain('shelf');
});

test('earlier versions are kept in the app folder and open as tickets of their own', async () => {
  const folder = temporaryFolder();
  const tickets = bench(folder);
  const session = await newTicket(tickets);
  session.patch(0, [notePatch('second')]);
  await session.save();
  session.patch(1, [notePatch('third')]);
  await session.save();
  const versions = await tickets.versions.list(session.path);
  expect(versions).toHaveLength(1);
  const earlier = await tickets.openVersion(session.id, versions[0].id);
  expect(earlier.ok && earlier.value.session.document.plan.ticket.notes).toBe('');
  expect(earlier.ok && earlier.value.session.path).toMatch(/T-1 \(earlier \d{4}-\d\d-\d\d \d{4}\)\.hmticket$/);
  expect(notesIn(folder, 'T-1.hmticket')).toBe('third');
  expect(readdirSync(join(folder, 'shelf')).filter((name) => !name.endsWith('.hmticket'))).toEqual([]);
});

test('a removed ticket leaves the shelf and is kept in the app folder', async () => {
  const folder = temporaryFolder();
  const tickets = bench(folder);
  const session = await newTicket(tickets);
  await session.close();
  expect(await tickets.remove(session.id)).toEqual({ ok: true, value: {} });
  expect(readdirSync(join(folder, 'shelf'))).toEqual([]);
  expect(readdirSync(join(folder, 'app/removed'))).toEqual(['T-1.hmticket']);
  expect(await tickets.open(session.id)).toMatchObject({ ok: false, problem: { code: 'not-found' } });
});
