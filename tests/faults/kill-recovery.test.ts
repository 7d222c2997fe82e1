import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { writeBoard } from '../../main/document/open-document.ts';
import { packTicket, unpackTicket } from '../../main/document/ticket-archive.ts';
import type { MainEvent } from '../../shared-types/contract.ts';
import { builtPart } from '../support/shell/build-main.ts';
import { runDoor } from '../support/shell/door.ts';
import { temporaryFolder } from '../support/shell/folders.ts';
import { eventLog } from '../support/shell/program.ts';
import { bareTicket, notePatch, smallBoard } from '../support/shell/small-ticket.ts';

const mainFolder = builtPart('main');

const isJournalled = (event: MainEvent): event is Extract<MainEvent, { name: 'ticket.saved' }> =>
  event.name === 'ticket.saved' && event.state === 'journal';

/** Opens a ticket in a real process, edits it, waits for the journal, and kills the process. */
async function editAndKill(folder: string, note: string) {
  const door = await runDoor(mainFolder(), folder);
  const backend = await door.connect();
  const log = eventLog();
  backend.listen(log.hear);
  const opened = await backend.request('ticket.new', { number: 'T-1', document: bareTicket() });
  if (!opened.ok) throw new Error(opened.problem.code);
  const { id } = opened.value;
  const started = performance.now();
  await backend.request('ticket.patch', { id, base: 0, patches: [notePatch('first')] });
  await backend.request('ticket.patch', { id, base: 1, patches: [notePatch(note)] });
  await log.find(isJournalled);
  const journalledAfterMs = performance.now() - started;
  await door.end('SIGKILL');
  return { id, journalledAfterMs };
}

const noteInFile = (folder: string, name: string) => {
  const read = unpackTicket(new Uint8Array(readFileSync(join(folder, 'shelf', name))), name);
  return read.ok ? read.value.document.plan.ticket.notes : read.problem.code;
};

test('kill -9 after an edit: the next start takes the edit over, and saves it', async () => {
  const folder = temporaryFolder();
  const { id, journalledAfterMs } = await editAndKill(folder, 'the edit before the crash');
  expect(journalledAfterMs).toBeLessThan(1000);
  expect(noteInFile(folder, 'T-1.hmticket')).toBe('');

  const door = await runDoor(mainFolder(), folder);
  const backend = await door.connect();
  const opened = await backend.request('ticket.open', { id });
  expect(opened).toMatchObject({ ok: true, value: { recovered: true, revision: 2 } });
  expect(opened.ok && opened.value.document.plan.ticket.notes).toBe('the edit before the crash');
  expect(await backend.request('ticket.close', { id })).toMatchObject({ ok: true });
  expect(noteInFile(folder, 'T-1.hmticket')).toBe('the edit before the crash');
  expect(readdirSync(join(folder, 'app/journals'))).toEqual([]);
  expect(await door.end('SIGTERM')).toBe(0);
}, 30_000);

test('SIGTERM saves what is open before the process ends', async () => {
  const folder = temporaryFolder();
  const door = await runDoor(mainFolder(), folder);
  const backend = await door.connect();
  const opened = await backend.request('ticket.new', { number: 'T-1', document: bareTicket() });
  if (!opened.ok) throw new Error(opened.problem.code);
  await backend.request('ticket.patch', { id: opened.value.id, base: 0, patches: [notePatch('just now')] });
  expect(await door.end('SIGTERM')).toBe(0);
  expect(noteInFile(folder, 'T-1.hmticket')).toBe('just now');
}, 30_000);

