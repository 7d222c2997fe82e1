import PDFDocument from 'pdfkit';
import type { Board } from '../../shared-types/board.ts';
import type { Assessment } from '../../shared-types/evaluation.ts';
import type { Plan } from '../../shared-types/plan.ts';
import { SHEET } from '../../shared-types/words/work-map.ts';
import { createInk, type Ink } from './drawing/ink.ts';
import { openPhotos, type Pictures } from './drawing/photo-images.ts';
import { createTypefaces, type SheetFonts } from './drawing/typeface.ts';
import { actNumbersOf } from './facts/act-numbers.ts';
import { gatherFacts } from './facts/sheet-facts.ts';
import { createFlow, SOFT } from './layout/flow.ts';
import type { Sheet } from './layout/sheet.ts';
import { drawBeforeHeat } from './pages/before-heat.ts';
import { drawBenchPage } from './pages/bench-page.ts';
import { drawMapPages } from './pages/maps-page.ts';
import { drawRecordPage } from './pages/record-page.ts';
import { drawRunSheet } from './pages/run-sheet.ts';
import { CONTENT, INK, PAGE } from './paper.ts';

export type { SheetFonts } from './drawing/typeface.ts';

export type WorkMapInput = {
  board: Board;
  plan: Plan;
  assessment: Assessment;
  /** Working copies of the board's photos by hash; those that are missing are told on the sheet. */
  pictures?: Pictures;
  fonts: SheetFonts;
  /** When it is printed, ISO 8601; stands in the foot line and as the file's creation date. */
  date: string;
  programVersion: string;
};

/**
 * Prints the work map: A4, vectors, fonts embedded. Pure: the same input gives the same bytes, `date` included.
 * Pages: bench page with the site, what to do before heat, the whole board, one sheet for each heat run, the record.
 */
export async function renderWorkMap(input: WorkMapInput): Promise<{ bytes: Uint8Array; pages: number }> {
  const { board, plan, assessment } = input;
  const document = new PDFDocument({
    autoFirstPage: false,
    bufferPages: true,
    font: '',
    lang: 'en',
    pdfVersion: '1.7',
    info: {
      Title: `${SHEET.workMap} ${plan.ticket.number}`,
      Author: plan.ticket.technician,
      Subject: SHEET.board(board.name, board.revision),
      Creator: `Heatmargin ${input.programVersion}`,
      Producer: `Heatmargin ${input.programVersion}`,
      CreationDate: printDate(input.date),
    },
  });
  const bytes = collect(document);
  const ink = createInk(document, createTypefaces(document, input.fonts));
  const { photos, leftOut } = openPhotos(document, board, input.pictures ?? new Map());
  const head = [plan.ticket.number, SHEET.board(board.name, board.revision)].join(' · ');
  const sheet: Sheet = {
    ink,
    flow: createFlow(ink, head),
    facts: gatherFacts(board, plan, assessment, photos),
    acts: actNumbersOf(plan, assessment),
  };
  const { orderCut } = drawBenchPage(sheet);
  drawBeforeHeat(sheet);
  drawMapPages(sheet);
  if (leftOut.length > 0) sheet.flow.paragraph(SHEET.photosLeftOut(leftOut), SOFT);
  for (const [place, act] of sheet.acts.entries()) drawRunSheet(sheet, act, place);
  drawRecordPage(sheet, orderCut);
  const pages = document.bufferedPageRange().count;
  for (let page = 0; page < pages; page++) {
    document.switchToPage(page);
    drawFoot(ink, input, page + 1, pages);
  }
  document.end();
  return { bytes: await bytes, pages };
}

/** Date and minute as handed in; a time in UTC says so. */
const printedAt = (date: string): string => date.slice(0, 16).replace('T', ' ') + (date.endsWith('Z') ? ' UTC' : '');

/** A date that cannot be read becomes the start of the calendar rather than today: no clock in here. */
function printDate(date: string): Date {
  const parsed = new Date(date);
  return Number.isNaN(parsed.getTime()) ? new Date(0) : parsed;
}

function collect(document: PDFKit.PDFDocument): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    document.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    document.on('error', reject);
    document.on('end', () => {
      const whole = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
      let at = 0;
      for (const chunk of chunks) {
        whole.set(chunk, at);
        at += chunk.length;
      }
      resolve(whole);
    });
  });
}

/** Two small lines at the foot of every page: that it is an estimate, and which sheet this is. */
function drawFoot(ink: Ink, input: WorkMapInput, page: number, pages: number): void {
  const style = { face: 'sans', size: 8, colour: INK.soft } as const;
  const baseline = PAGE.height - 31;
  ink.segment({ x: CONTENT.left, y: baseline - 11 }, { x: CONTENT.right, y: baseline - 11 }, { width: 0.4 });
  const { evaluation } = input.assessment;
  ink.text(CONTENT.left, baseline, `${SHEET.band(evaluation.bands)} ${SHEET.defers}`, style);
  const printed = SHEET.footer(input.programVersion, printedAt(input.date));
  const invented = input.board.source.invented ? [SHEET.invented] : [];
  ink.text(CONTENT.left, baseline + 11, [printed, ...invented].join('   ·   '), style);
  const place = SHEET.page(page, pages);
  ink.text(CONTENT.right - ink.type.width(place, 'sans', 8), baseline + 11, place, style);
}
