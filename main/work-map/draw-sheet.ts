import type { Board } from '../../shared-types/board.ts';
import type { Assessment } from '../../shared-types/evaluation.ts';
import type { Plan } from '../../shared-types/plan.ts';
import type { Units } from '../../shared-types/units.ts';
import { SHEET } from '../../shared-types/words/work-map.ts';
import type { Ink } from './drawing/ink.ts';
import { openPhotos, type Pictures } from './drawing/photo-images.ts';
import type { SheetFonts } from './drawing/typeface.ts';
import { actNumbersOf } from './facts/act-numbers.ts';
import { gatherFacts } from './facts/sheet-facts.ts';
import { createFlow, SOFT } from './layout/flow.ts';
import type { Sheet } from './layout/sheet.ts';
import { drawBeforeHeat } from './pages/before-heat.ts';
import { drawBenchPage } from './pages/bench-page.ts';
import { drawMapPages } from './pages/maps-page.ts';
import { drawRecordPage } from './pages/record-page.ts';
import { drawRunSheet } from './pages/run-sheet.ts';
import { drawSteps } from './pages/steps.ts';
import { CONTENT, INK, PAGE } from './paper.ts';

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
  /** What figures are written in; absent: °C and mm. */
  units?: Units;
};

/** Draws every page with the pen it is given. `opener` opens the photos. */
export function drawSheet(ink: Ink, opener: PDFKit.PDFDocument, input: WorkMapInput): void {
  const { board, plan, assessment } = input;
  const { photos, leftOut } = openPhotos(opener, board, input.pictures ?? new Map());
  const head = [plan.ticket.number, SHEET.board(board.name, board.revision)].join(' · ');
  const sheet: Sheet = {
    ink,
    flow: createFlow(ink, head),
    facts: gatherFacts(board, plan, assessment, photos, input.units),
    acts: actNumbersOf(plan, assessment),
  };
  const { orderCut } = drawBenchPage(sheet);
  drawBeforeHeat(sheet);
  drawSteps(sheet);
  drawMapPages(sheet);
  if (leftOut.length > 0) sheet.flow.paragraph(SHEET.photosLeftOut(leftOut), SOFT);
  for (const [place, act] of sheet.acts.entries()) drawRunSheet(sheet, act, place);
  drawRecordPage(sheet, orderCut);
  const pages = ink.pageCount();
  for (let page = 0; page < pages; page++) {
    ink.turnTo(page);
    drawFoot(ink, input, page + 1, pages);
  }
}

/** Date and minute as handed in; a time in UTC says so. */
const printedAt = (date: string): string => date.slice(0, 16).replace('T', ' ') + (date.endsWith('Z') ? ' UTC' : '');

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
