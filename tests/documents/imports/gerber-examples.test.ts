import { describe, expect, test } from 'vitest';
import { imageBox } from '../../../main/document/imports/gerber/extents.ts';
import { readGerber } from '../../../main/document/imports/gerber/read-gerber.ts';
import { boardFolder, textOf } from './boards-folder.ts';

/**
 * The example files of 'The Gerber Layer Format Specification', revision 2023.03, Ucamco. Counts and boxes are worked out by hand
 * from the listing of each section: [section, file, strokes, flashes, regions, minX, minY, maxX, maxY] in mm.
 */
const EXAMPLES: [string, string, number, number, number, number, number, number, number][] = [
  ['2.1', 'source.grb', 0, 1, 0, -0.75, -0.75, 0.75, 0.75],
  ['2.11.1', 'source.grb', 8, 0, 0, -0.005, -0.005, 11.005, 5.005],
  // 3 + 4 draws with D10, one full circle about (40, 10) that reaches 42.55, flashes of D11 to D19, a region to (37.5, 37.5).
  ['2.11.2', 'source.grb', 7, 14, 2, -0.05, -0.05, 42.55, 37.5],
  ['2.11.2', 'source_no_macro.grb', 7, 13, 2, -0.05, -0.05, 42.55, 37.5],
  ['4.4.6', 'source.grb', 1, 1, 0, -25.5, -5, 25.5, 5],
  // LS1.5 widens the second draw only: 0.5 to the left and below, 0.75 above and to the right.
  ['4.9.1', 'source.grb', 2, 0, 0, -0.5, -0.75, 1.75, 2.75],
  // Block: 2 + 1 flashes and 2 strokes, flashed four times.
  ['4.9.6', 'source.grb', 8, 12, 0, -3.165064, -1.5, 13, 10.366025],
  ['4.9.6', 'source_0.grb', 2, 3, 0, -3, -1.5, 2.75, 1.5],
  ['4.10.4.1', 'source.grb', 0, 0, 1, 0.2, 0.1, 1.1, 0.9],
  ['4.10.4.2', 'source.grb', 0, 0, 1, -9, 0, 10, 10],
  ['4.10.4.4', 'source.grb', 0, 0, 1, -9, 0, 10, 10],
  ['4.10.4.8', 'source.grb', 0, 0, 1, -9, 0, 10, 10],
  ['4.10.4.9', 'source.grb', 0, 0, 1, 12.2, 25.7, 13.1, 27.2],
  // D100: 2 draws and 1 flash; D101: 4 of them; D102: 6 of those and 1 flash; 6 of them, and 2 flashes:
  // 2 x 4 x 6 x 6 = 288 draws, 1 x 4 x 6 x 6 + 6 + 2 = 152 flashes.
  ['4.11.4', 'source.grb', 288, 152, 0, -35, -40, 1399.282, 979.615375],
];

describe('examples of the Gerber format specification', () => {
  test.each(EXAMPLES)('section %s, %s', (section, file, strokes, flashes, regions, minX, minY, maxX, maxY) => {
    const folder = boardFolder(`gerber-spec-examples/${section}`);
    if (!folder) return;
    const result = readGerber(textOf(folder, file));
    if (!result.ok) throw new Error(result.failure.reason);
    const { objects, notes } = result.image;
    const count = (kind: string) => objects.filter((object) => object.kind === kind).length;
    expect([count('stroke'), count('flash'), count('region')]).toEqual([strokes, flashes, regions]);
    const box = imageBox(objects);
    expect([box.minX, box.minY, box.maxX, box.maxY].map((value) => Number(value.toFixed(6)))).toEqual([
      minX,
      minY,
      maxX,
      maxY,
    ]);
    expect(notes).toEqual([]);
  });

  test('section 4.10.4.7, as published without a unit and with coordinates of two scales: told, not refused', () => {
    const folder = boardFolder('gerber-spec-examples/4.10.4.7');
    if (!folder) return;
    const result = readGerber(textOf(folder, 'source.grb'));
    expect(result.ok && result.image.notes.map(({ kind }) => kind)).toEqual(['unitsAssumed', 'openContour']);
  });

  test('section 4.9.6: mirrored by LMX, the block about (10, 0) is the mirror image of the one about the origin', () => {
    const folder = boardFolder('gerber-spec-examples/4.9.6');
    if (!folder) return;
    const result = readGerber(textOf(folder, 'source.grb'));
    if (!result.ok) throw new Error(result.failure.reason);
    const boxes = [0, 1].map((copy) => imageBox(result.image.objects.slice(copy * 5, copy * 5 + 5)));
    expect(boxes[1].minX).toBeCloseTo(10 - boxes[0].maxX, 9);
    expect(boxes[1].maxX).toBeCloseTo(10 - boxes[0].minX, 9);
    expect(boxes[1].minY).toBeCloseTo(boxes[0].minY, 9);
  });
});
