import { expect, test } from 'vitest';
import { importBoard } from '../../../../../main/document/imports/import-board.ts';
import { importReportLines } from '../../../../../shared-types/words/imports.ts';
import { INVENTED_PARTS, inventedFiles } from './invented-board.ts';

const text = (name: string, content: string) => ({ name, bytes: new TextEncoder().encode(content) });

test('logos and drawings are counted, but no parts of the board', () => {
  const rows = [
    'R1,10k,R0603,1,2,0,top',
    'R2,10k,R0603,9,2,0,top',
    'G***,LOGO,drawing,5,5,0,bottom',
    'G***,LOGO,drawing,6,5,0,top',
    'LOGO3,x,y,7,7,0,top',
    'REF**,?,MountingHole,1,9,0,top',
    'X1,eye,maker_logo_small,2,9,0,top',
    'LOGIC1,74HC00,SOIC-14,4,9,0,top',
  ];
  const result = importBoard([text('a.csv', `Ref,Val,Package,X (mm),Y (mm),Rot,Side\n${rows.join('\n')}\n`)]);
  if (!result.ok) throw new Error(result.problem.code);
  const { board, report } = result.value;
  expect(board.parts.map(({ refdes }) => refdes)).toEqual(['R1', 'R2', 'LOGIC1']);
  expect(report.counts).toMatchObject({ top: 7, bottom: 1, legend: 5 });
  expect(report.notes.find(({ code }) => code === 'legend')?.refdes).toEqual(['G***', 'LOGO3', 'REF**', 'X1']);
  expect(report.notes.map(({ code }) => code)).not.toContain('reference-twice');
  expect(importReportLines(report)).toContain('placements 7 top, 1 bottom, 5 of them legend');
});

test('what has pads is a part, whatever its package is called', () => {
  const parts = INVENTED_PARTS.map((part) =>
    part.refdes === 'U1' ? { ...part, packageName: 'maker_logo_small' } : part,
  );
  const result = importBoard(inventedFiles({ parts }));
  if (!result.ok) throw new Error(result.problem.code);
  expect(result.value.report.counts.legend).toBe(0);
  expect(result.value.board.parts.some(({ refdes }) => refdes === 'U1')).toBe(true);
});
