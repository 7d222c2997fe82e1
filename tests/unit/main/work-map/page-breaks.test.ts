import PDFDocument from 'pdfkit';
import { expect, test } from 'vitest';
import { loadSheetFonts } from '../../../../main/shells/fonts.ts';
import { createSvgInk } from '../../../../main/work-map/drawing/svg-ink.ts';
import { createTypefaces } from '../../../../main/work-map/drawing/typeface.ts';
import { createFlow } from '../../../../main/work-map/layout/flow.ts';
import { drawTable } from '../../../../main/work-map/layout/table.ts';

/** Pages with a table of so many rows that begins when `left` points of the first page are left; words of each page. */
function pagesWith(rows: number, left: number): string[] {
  const measuring = new PDFDocument({ autoFirstPage: false, font: '' });
  const { ink, pages } = createSvgInk(createTypefaces(measuring, loadSheetFonts()));
  const flow = createFlow(ink, 'T-1');
  flow.startPage('Sheet');
  flow.space(flow.left() - left);
  const cells = Array.from({ length: rows }, (_, index) => [`row-${index + 1}-`, 'words']);
  drawTable(flow, [{ title: 'Name', width: 100 }, { title: 'What' }], cells, 'Listed');
  return pages((page) => `page ${page}`);
}

test('a table that does not fit begins on the page and goes on under its title and head', () => {
  const [first, second] = pagesWith(40, 150) as [string, string];
  expect(first).toContain('row-1-');
  expect(first).toContain('row-3-');
  expect(second).toContain('Listed, continued');
  expect(second).toContain('Name');
  expect(second).toContain('row-40-');
});

test('no title and no single row is left behind at the foot of a page', () => {
  const [first, second] = pagesWith(40, 55) as [string, string];
  expect(first).not.toContain('Listed');
  expect(second).toContain('Listed');
  expect(second).not.toContain('continued');
  expect(second).toContain('row-1-');
});

test.each([30, 44, 58, 66, 74, 90])('with %i points left a title still has a row under it', (left) => {
  const [first] = pagesWith(1, left) as [string];
  expect(first.includes('Listed')).toBe(first.includes('row-1-'));
});
