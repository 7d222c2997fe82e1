import { expect, it } from 'vitest';
import { droppedFiles } from '../../../../../renderer/stages/start/dropped-files.ts';

const file = (name: string) => ({
  isFile: true,
  isDirectory: false,
  file: (take: (file: File) => void) => take(new File(['x'], name)),
});
/** A folder whose reader gives two entries at a time, as browsers give a hundred. */
const folder = (entries: object[]) => ({
  isFile: false,
  isDirectory: true,
  createReader: () => {
    const left = [...entries];
    return { readEntries: (take: (entries: object[]) => void) => take(left.splice(0, 2)) };
  },
});
const drop = (entries: object[], files: File[] = []) =>
  ({ items: entries.map((entry) => ({ webkitGetAsEntry: () => entry })), files }) as unknown as DataTransfer;

it('opens folders within folders, in pieces, and leaves hidden files out', async () => {
  const inner = folder([file('bottom.csv'), file('.hidden')]);
  const files = await droppedFiles(
    drop([folder([file('a.gbr'), file('b.gbr'), file('top.csv'), inner]), file('c.txt')]),
  );
  expect(files.map(({ name }) => name)).toEqual(['a.gbr', 'b.gbr', 'top.csv', 'bottom.csv', 'c.txt']);
});

it('takes loose files as the browser gives them', async () => {
  const files = [new File(['x'], 'a.csv')];
  expect(await droppedFiles(drop([file('a.csv')], files))).toEqual(files);
});
