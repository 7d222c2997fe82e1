import { mkdirSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { writeBoard } from '../../../../main/document/open-document.ts';
import { packTicket } from '../../../../main/document/ticket-archive.ts';
import { enterFile } from '../../../../main/files/entered-file.ts';
import { nodeFileSystem } from '../../../../main/files/file-system.ts';
import { defaultAppFolder, defaultShelfFolder } from '../../../../main/files/folders.ts';
import { createSamples } from '../../../../main/files/samples.ts';
import { createShelf } from '../../../../main/files/shelf.ts';
import { fileStem, freeName } from '../../../../main/files/ticket-names.ts';
import { createVersions } from '../../../../main/files/versions.ts';
import { temporaryFolder } from '../../../support/shell/folders.ts';
import { smallBoard, smallTicket } from '../../../support/shell/small-ticket.ts';

const ticketBytes = (number: string) => packTicket({ document: smallTicket(number), photos: new Map() });

test('the shelf lists tickets, newest first, and says what is wrong with a damaged one', async () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'old.hmticket'), ticketBytes('T-1'));
  writeFileSync(join(folder, 'new.hmticket'), ticketBytes('T-2'));
  writeFileSync(join(folder, 'broken.hmticket'), 'PK nothing');
  utimesSync(join(folder, 'old.hmticket'), 1000, 1000);
  utimesSync(join(folder, 'new.hmticket'), 3000, 3000);
  utimesSync(join(folder, 'broken.hmticket'), 2000, 2000);
  writeFileSync(join(folder, '.T-9.hmticket.tmp'), 'a save under way');
  writeFileSync(join(folder, 'notes.txt'), 'not ours');
  mkdirSync(join(folder, 'folder.hmticket'));
  const listed = await createShelf(nodeFileSystem, folder).list();
  if (!listed.ok) throw new Error(listed.problem.code);
  expect(listed.value.map((card) => card.fileName)).toEqual(['new.hmticket', 'broken.hmticket', 'old.hmticket']);
  const [card, broken] = listed.value;
  expect(card).toMatchObject({
    ...{ number: 'T-2', boardName: 'Invented test board', target: 'U1', invented: true, sample: false, problem: null },
    ...{ counts: { parts: 3, sites: 1, tags: 1, heatRuns: 3 } },
  });
  expect(card.drawing.outline).toHaveLength(4);
  expect(card.drawing.top[0]).toEqual([20, 15, 10, 10, 0]);
  expect(card.drawing.sites).toEqual([[20, 15, 10, 10, 0]]);
  expect(broken.problem).toMatchObject({ code: 'damaged-ticket', file: 'broken.hmticket' });
});

test('a card follows its file', async () => {
  const folder = temporaryFolder();
  const shelf = createShelf(nodeFileSystem, folder);
  writeFileSync(join(folder, 'a.hmticket'), ticketBytes('T-1'));
  await shelf.list();
  writeFileSync(join(folder, 'a.hmticket'), ticketBytes('T-22'));
  const listed = await shelf.list();
  expect(listed.ok && listed.value[0].number).toBe('T-22');
});

test('ids say nothing about paths, stay the same, and open only what the shelf knows', async () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'a.hmticket'), ticketBytes('T-1'));
  const listed = await createShelf(nodeFileSystem, folder).list();
  const id = listed.ok ? listed.value[0].id : '';
  expect(id).toMatch(/^[\w-]{22}$/);
  const another = createShelf(nodeFileSystem, folder);
  expect(await another.find(id)).toBe(join(folder, 'a.hmticket'));
  expect(await another.find('../a.hmticket')).toBeUndefined();
  expect(await another.find(join(folder, 'a.hmticket'))).toBeUndefined();
});

test('two tickets added at once get two names', async () => {
  const shelf = createShelf(nodeFileSystem, temporaryFolder());
  const added = await Promise.all([1, 2, 3].map(() => shelf.add('T-1', ticketBytes('T-1'))));
  const names = added.map((one) => one.ok && one.value.split('/').at(-1));
  expect(names.sort()).toEqual(['T-1 (2).hmticket', 'T-1 (3).hmticket', 'T-1.hmticket']);
});

test.each([
  ['T-1', 'T-1'],
  ['../../etc/passwd', '-..-etc-passwd'],
  ['a/b\\c:d', 'a-b-c-d'],
  ['  .hidden. ', 'hidden'],
  ['con', 'con-ticket'],
  ['LPT1.x', 'LPT1.x-ticket'],
  ['\u0000\n', '--'],
  ['', 'ticket'],
  ['Zürich 7', 'Zürich 7'],
])('the number %j makes the file stem %j', (number, stem) => {
  expect(fileStem(number)).toBe(stem);
});

test('free names count on, whatever the case', () => {
  expect(freeName('t-1', [])).toBe('t-1.hmticket');
  expect(freeName('t-1', ['T-1.HMTICKET', 'T-1 (2).hmticket'])).toBe('t-1 (3).hmticket');
});

