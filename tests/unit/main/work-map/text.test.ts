import PDFDocument from 'pdfkit';
import { describe, expect, it } from 'vitest';
import { loadSheetFonts } from '../../../../main/shells/fonts.ts';
import { outset, wave } from '../../../../main/work-map/drawing/part-outline.ts';
import { wrap } from '../../../../main/work-map/drawing/phrase.ts';
import { createTypefaces } from '../../../../main/work-map/drawing/typeface.ts';
import { unwrapWoff } from '../../../../main/work-map/drawing/unwrap-woff.ts';
import { columnWidths } from '../../../../main/work-map/layout/table.ts';

const fonts = loadSheetFonts();
const type = createTypefaces(new PDFDocument({ font: '', autoFirstPage: false }), fonts);
const style = { face: 'sans', strong: 'monoStrong', size: 10 } as const;
const textOf = (line: { pieces: { text: string }[] }) => line.pieces.map((piece) => piece.text).join('');

describe('text', () => {
  it('keeps one font for what it has and changes it only for what it has not', () => {
    expect(type.runs('25 µm ± 5 % · 20 °C', 'sans').map((run) => run.text)).toEqual(['25 µm ± 5 % · 20 °C']);
    const mixed = type.runs('Łódź ≥ 20 °C', 'sans');
    expect(mixed.map((run) => run.text).join('')).toBe('Łódź ≥ 20 °C');
    expect(new Set(mixed.map((run) => run.font)).size).toBe(3);
  });

  it('shows what no font has as a replacement mark, and breaks on nothing hidden', () => {
    const shown = type
      .runs('a\u0000b\ud800c\u202e漢', 'sans')
      .map((run) => run.text)
      .join('');
    expect(shown).toBe('a b\ufffdc \ufffd');
  });

  it('measures a text as the sum of its parts', () => {
    expect(type.width('CC', 'mono', 10)).toBeCloseTo(12, 6);
    expect(type.width('231', 'mono', 20)).toBeCloseTo(2 * type.width('231', 'mono', 10), 9);
  });

  it('wraps within the width, loses no word and cuts what is too long', () => {
    const text = 'Take the field-bus module off first, whatever the distance. '.repeat(5).trim();
    const lines = wrap(text, 120, style, type);
    expect(lines.every((line) => line.width <= 120.01)).toBe(true);
    expect(lines.map(textOf).join(' ')).toBe(text);
    const cut = wrap('x'.repeat(100), 50, style, type);
    expect(cut.every((line) => line.width <= 50.01)).toBe(true);
    expect(cut.map(textOf).join('')).toBe('x'.repeat(100));
  });

  it('keeps a strong figure together with its unit, and honours line breaks', () => {
    const lines = wrap(['W1 reads ', { strong: '231' }, '\u00a0°C now\nsecond'], 48, style, type);
    expect(lines.map(textOf)).toContain('231\u00a0°C');
    expect(lines.map(textOf).at(-1)).toBe('second');
  });
});

describe('fonts', () => {
  it('come out of WOFF as plain fonts with the tables of the original', () => {
    const [woff] = fonts.sans;
    const font = unwrapWoff(woff);
    const view = new DataView(font.buffer, font.byteOffset);
    expect(view.getUint32(0)).toBe(0x00010000);
    const tags = Array.from({ length: view.getUint16(4) }, (_, index) =>
      String.fromCharCode(...font.subarray(12 + 16 * index, 16 + 16 * index)),
    );
    for (const tag of ['cmap', 'glyf', 'head', 'hmtx', 'loca', 'maxp']) expect(tags).toContain(tag);
    // Total size of the unpacked font as the WOFF header states it (W3C WOFF 1.0, totalSfntSize).
    expect(font.length).toBe(new DataView(woff.buffer, woff.byteOffset).getUint32(16));
  });

  it('leave any other file alone', () => {
    const plain = fonts.sans[fonts.sans.length - 1];
    expect(unwrapWoff(plain)).toBe(plain);
  });
});

describe('shapes', () => {
  const square = [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
    { x: 10, y: 10 },
    { x: 0, y: 10 },
  ];

  it('set a polygon off by the same distance on all sides', () => {
    expect(outset(square, 2)).toEqual([
      { x: -2, y: -2 },
      { x: 12, y: -2 },
      { x: 12, y: 12 },
      { x: -2, y: 12 },
    ]);
    expect(outset([...square].reverse(), 2)[0]).toEqual({ x: -2, y: 12 });
  });

  it('wave about the edge and meet in the corners', () => {
    const points = wave(square);
    for (const corner of square)
      expect(points.some((point) => Math.hypot(point.x - corner.x, point.y - corner.y) < 1e-9)).toBe(true);
    expect(Math.max(...points.map((point) => Math.max(-point.x, -point.y)))).toBeLessThan(1);
    expect(Math.min(...points.map((point) => point.y))).toBeLessThan(-0.3);
  });

  it('share out the width that fixed columns leave', () => {
    expect(columnWidths([{ title: '', width: 100 }, { title: '', share: 3 }, { title: '' }], 500)).toEqual([
      100, 300, 100,
    ]);
  });
});
