import { join } from 'node:path';
import { expect, test } from 'vitest';
import { importBoard } from '../../../main/document/imports/import-board.ts';
import { casesOf } from '../../support/imports/cases.ts';
import { gatherTruth } from '../../support/imports/gather-truth.ts';
import { judge } from '../../support/imports/judge.ts';
import { boardFolder, filesOf } from './boards-folder.ts';

/**
 * The smaller outside boards against readers that share nothing with ours; `npm run bench:imports` does it for all of them.
 * `uneven`: parts whose body, as the file draws it, does not lie about the middle of its pads.
 */
const BOARDS: Record<string, { matched: number; uneven: string[] }> = {
  fomu: { matched: 38, uneven: [] },
  ulx3s: { matched: 201, uneven: [] },
  'debug-adapter': { matched: 13, uneven: [] },
  'ipc2581/DM0002-IPC-2518.xml': { matched: 58, uneven: ['J2', 'SW1'] },
  'ipc2581/testcase10-revc-assembly.xml': { matched: 56, uneven: ['J1'] },
  'ipc2581/testcase9-revc-full.xml': { matched: 60, uneven: ['D1', 'D2', 'J2', 'R19', 'R20'] },
};

test.each(Object.entries(BOARDS))('%s: side, centre, turn and outline box', (name, { matched, uneven }) => {
  const [board, file] = name.split('/');
  const folder = boardFolder(board);
  if (!folder) return;
  const one = casesOf(board, folder).find((some) => (file ? some.board === name : some.what === 'whole folder'));
  if (!one) throw new Error('no such case');
  const result = importBoard(filesOf(folder).filter(({ name: given }) => one.paths.includes(join(folder, given))));
  if (!result.ok) throw new Error(result.problem.code);
  const verdict = judge(result.value.board, gatherTruth(one.paths), true);
  expect(verdict.matched).toBe(matched);
  expect(verdict.sideRight).toBe(verdict.sideOf);
  const off = verdict.centres.filter(({ mm }) => mm > 0.05).map(({ refdes }) => refdes);
  expect(off.sort()).toEqual(uneven);
  expect(verdict.turns.length).toBeGreaterThan(2);
  expect(verdict.turns.filter(({ degrees }) => degrees > 1)).toEqual([]);
  expect(verdict.boxMm).toBeLessThan(0.05);
});
