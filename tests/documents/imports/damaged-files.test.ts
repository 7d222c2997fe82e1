import { expect, test } from 'vitest';
import { type GivenFile, importBoard } from '../../../main/document/imports/import-board.ts';
import { importReportLines } from '../../../shared-types/words/imports.ts';
import { problemSentence } from '../../../shared-types/words/problems.ts';
import { uniforms } from '../../support/heat/random.ts';
import { boardFolder, filesOf } from './boards-folder.ts';

/** Real files of every kind that are small enough to be damaged many times. */
const FOLDERS = ['kvision', 'xy', 'dxf'];
const LARGEST = 20_000;
const CUTS = 4;

/** The same bytes cut short, with some exchanged, and with a run of them blotted out. */
function damaged({ bytes }: GivenFile, draw: () => number): Uint8Array[] {
  const at = (): number => Math.floor(draw() * bytes.length);
  const cuts = Array.from({ length: CUTS }, (_, cut) =>
    bytes.slice(0, Math.floor((bytes.length * (cut + draw())) / CUTS)),
  );
  const exchanged = Array.from({ length: CUTS }, () => {
    const copy = bytes.slice();
    for (let count = 0; count < 12; count++) copy[at()] = Math.floor(draw() * 256);
    return copy;
  });
  const from = at();
  return [...cuts, ...exchanged, bytes.slice().fill(0, from, from + 500), bytes.slice().fill(34, from, from + 500)];
}

test.each(FOLDERS)('files of %s, damaged: a board or one problem, in whole words', (name) => {
  const folder = boardFolder(name);
  if (!folder) return;
  const draw = uniforms(7);
  const files = filesOf(folder).filter(({ bytes }) => bytes.length <= LARGEST);
  expect(files.length).toBeGreaterThan(0);
  for (const file of files) {
    for (const bytes of damaged(file, draw)) {
      const result = importBoard([{ name: file.name, bytes }]);
      const words = result.ok ? importReportLines(result.value.report).join('\n') : problemSentence(result.problem);
      expect(words).not.toMatch(/undefined|NaN|\[object/);
    }
  }
});
