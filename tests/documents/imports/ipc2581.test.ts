import { expect, test } from 'vitest';
import { importBoard } from '../../../main/document/imports/import-board.ts';
import { ownToBoard } from '../../../shared-types/board.ts';
import { importReportLines } from '../../../shared-types/words/imports.ts';
import { boardFolder, filesOf, textOf } from './boards-folder.ts';

/** Part counts as ../shared/boards/README.md states them, the split by side counted from layerRef in the file; outline boxes read off the profile's own numbers in the file, mm. */
const EXPECTED = [
  { name: 'DM0002-IPC-2518.xml', top: 56, bottom: 3, copper: 4, perMm: 1, twins: ['SW1', 'SW1', 'SW1'] },
  { name: 'testcase9-revc-full.xml', top: 23, bottom: 37, copper: 6, perMm: 1, twins: [] },
  { name: 'testcase10-revc-assembly.xml', top: 23, bottom: 33, copper: 2, perMm: 25.4, twins: [] },
];

const folder = boardFolder('ipc2581');
const there = folder ? test.each(EXPECTED) : test.skip.each(EXPECTED);

there('$name comes in whole', ({ name, top, bottom, copper, perMm, twins }) => {
  if (!folder) return;
  const [file] = filesOf(folder).filter((one) => one.name === name);
  const start = performance.now();
  const result = importBoard([file]);
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  const { board, report } = result.value;
  const seconds = (performance.now() - start) / 1000;
  for (const line of importReportLines(report)) expect(line).not.toMatch(/undefined|NaN|\[object/);
  expect([report.counts.top, report.counts.bottom]).toEqual([top, bottom]);
  expect(board.laminate.layers).toHaveLength(copper);
  // Oracle for the box: every x and y before the profile's first cutout, by a pattern and not by the importer.
  const profile = /<Profile>([\s\S]*?)(<Cutout>|<\/Profile>)/.exec(textOf(folder, name))?.[1] ?? '';
  const values = (axis: string) =>
    [...profile.matchAll(new RegExp(` ${axis}="([-0-9.]+)"`, 'g'))].map((m) => Number(m[1]) * perMm);
  const span = (list: number[]) => Math.max(...list) - Math.min(...list);
  expect(Math.abs(report.outline.lengthMm - span(values('x')))).toBeLessThan(0.05);
  expect(Math.abs(report.outline.widthMm - span(values('y')))).toBeLessThan(0.05);
  const pins = board.parts.map(({ pinCount }) => pinCount ?? 0);
  if (name.startsWith('testcase10')) expect(pins.filter((count) => count >= 484).sort()).toEqual([484, 484, 576]);
  if (bottom > 0) {
    const off = pinOnes(textOf(folder, name), perMm).flatMap(({ refdes, pin, x, y }) => {
      const part = board.parts.find((one) => one.refdes === refdes);
      if (!part?.pin1 || (pin !== '1' && pin !== 'A1')) return [];
      const at = ownToBoard(part, part.pin1);
      return [{ refdes, mm: Math.hypot(at.x - report.shift.xMm - x, at.y - report.shift.yMm - y) }];
    });
    const far = off.filter(({ mm }) => mm > 0.05);
    console.log(
      `${name}: ${top}/${bottom}, pin one on its pad ${off.length - far.length} of ${off.length}, ${far.map(({ refdes, mm }) => `${refdes} ${mm.toFixed(2)}`).join(' ')} ${seconds.toFixed(2)} s`,
    );
    expect(off.length).toBeGreaterThan(50);
    // A push button has two pads of number 1, each flashed on three layers: only one of them can be pin one.
    expect(far.map(({ refdes }) => refdes)).toEqual(twins);
  }
});

/** Pads of the copper layers with the pins they belong to, read by a pattern: an oracle apart from the importer. */
function pinOnes(text: string, perMm: number) {
  const pads = text.matchAll(
    /<Pad\b[^>]*>(?:(?!<\/Pad>)[\s\S])*?<Location x="([-0-9.]+)" y="([-0-9.]+)"\/>(?:(?!<\/Pad>)[\s\S])*?<PinRef[^>]*?\/>/g,
  );
  return [...pads].flatMap(([all, x, y]) => {
    const refdes = /componentRef="([^"]+)"/.exec(all)?.[1];
    const pin = /\bpin="([^"]+)"/.exec(all)?.[1];
    return refdes && pin ? [{ refdes, pin, x: Number(x) * perMm, y: Number(y) * perMm }] : [];
  });
}
