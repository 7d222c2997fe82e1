import { expect, test } from 'vitest';
import { importBoard } from '../../../../../main/document/imports/import-board.ts';
import { inventedFiles } from './invented-board.ts';

test('Gerber layers whose pads carry references give a board without placements, and say what is not known', () => {
  const whole = importBoard(inventedFiles());
  const bare = importBoard(inventedFiles().slice(1));
  if (!whole.ok || !bare.ok) throw new Error('expected boards');
  const { board, report } = bare.value;
  const places = new Map(whole.value.board.parts.map((part) => [part.refdes, part]));
  expect(board.outline).toEqual(whole.value.board.outline);
  expect(board.parts.length).toBeGreaterThan(5);
  for (const part of board.parts) {
    const known = places.get(part.refdes);
    expect(part.side, part.refdes).toBe(known?.side);
    // All packages of this board have pin 1 on the left or upper left.
    expect(part.turn, part.refdes).toBeCloseTo(known?.turn ?? Number.NaN, 3);
    expect(Math.hypot(part.x - (known?.x ?? 0), part.y - (known?.y ?? 0)), part.refdes).toBeLessThan(0.05);
  }
  expect(report.check).toBeNull();
  expect(report.notes).toContainEqual(
    expect.objectContaining({ weight: 'warn', code: 'parts-by-pads', detail: { count: board.parts.length } }),
  );
});

test('references of one pin are no parts, and listed', () => {
  const files = inventedFiles().slice(1);
  const line = '%TO.P,TP9,1*%\nD10*\nX1000000Y1000000D03*\n%TD*%\n';
  const top = new TextDecoder().decode(files[1].bytes).replace('M02*', `${line}M02*`);
  const result = importBoard([files[0], { ...files[1], bytes: new TextEncoder().encode(top) }, files[2]]);
  if (!result.ok) throw new Error(result.problem.code);
  expect(result.value.board.parts.map(({ refdes }) => refdes)).not.toContain('TP9');
  expect(result.value.report.notes.find(({ code }) => code === 'pads-only')?.refdes).toContain('TP9');
});
