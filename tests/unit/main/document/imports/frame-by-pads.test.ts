import { expect, test } from 'vitest';
import { importBoard } from '../../../../../main/document/imports/import-board.ts';

const box = (size: number, lower: number) =>
  [
    [lower, lower],
    [lower + size, lower],
    [lower + size, lower + size],
    [lower, lower + size],
    [lower, lower],
  ]
    .map(([x, y], index) => `X${x * 1e6}Y${y * 1e6}D0${index === 0 ? 2 : 1}*`)
    .join('\n');
const gerber = (body: string) => ({
  bytes: new TextEncoder().encode(`%FSLAX46Y46*%\n%MOMM*%\nG01*\n%ADD10C,0.1*%\n%ADD11R,1X1*%\nD10*\n${body}\nM02*\n`),
});

test('without parts and references the pads of a layer tell the outline from the frame of the drawing', () => {
  const pads = Array.from({ length: 20 }, (_, index) => `X${(12 + (index % 5) * 4) * 1e6}Y${(12 + index) * 1e6}D03*`);
  const result = importBoard([
    { name: 'a.gm1', ...gerber(`${box(100, 0)}\n${box(30, 10)}`) },
    { name: 'a.gtp', ...gerber(`D11*\n${pads.join('\n')}`) },
  ]);
  if (!result.ok) throw new Error(result.problem.code);
  expect(result.value.report.outline).toMatchObject({ lengthMm: 30, widthMm: 30, why: 'pads' });
});

test('an outline that crosses itself costs neither the parts nor the import', () => {
  const rows = ['R1,40,10,0,top', 'R2,50,20,0,top', 'R3,55,30,0,top'];
  const table = {
    name: 'a.csv',
    bytes: new TextEncoder().encode(`Ref,X (mm),Y (mm),Rot,Side\n${rows.join('\n')}\n`),
  };
  const corners = [
    [0, 0],
    [60, 0],
    [60, 60],
    [10, -5],
    [0, 0],
  ];
  const lines = corners.map(([x, y], index) => `X${x * 1e6}Y${y * 1e6}D0${index === 0 ? 2 : 1}*`).join('\n');
  const crossed = importBoard([table, { name: 'a.gko', ...gerber(lines) }]);
  if (!crossed.ok) throw new Error(crossed.problem.code);
  expect(crossed.value.board.parts).toHaveLength(3);
  expect(crossed.value.report.outline.why).toBe('parts');
  expect(crossed.value.report.notes.map(({ code }) => code)).toContain('outline-broken');
  // Without parts it is what is wrong.
  expect(importBoard([{ name: 'a.gko', ...gerber(lines) }])).toMatchObject({
    ok: false,
    problem: { code: 'invalid-field', where: 'outline' },
  });
});
