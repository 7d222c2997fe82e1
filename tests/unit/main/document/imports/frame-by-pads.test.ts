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