test('a ticket named on the command line is edited where it lies, a board becomes a ticket on the shelf', async () => {
  const folder = temporaryFolder();
  const ticketPath = join(folder, 'elsewhere.hmticket');
  writeFileSync(ticketPath, packTicket({ document: bareTicket(), photos: new Map() }));
  const door = await runDoor(mainFolder(), folder, [ticketPath]);
  const backend = await door.connect();
  const about = await backend.request('about.read', {});
  const id = about.ok ? about.value.startTicket : null;
  expect(await backend.request('ticket.open', { id: id ?? '' })).toMatchObject({ ok: true });
  await backend.request('ticket.patch', { id: id ?? '', base: 0, patches: [notePatch('in place')] });
  expect(await door.end('SIGTERM')).toBe(0);
  const read = unpackTicket(new Uint8Array(readFileSync(ticketPath)), 'elsewhere.hmticket');
  expect(read.ok && read.value.document.plan.ticket.notes).toBe('in place');

  const boardPath = join(folder, 'Gate 7.board.json');
  writeFileSync(boardPath, writeBoard(smallBoard()));
  const second = await runDoor(mainFolder(), folder, [boardPath]);
  const told = await (await second.connect()).request('about.read', {});
  expect(told.ok && told.value.startTicket).toMatch(/^[\w-]{22}$/);
  expect(readdirSync(join(folder, 'shelf'))).toEqual(['Gate 7.hmticket']);
  await second.end('SIGTERM');

  const third = await runDoor(mainFolder(), folder, [join(folder, 'absent.board.json')]);
  const missing = await (await third.connect()).request('about.read', {});
  expect(missing).toMatchObject({
    ...{ ok: true, value: { startTicket: null, startProblems: [{ code: 'not-found', file: 'absent.board.json' }] } },
  });
  await third.end('SIGTERM');
}, 30_000);

test('a drawing named on the command line becomes a ticket, and the window is told what the import guessed', async () => {
  const folder = temporaryFolder();
  const path = join(folder, 'places.csv');
  writeFileSync(path, 'Ref,Val,Package,PosX,PosY,Rot,Side\nR1,1k,R0402,5,5,0,top\nU1,MCU,QFN-32,15,10,90,top\n');
  const door = await runDoor(mainFolder(), folder, [path]);
  const about = await (await door.connect()).request('about.read', {});
  expect(about).toMatchObject({ ok: true, value: { startTicket: expect.any(String), startProblems: [] } });
  expect(about.ok && about.value.startNotes.length).toBeGreaterThan(0);
  await door.end('SIGTERM');
}, 30_000);

test('a journal whose end was cut off gives everything before the cut', async () => {
  const folder = temporaryFolder();
  const { id } = await editAndKill(folder, 'whole');
  const journals = join(folder, 'app/journals');
  const [name] = readdirSync(journals);
  const text = readFileSync(join(journals, name), 'utf8');
  writeFileSync(join(journals, name), `${text}\nabcdef12 {"kind":"patches","base":2,"revision":3,"patc`);
  const door = await runDoor(mainFolder(), folder);
  const opened = await (await door.connect()).request('ticket.open', { id });
  expect(opened.ok && [opened.value.recovered, opened.value.document.plan.ticket.notes]).toEqual([true, 'whole']);
  await door.end('SIGTERM');
}, 30_000);

test('the file changed elsewhere after the crash: both are kept', async () => {
  const folder = temporaryFolder();
  const { id } = await editAndKill(folder, 'mine');
  const other = bareTicket();
  other.plan.ticket.notes = 'theirs';
  writeFileSync(join(folder, 'shelf/T-1.hmticket'), packTicket({ document: other, photos: new Map() }));

  const door = await runDoor(mainFolder(), folder);
  const backend = await door.connect();
  const opened = await backend.request('ticket.open', { id });
  expect(opened.ok && [opened.value.recovered, opened.value.document.plan.ticket.notes]).toEqual([false, 'theirs']);
  const copy = readdirSync(join(folder, 'shelf')).find((name) => name !== 'T-1.hmticket') ?? '';
  expect(copy).toMatch(/^T-1 \(other version .*\)\.hmticket$/);
  expect(noteInFile(folder, copy)).toBe('mine');
  expect(noteInFile(folder, 'T-1.hmticket')).toBe('theirs');
  await door.end('SIGTERM');
}, 30_000);
