import { expect, it } from 'vitest';
import { describeFiles } from '../../../../../main/document/imports/describe-files.ts';
import { importBoard } from '../../../../../main/document/imports/import-board.ts';

const fileOf = (text: string, name = 'liste.csv') => ({ name, bytes: new TextEncoder().encode(text) });
/** Headings that nobody knows, and designators that look like none. */
const STRANGE = [
  'plek;links;boven;draai',
  ...['een', 'twee', 'drie', 'vier'].map((plek, index) => `${plek};${10 + 9 * index}mm;${5 + index}mm;90`),
].join('\n');

it('shows a table that reads as nothing, and reads it once its columns are said', () => {
  const files = [fileOf(STRANGE)];
  const refused = importBoard(files);
  expect(refused.ok).toBe(false);
  const { tables, files: listed } = describeFiles(files, {});
  expect(listed).toEqual([{ name: 'liste.csv', role: 'not-used', by: 'content' }]);
  expect(tables[0].columns.map(({ heading, meaning }) => [heading, meaning])).toEqual([
    ['plek', null],
    ['links', null],
    ['boven', null],
    ['draai', null],
  ]);
  // Nothing was measured: no guess of the unit is claimed.
  expect(tables[0].unitFrom).toBe('none');
  expect(tables[0].sample[1]).toEqual(['twee', '19mm', '6mm', '90']);
  const choices = { tables: { [tables[0].shape]: { columns: ['refdes', 'x', 'y', 'rotation'] as const } } };
  const said = importBoard(files, structuredClone(choices) as never);
  if (!said.ok) throw new Error(JSON.stringify(said.problem));
  expect(said.value.board.parts.map(({ refdes, turn }) => [refdes, turn])).toEqual([
    ['een', 90],
    ['twee', 90],
    ['drie', 90],
    ['vier', 90],
  ]);
  const [first, second] = said.value.board.parts;
  expect(second.x - first.x).toBeCloseTo(9, 6);
});

it.each([
  ['a letter', 'Dear all,\nhere it comes, at last.\nBye\n'],
  ['nothing', ''],
  ['one line', 'a;b;c;d'],
])('shows no table in %s', (_name, text) => {
  expect(describeFiles([fileOf(text, 'x.txt')], {}).tables).toEqual([]);
});
