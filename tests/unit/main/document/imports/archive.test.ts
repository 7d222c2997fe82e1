import { zipSync } from 'fflate';
import { expect, test } from 'vitest';
import { importBoard } from '../../../../../main/document/imports/import-board.ts';
import { inventedFiles } from './invented-board.ts';

const zip = (files: readonly { name: string; bytes: Uint8Array }[]) => ({
  name: 'all.zip',
  bytes: zipSync(Object.fromEntries(files.map(({ name, bytes }) => [name, bytes]))),
});

/** The board, without the name (it is taken from file names). */
function boardOf(files: Parameters<typeof importBoard>[0]) {
  const result = importBoard(files, { name: 'x' });
  if (!result.ok) throw new Error(result.problem.code);
  return result.value;
}

test('a ZIP gives the same board as its files, and says which were read', () => {
  const loose = boardOf(inventedFiles());
  const packed = boardOf([zip(inventedFiles())]);
  expect(packed.board.parts).toEqual(loose.board.parts);
  expect(packed.board.outline).toEqual(loose.board.outline);
  const note = packed.report.notes.find(({ code }) => code === 'archive-opened');
  expect(note?.file).toBe('all.zip');
  expect(String(note?.detail?.used)).toContain(inventedFiles()[0].name);
});

test('members that lead out of their folder are left out', () => {
  const outward = inventedFiles().map((file) => ({ ...file, name: `../${file.name}` }));
  expect(importBoard([zip(outward)])).toMatchObject({ ok: false, problem: { code: 'no-placements' } });
});

test('an archive within an archive is not opened', () => {
  const nested = importBoard([zip([zip(inventedFiles())])]);
  expect(nested).toMatchObject({ ok: false, problem: { code: 'unknown-file-kind', file: 'all.zip' } });
});

test('an archive that unpacks to more than 256 MB is one problem', () => {
  const bomb = zip([{ name: 'a.csv', bytes: new Uint8Array(257 * 1024 * 1024) }]);
  expect(bomb.bytes.length).toBeLessThan(1024 * 1024);
  expect(importBoard([bomb])).toMatchObject({ ok: false, problem: { code: 'too-large', file: 'all.zip' } });
});

test('an archive of more than 2000 files is one problem', () => {
  const many = Array.from({ length: 2001 }, (_, index) => ({ name: `${index}.txt`, bytes: new Uint8Array(1) }));
  expect(importBoard([zip(many)])).toMatchObject({ ok: false, problem: { code: 'too-large', file: 'all.zip' } });
});
