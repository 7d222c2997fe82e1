import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { packTicket } from '../../main/document/ticket-archive.ts';
import { withFileLock } from '../../main/files/file-lock.ts';
import { nodeFileSystem } from '../../main/files/file-system.ts';
import type { SessionEvent } from '../../main/files/session-types.ts';
import { temporaryFolder } from '../support/shell/folders.ts';
import { bareTicket, notePatch } from '../support/shell/small-ticket.ts';
import {
  bench,
  expectJournalled,
  journals,
  newTicket,
  notesIn,
  openTicket,
  ticketFiles,
} from '../support/shell/tickets.ts';

test('two benches edit one ticket: both works are kept, each in its own file', async () => {
  const folder = temporaryFolder();
  const [one, two] = [bench(folder, { app: 'app-one' }), bench(folder, { app: 'app-two' })];
  const first = await newTicket(one);
  const { session: second } = await openTicket(two, first.id);
  const told: SessionEvent[] = [];
  second.tell((event) => told.push(event));
  first.patch(0, [notePatch('by the first')]);
  second.patch(0, [notePatch('by the second')]);
  expect(await first.save()).toMatchObject({ ok: true, value: { conflictCopy: null } });
  const saved = await second.save();

  const copy = ticketFiles(folder).find((name) => name !== 'T-1.hmticket') ?? '';
  expect(saved).toMatchObject({ ok: true, value: { conflictCopy: copy } });
  expect(copy).toMatch(/^T-1 \(other version \d{4}-\d{2}-\d{2} \d{4}\)\.hmticket$/);
  expect(notesIn(folder, 'T-1.hmticket')).toBe('by the first');
  expect(notesIn(folder, copy)).toBe('by the second');
  expect(told.find((event) => event.name === 'ticket.saved' && event.state === 'file')).toMatchObject({
    conflictCopy: copy,
  });

  // The second bench goes on in its copy, and does not make one with every save.
  second.patch(1, [notePatch('by the second, later')]);
  expect(await second.save()).toMatchObject({ ok: true });
  expect(ticketFiles(folder)).toHaveLength(2);
  expect(notesIn(folder, copy)).toBe('by the second, later');
  expect(journals(folder, 'app-two')).toEqual([]);
});

test('many saves at once on two benches lose nothing', async () => {
  const folder = temporaryFolder();
  const [one, two] = [bench(folder, { app: 'app-one' }), bench(folder, { app: 'app-two' })];
  const first = await newTicket(one);
  const { session: second } = await openTicket(two, first.id);
  for (let round = 0; round < 6; round++) {
    first.patch(first.revision, [notePatch(`first ${round}`)]);
    second.patch(second.revision, [notePatch(`second ${round}`)]);
    const saves = await Promise.all([first.save(), second.save()]);
    expect(saves.every((save) => save.ok)).toBe(true);
  }
  const notes = ticketFiles(folder).map((name) => notesIn(folder, name));
  expect(notes.sort()).toEqual(['first 5', 'second 5']);
  expect(ticketFiles(folder)).toHaveLength(2);
});

test('the same content from elsewhere is no conflict', async () => {
  const folder = temporaryFolder();
  const session = await newTicket(bench(folder));
  const document = bareTicket();
  document.plan.ticket.notes = 'the same';
  session.patch(0, [notePatch('the same')]);
  writeFileSync(join(folder, 'shelf/T-1.hmticket'), packTicket({ document, photos: new Map() }));
  expect(await session.save()).toMatchObject({ ok: true, value: { conflictCopy: null } });
  expect(ticketFiles(folder)).toEqual(['T-1.hmticket']);
});

test('a file that was deleted elsewhere is written again', async () => {
  const folder = temporaryFolder();
  const session = await newTicket(bench(folder));
  rmSync(join(folder, 'shelf/T-1.hmticket'));
  session.patch(0, [notePatch('still here')]);
  expect(await session.save()).toMatchObject({ ok: true, value: { conflictCopy: null } });
  expect(notesIn(folder, 'T-1.hmticket')).toBe('still here');
});

test('a lock that a dead bench left is broken after its time, a living one is waited for', async () => {
  const folder = temporaryFolder();
  const path = join(folder, 'T-1.hmticket');
  writeFileSync(join(folder, '.T-1.hmticket.lock'), 'left by a dead bench');
  const order: string[] = [];
  await withFileLock(nodeFileSystem, path, async () => void order.push('after the dead one'), 100);
  const slow = withFileLock(nodeFileSystem, path, async () => {
    await new Promise((resolve) => setTimeout(resolve, 150));
    order.push('slow');
  });
  await new Promise((resolve) => setTimeout(resolve, 10));
  await Promise.all([slow, withFileLock(nodeFileSystem, path, async () => void order.push('waited'))]);
  expect(order).toEqual(['after the dead one', 'slow', 'waited']);
});

test('a journal of a run that lives is left alone, one of a dead run is taken over', async () => {
  const folder = temporaryFolder();
  const one = bench(folder);
  const session = await newTicket(one);
  session.patch(0, [notePatch('being written')]);
  await expectJournalled(folder);
  // A second window of the same program on the same ticket must not take what the first one is writing.
  const { session: other, recovered } = await openTicket(one, session.id);
  expect(recovered).toBe(false);
  expect(other.document.plan.ticket.notes).toBe('');
  expect(journals(folder)).toHaveLength(1);
});

test('work whose ticket file is gone comes back as a ticket on the shelf', async () => {
  const folder = temporaryFolder();
  const session = await newTicket(bench(folder));
  session.patch(0, [notePatch('orphaned')]);
  await expectJournalled(folder);
  rmSync(join(folder, 'shelf/T-1.hmticket'));
  // The run died: another one sees its journal under its own process number, open nowhere.
  const next = bench(folder);
  expect(await next.adoptOrphans()).toEqual(['T-1 (recovered).hmticket']);
  expect(notesIn(folder, 'T-1 (recovered).hmticket')).toBe('orphaned');
  expect(journals(folder)).toEqual([]);
});

test('a journal that cannot be replayed is set aside, not thrown away', async () => {
  const folder = temporaryFolder();
  const session = await newTicket(bench(folder));
  session.patch(0, [notePatch('lost to a bad disk')]);
  await expectJournalled(folder);
  const [name] = journals(folder);
  const path = join(folder, 'app/journals', name);
  writeFileSync(path, readFileSync(path, 'utf8').replaceAll('{', '['));
  const opened = await openTicket(bench(folder), session.id);
  expect(opened.recovered).toBe(false);
  expect(journals(folder)).toEqual([`${name}.unreadable`]);
});
