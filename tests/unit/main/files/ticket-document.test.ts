import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { packTicket } from '../../../../main/document/ticket-archive.ts';
import { type FileSystem, nodeFileSystem } from '../../../../main/files/file-system.ts';
import { createShelf } from '../../../../main/files/shelf.ts';
import { readZipDirectory } from '../../../../main/files/zip-directory.ts';
import { temporaryFolder } from '../../../support/shell/folders.ts';
import { smallTicket } from '../../../support/shell/small-ticket.ts';

const PHOTO = new Uint8Array(3 * 1024 * 1024).map((_, index) => index % 253);
const LARGER = new Uint8Array(PHOTO.byteLength + 9);
const packed = () => packTicket({ document: smallTicket('T-7'), photos: new Map([['ab12', PHOTO]]) });
const entryOf = (bytes: Uint8Array, name: string) => readZipDirectory(bytes)?.find((one) => one.name === name);

/** The disk, and how much of it was read. */
function countingDisk() {
  let bytesRead = 0;
  const fs: FileSystem = {
    ...nodeFileSystem,
    readFile: (async (...given: Parameters<FileSystem['readFile']>) => {
      const read = await nodeFileSystem.readFile(...given);
      bytesRead += read.length;
      return read;
    }) as FileSystem['readFile'],
    async open(...given) {
      const handle = await nodeFileSystem.open(...given);
      const read = handle.read.bind(handle) as (...all: unknown[]) => Promise<{ bytesRead: number }>;
      const counted = async (...all: unknown[]) => {
        const answer = await read(...all);
        bytesRead += answer.bytesRead;
        return answer;
      };
      return Object.assign(handle, { read: counted as typeof handle.read });
    },
  };
  return { fs, bytesRead: () => bytesRead };
}

async function cardOf(bytes: Uint8Array) {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'T-7.hmticket'), bytes);
  const disk = countingDisk();
  const shelf = createShelf(disk.fs, folder);
  const cards = await shelf.list();
  if (!cards.ok) throw new Error(cards.problem.code);
  return { card: cards.value[0], bytesRead: disk.bytesRead(), shelf };
}

test('the card of a ticket with large photos is that of the ticket without them, and they are not read', async () => {
  const { card, bytesRead } = await cardOf(packed());
  const plain = await cardOf(packTicket({ document: smallTicket('T-7'), photos: new Map() }));
  const { id: _, changedAt: __, ...shown } = card;
  expect(plain.card).toMatchObject(shown);
  expect(card.problem).toBeNull();
  expect(bytesRead).toBeLessThan(PHOTO.byteLength / 8);
});

test('a ticket that is saved anew between the look at the shelf and the reading is not taken for damaged', async () => {
  const folder = temporaryFolder();
  const path = join(folder, 'T-7.hmticket');
  writeFileSync(path, packed());
  const open: FileSystem['open'] = async (...given) => {
    writeFileSync(path, packTicket({ document: smallTicket('T-7'), photos: new Map([['ab12', LARGER]]) }));
    return nodeFileSystem.open(...given);
  };
  const cards = await createShelf({ ...nodeFileSystem, open }, folder).list();
  expect(cards).toMatchObject({ ok: true, value: [{ problem: null }] });
});

test('damage of a large ticket is still shown: cut off, a changed text, a lost entry, a photo that reaches past its place', async () => {
  const whole = packed();
  const problem = async (bytes: Uint8Array) => (await cardOf(bytes)).card.problem;
  expect(await problem(whole.subarray(0, whole.length - 40))).toMatchObject({ code: 'damaged-ticket' });

  const text = packed();
  const board = entryOf(text, 'board.json');
  text[(board?.start ?? 0) + 20] ^= 0x04;
  expect(await problem(text)).toMatchObject({ code: 'damaged-ticket', file: 'T-7.hmticket', where: 'board.json' });

  const directory = Buffer.from(whole).lastIndexOf('plan.json');
  const renamed = packed();
  renamed.set(new TextEncoder().encode('photos/xx'), directory);
  expect(await problem(renamed)).toMatchObject({ code: 'missing-entry', detail: { entry: 'plan.json' } });

  const reaching = packed();
  const photoAt = Buffer.from(whole).lastIndexOf('photos/ab12') - 46;
  new DataView(reaching.buffer).setUint32(photoAt + 20, 2 * PHOTO.byteLength, true);
  expect(await problem(reaching)).toMatchObject({ code: 'damaged-ticket', where: 'photos/ab12' });

  const odd = packed();
  odd.set(new TextEncoder().encode('photos/../x'), photoAt + 46);
  expect(await problem(odd)).toMatchObject({ code: 'damaged-ticket', where: 'photos/../x' });
});
