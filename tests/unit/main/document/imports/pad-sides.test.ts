import { expect, test } from 'vitest';
import { importBoard } from '../../../../../main/document/imports/import-board.ts';
import { INVENTED_PARTS, inventedFiles } from './invented-board.ts';

test('a table that says no side gets it from the pads, and the report says so', () => {
  const [table, ...layers] = inventedFiles();
  const bare = new TextDecoder()
    .decode(table.bytes)
    .replaceAll(/,(top|bottom)$/gm, '')
    .replace(',Side', '');
  const result = importBoard([{ ...table, bytes: new TextEncoder().encode(bare) }, ...layers]);
  if (!result.ok) throw new Error(result.problem.code);
  const { board, report } = result.value;
  for (const { refdes, side, placed } of INVENTED_PARTS) {
    if (placed !== false) expect(board.parts.find((part) => part.refdes === refdes)?.side, refdes).toBe(side);
  }
  const codes = report.notes.map(({ code }) => code);
  expect(codes).toContain('side-from-pads');
  expect(codes).not.toContain('side-assumed');
});

test('where the layers know few of the references the side stays an assumption, and is said to be one', () => {
  const [, ...layers] = inventedFiles();
  const rows = ['C1,C_0402_INV,6,6,0', ...[1, 2, 3].map((number) => `R${number},C_0402_INV,${9 * number},9,0`)];
  const text = ['Ref,Package,PosX (mm),PosY (mm),Rot', ...rows].join('\n');
  const result = importBoard([{ name: 'pos.csv', bytes: new TextEncoder().encode(text) }, ...layers]);
  if (!result.ok) throw new Error(result.problem.code);
  const codes = result.value.report.notes.map(({ code }) => code);
  expect(codes).toContain('side-assumed');
  expect(codes).not.toContain('side-from-pads');
});
