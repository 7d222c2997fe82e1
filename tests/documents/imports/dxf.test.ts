import { Helper } from 'dxf';
import { afterAll, expect, test } from 'vitest';
import { strokesOf } from '../../../main/document/imports/drawing/strokes.ts';
import { readDxf } from '../../../main/document/imports/dxf/read-dxf.ts';
import { importBoard } from '../../../main/document/imports/import-board.ts';
import { segmentsBox } from '../../../main/document/imports/segments.ts';
import { boardFolder, filesOf, textOf } from './boards-folder.ts';

/** Outside drawings; outlines in mm. Sizes: by the general-purpose reader below, and its own by the counts of circles. */
const EXPECTED: Record<string, { outline: readonly [number, number]; cutouts: number }> = {
  'HackRF_One_Case_v2.dxf': { outline: [77, 122], cutouts: 4 },
  'butterstick_acrylic_plate.dxf': { outline: [92, 61], cutouts: 8 },
  'reform-trackball-Edge.Cuts.dxf': { outline: [63.35, 46.6], cutouts: 1 },
};

const folder = boardFolder('dxf');
const rows: string[] = [];

afterAll(() => {
  if (rows.length > 0)
    console.log(['drawing | shapes | outline | cutouts, other loops | unit | warnings | seconds', ...rows].join('\n'));
});

test.each(Object.entries(EXPECTED))('%s comes in, on its own, in mm', (name, expected) => {
  if (!folder) return;
  const start = performance.now();
  const result = importBoard(filesOf(folder).filter((file) => file.name === name));
  const seconds = (performance.now() - start) / 1000;
  if (!result.ok) throw new Error(result.problem.code);
  const { board, report } = result.value;
  const read = readDxf(textOf(folder, name));
  const { outline, notes } = report;
  const unit = notes.find(({ code }) => code.startsWith('drawing-unit'));
  const warnings = notes.filter(({ weight }) => weight === 'warn').map(({ code }) => code);
  rows.push(
    `${name} | ${read.ok ? read.drawing.shapes.length : 0} | ${outline.lengthMm.toFixed(3)} x ${outline.widthMm.toFixed(3)} | ${outline.cutouts}, ${outline.others.length} | ${unit?.code} ${unit?.detail?.unit} | ${warnings.join(' ')} | ${seconds.toFixed(2)}`,
  );
  expect(Math.abs(outline.lengthMm - expected.outline[0])).toBeLessThan(0.05);
  expect(Math.abs(outline.widthMm - expected.outline[1])).toBeLessThan(0.05);
  expect(board.cutouts).toHaveLength(expected.cutouts);
  expect(board.parts).toEqual([]);
});

test.each(Object.keys(EXPECTED))(
  '%s: as many entities and the same box as a general-purpose DXF reader finds',
  (name) => {
    if (!folder) return;
    const text = textOf(folder, name);
    const read = readDxf(text);
    if (!read.ok) throw new Error(read.failure.reason);
    const theirs = new Helper(text);
    const kinds = theirs.denormalised.filter(({ type }) =>
      /^(LINE|ARC|CIRCLE|LWPOLYLINE|POLYLINE|SPLINE|ELLIPSE)$/.test(type),
    );
    expect(read.drawing.shapes).toHaveLength(kinds.length);
    const box = segmentsBox((strokesOf(read.drawing.shapes, 1) ?? []).map(({ segment }) => segment));
    const { min, max } = theirs.toPolylines().bbox;
    const differences = [box.minX - min.x, box.minY - min.y, box.maxX - max.x, box.maxY - max.y];
    for (const difference of differences) expect(Math.abs(difference)).toBeLessThan(0.01);
  },
);