test('samples are the tickets that lie beside the program, told apart by no name', async () => {
  const folder = temporaryFolder();
  const document = { ...smallTicket('S-2'), board: smallBoard('B') };
  writeFileSync(join(folder, 'b.hmticket'), packTicket({ document, photos: new Map() }));
  writeFileSync(join(folder, 'a.hmticket'), '{');
  writeFileSync(join(folder, 'lonely.board.json'), writeBoard(smallBoard('C')));
  const samples = createSamples(nodeFileSystem, folder);
  const cards = await samples.list();
  expect(cards.map((card) => [card.number, card.sample, card.problem?.code])).toEqual([
    ['', true, 'damaged-ticket'],
    ['S-2', true, undefined],
  ]);
  expect(await samples.read(cards[1].id)).toMatchObject({ ok: true, value: { document: { board: { name: 'B' } } } });
  expect(await samples.read('unknown')).toBeNull();
});

const entered = (name: string, bytes: Uint8Array) => enterFile({ name, bytes });

test('a bare board becomes a ticket with an empty plan and the number of its file name', () => {
  const bytes = new TextEncoder().encode(writeBoard(smallBoard()));
  const file = entered('/home/x/Gate 7.board.json', bytes);
  expect(file).toMatchObject({ ok: true, value: { stem: 'Gate 7', notes: [] } });
});

test('files that are not what their name says are told by name', () => {
  const text = (content: string) => new TextEncoder().encode(content);
  expect(entered('x.hmticket', text('hello'))).toMatchObject({ ok: false, problem: { code: 'damaged-ticket' } });
  expect(entered('x.board.json', text('{'))).toMatchObject({
    ok: false,
    problem: { code: 'not-json', file: 'x.board.json' },
  });
  expect(entered('x.board.json', new Uint8Array([0xff, 0xff]))).toMatchObject({
    ok: false,
    problem: { code: 'not-text' },
  });
  expect(entered('x.json', text('{"a":1}'))).toMatchObject({ ok: false, problem: { code: 'wrong-format' } });
});

test('a placement file becomes a board, and what the import guessed is told', () => {
  const table = 'Ref,Val,Package,PosX,PosY,Rot,Side\nR1,1k,R0402,5.0,5.0,0,top\nU1,MCU,QFN-32,15.0,10.0,90,top\n';
  const file = entered('pick.csv', new TextEncoder().encode(table));
  if (!file.ok) throw new Error(JSON.stringify(file.problem));
  expect(file.value.stem).toBe('pick');
  expect(file.value.notes.length).toBeGreaterThan(0);
  expect(file.value.notes.every((note) => note.sentence.length > 10)).toBe(true);
});

test('versions of a ticket with large photos: no more than fit, the newest one always', async () => {
  let minutes = 0;
  const now = () => new Date(1_700_000_000_000 + minutes * 60_000);
  const versions = createVersions(nodeFileSystem, temporaryFolder(), now, 2500);
  for (const size of [1000, 900, 800, 3000, 700]) {
    await versions.keep('/shelf/a', new Uint8Array(size));
    const sizes: number[] = [];
    for (const { id } of await versions.list('/shelf/a'))
      sizes.push((await versions.read('/shelf/a', id))?.byteLength ?? 0);
    expect(sizes).toEqual({ 1000: [1000], 900: [900, 1000], 800: [800, 900], 3000: [3000], 700: [700] }[size]);
    minutes += 11;
  }
});

test('versions: one at most every ten minutes, the newest forty, equal contents once', async () => {
  let minutes = 0;
  const now = () => new Date(2026, 0, 1, 0, minutes);
  const versions = createVersions(nodeFileSystem, temporaryFolder(), now);
  const keep = async (atMinute: number, text: string) => {
    minutes = atMinute;
    await versions.keep('/shelf/a', new TextEncoder().encode(text));
  };
  await keep(0, 'zero');
  await keep(5, 'too soon');
  await keep(11, 'eleven');
  await keep(30, 'eleven');
  expect(await versions.list('/shelf/a')).toHaveLength(2);
  expect(await versions.list('/shelf/b')).toEqual([]);
  for (let count = 1; count <= 45; count++) await keep(30 + count * 11, `more ${count}`);
  const kept = await versions.list('/shelf/a');
  expect(kept).toHaveLength(40);
  const newest = await versions.read('/shelf/a', kept[0].id);
  expect(new TextDecoder().decode(newest)).toBe('more 45');
  expect(await versions.read('/shelf/a', '../../secret')).toBeUndefined();
});

test('folders are where each system keeps such things', () => {
  const home = '/home/t';
  expect(defaultShelfFolder({ platform: 'linux', env: {}, home })).toBe('/home/t/Heatmargin');
  expect(defaultAppFolder({ platform: 'linux', env: {}, home })).toBe('/home/t/.local/share/heatmargin');
  expect(defaultAppFolder({ platform: 'linux', env: { XDG_DATA_HOME: '/data' }, home })).toBe('/data/heatmargin');
  expect(defaultAppFolder({ platform: 'darwin', env: {}, home })).toBe(
    '/home/t/Library/Application Support/Heatmargin',
  );
  expect(defaultAppFolder({ platform: 'win32', env: { APPDATA: '/roam' }, home })).toBe('/roam/Heatmargin');
});
