import { readdirSync, readFileSync, utimesSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { contentHash } from '../../../../main/files/content-hash.ts';
import type { TicketSession } from '../../../../main/files/session-types.ts';
import { readTicketFile } from '../../../../main/files/ticket-file.ts';
import { readZipDirectory } from '../../../../main/files/zip-directory.ts';
import type { DocumentPatch, PicturePiece } from '../../../../shared-types/contract.ts';
import type { BoardPhoto } from '../../../../shared-types/photo.ts';
import { temporaryFolder } from '../../../support/shell/folders.ts';
import { notePatch } from '../../../support/shell/small-ticket.ts';
import { bench, expectJournalled, newTicket, openTicket, ticketFiles } from '../../../support/shell/tickets.ts';

/** Bytes that begin like a JPEG; files do not look further. */
const pictureOf = (seed: number) => new Uint8Array([0xff, 0xd8, 0xff, seed, 5, 6, 7]);

const whole = (bytes: Uint8Array<ArrayBuffer>): PicturePiece => ({
  ...{ id: 'ticket', arrival: 'one', size: bytes.byteLength, at: 0, bytes },
});

function photoOf(sha256: string): BoardPhoto {
  return {
    ...{ id: 'photo-1', side: 'top', name: 'bench.jpg', sha256, mediaType: 'image/jpeg', orientation: 1 },
    ...{ widthPx: 40, heightPx: 30, pairs: [], fit: null, opacity: 0.6, shown: true },
    working: { sha256, mediaType: 'image/jpeg', widthPx: 40, heightPx: 30 },
  };
}
const addPatch = (sha256: string): DocumentPatch => ({
  ...{ op: 'add', path: ['board', 'photos', 0], value: photoOf(sha256) },
});
const removePatch: DocumentPatch = { op: 'remove', path: ['board', 'photos', 0] };

async function withPhoto(session: TicketSession, seed = 1): Promise<string> {
  const added = await session.addPicture(whole(pictureOf(seed)));
  const sha256 = added.ok ? added.value.sha256 : null;
  if (sha256 === null) throw new Error('not taken');
  session.patch(session.revision, [addPatch(sha256)]);
  return sha256;
}

const picturesIn = (folder: string, name: string) => {
  const bytes = new Uint8Array(readFileSync(join(folder, 'shelf', name)));
  const read = readTicketFile(bytes, name);
  return read.ok ? [...read.value.photos] : [];
};
const loose = (folder: string) => readdirSync(join(folder, 'app', 'photos'));

test('a photo lies in the ticket under its hash, its bytes as they came, uncompressed', async () => {
  const folder = temporaryFolder();
  const session = await newTicket(bench(folder));
  const sha256 = await withPhoto(session);
  expect(sha256).toBe(contentHash(pictureOf(1)));
  await session.save();
  expect(picturesIn(folder, 'T-1.hmticket')).toEqual([[sha256, pictureOf(1)]]);
  const entries = readZipDirectory(new Uint8Array(readFileSync(join(folder, 'shelf', 'T-1.hmticket'))));
  expect(entries?.find(({ name }) => name === `photos/${sha256}`)?.stored).toBe(true);
});

test('a crash before the first saving: photo and patch both come back', async () => {
  const folder = temporaryFolder();
  const session = await newTicket(bench(folder));
  const sha256 = await withPhoto(session);
  await expectJournalled(folder);
  expect(picturesIn(folder, 'T-1.hmticket')).toEqual([]);

  const again = await openTicket(bench(folder), session.id);
  expect(again.recovered).toBe(true);
  expect(again.session.pictures.get(sha256)).toEqual(pictureOf(1));
  // What follows is kept in the journal that was taken over, and in the file.
  again.session.patch(again.session.revision, [notePatch('after the crash')]);
  await again.session.close();
  expect(picturesIn(folder, 'T-1.hmticket')).toEqual([[sha256, pictureOf(1)]]);
});

test('taken off and brought back by undo, before and after saving; gone from the file only once closed', async () => {
  const folder = temporaryFolder();
  const session = await newTicket(bench(folder));
  const sha256 = await withPhoto(session);
  await session.save();
  session.patch(session.revision, [removePatch]);
  await session.save();
  session.patch(session.revision, [addPatch(sha256)]);
  await session.save();
  expect(picturesIn(folder, 'T-1.hmticket')).toEqual([[sha256, pictureOf(1)]]);
  session.patch(session.revision, [removePatch]);
  await session.close();
  expect(picturesIn(folder, 'T-1.hmticket')).toEqual([]);
});

test('two benches on one ticket: the copy of the later one has its photo too', async () => {
  const folder = temporaryFolder();
  const first = await newTicket(bench(folder));
  const second = (await openTicket(bench(folder, { app: 'other' }), first.id)).session;
  first.patch(0, [notePatch('first')]);
  await first.save();
  const sha256 = await withPhoto(second, 2);
  const saved = await second.save();
  expect(saved.ok && saved.value.conflictCopy).toBeTruthy();
  const copy = ticketFiles(folder).find((name) => name.includes('other version'));
  expect(picturesIn(folder, copy ?? '')).toEqual([[sha256, pictureOf(2)]]);
});

test('an earlier version still has the photo that was taken off', async () => {
  const folder = temporaryFolder();
  let minutes = 0;
  const tickets = bench(folder, { now: () => new Date(Date.now() + minutes * 60_000) });
  const session = await newTicket(tickets);
  const sha256 = await withPhoto(session);
  await session.save();
  minutes = 20;
  session.patch(session.revision, [removePatch]);
  await session.close();
  const [version] = await tickets.versions.list(session.path);
  const earlier = await tickets.openVersion(session.id, version.id);
  expect(earlier.ok && earlier.value.session.pictures.get(sha256)).toEqual(pictureOf(1));
  expect(earlier.ok && earlier.value.session.document.board.photos).toEqual([photoOf(sha256)]);
});

test('what no journal names is swept, but not what has just come in', async () => {
  const folder = temporaryFolder();
  const tickets = bench(folder);
  const session = await newTicket(tickets);
  const sha256 = await withPhoto(session);
  await session.save();
  await tickets.adoptOrphans();
  expect(loose(folder)).toEqual([sha256]);
  const hourAgo = new Date(Date.now() - 3_600_000);
  utimesSync(join(folder, 'app', 'photos', sha256), hourAgo, hourAgo);
  session.patch(session.revision, [notePatch('the journal names the photo')]);
  await expectJournalled(folder);
  await tickets.adoptOrphans();
  expect(loose(folder)).toEqual([sha256]);
  await session.save();
  await tickets.adoptOrphans();
  expect(loose(folder)).toEqual([]);
});

test.each([
  ['text', new TextEncoder().encode('a picture, honestly')],
  ['nothing', new Uint8Array()],
])('%s is taken for no picture', async (_name, bytes) => {
  const session = await newTicket(bench(temporaryFolder()));
  expect(await session.addPicture(whole(bytes))).toEqual({ ok: false, problem: { code: 'not-a-picture' } });
});
