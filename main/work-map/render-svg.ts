import PDFDocument from 'pdfkit';
import { SHEET } from '../../shared-types/words/work-map.ts';
import { drawSheet, type WorkMapInput } from './draw-sheet.ts';
import { createSvgInk, type PhotoWarper } from './drawing/svg-ink.ts';
import { createTypefaces } from './drawing/typeface.ts';

/**
 * The pages of the work map as SVG, one text each: the very marks of the PDF, drawn by the other pen. Pure, like the PDF. The PDF
 * library measures letters and opens photos here too, so that both come out alike; nothing is printed with it. `warp`: for pages that
 * end as dots (`createSvgInk`).
 */
export function renderWorkMapSvg(input: WorkMapInput, warp?: PhotoWarper): string[] {
  const measuring = new PDFDocument({ autoFirstPage: false, font: '' });
  const { ink, pages } = createSvgInk(createTypefaces(measuring, input.fonts), warp);
  drawSheet(ink, measuring, input);
  const count = ink.pageCount();
  return pages((page) => `${SHEET.workMap} ${input.plan.ticket.number}, ${SHEET.page(page, count)}`);
}
