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
