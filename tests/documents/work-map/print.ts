import { expect } from 'vitest';
import { evaluate } from '../../../main/heat/evaluate.ts';
import { assess } from '../../../main/planning/assess.ts';
import { loadSheetFonts } from '../../../main/shells/fonts.ts';
import { renderWorkMap } from '../../../main/work-map/render.ts';
import type { Board } from '../../../shared-types/board.ts';
import type { Assessment } from '../../../shared-types/evaluation.ts';
import type { Plan } from '../../../shared-types/plan.ts';
import { fontsOfPdf, overlappingWords, type PdfPage, wordsOutside } from '../../support/pdf.ts';
import { emptyAssessment } from '../../unit/main/work-map/assessment.ts';

const fonts = loadSheetFonts();

/** The real evaluation and the real advice; a plan that cannot be evaluated yet gets nothing of either. */
export function assessed(board: Board, plan: Plan): Assessment {
  if (plan.heatRuns.length === 0) return emptyAssessment();
  const evaluation = evaluate(board, plan, { phase: 'coarse' });
  if (!evaluation.ok) throw new Error(JSON.stringify(evaluation.problem));
  return assess(board, plan, evaluation.value);
}

export const print = (board: Board, plan: Plan, assessment: Assessment, date = '2026-11-25T10:00') =>
  renderWorkMap({ board, plan, assessment, fonts, date, programVersion: '0.1.0' });

/** A4 by ISO 216 is 210 x 297 mm; a point is 1/72 inch (ISO 32000-1, 8.3.2.3). */
const A4 = { width: (210 / 25.4) * 72, height: (297 / 25.4) * 72 };

/** Smaller than 10 pt only: the foot line and designators of parts that need nothing. The fonts' boxes are 1.3 sizes high. */
function tooSmall(page: PdfPage, board: Board): string[] {
  const designators = new Set(board.parts.map((part) => part.refdes));
  return page.words
    .filter((word) => word.y1 - word.y0 < 11.4 && word.y0 < page.height - 42 && !designators.has(word.text))
    .map((word) => word.text);
}

export function expectInsidePages(pages: readonly PdfPage[]): void {
  expect(pages.length).toBeGreaterThan(1);
  for (const page of pages) {
    expect(page.width).toBeCloseTo(A4.width, 1);
    expect(page.height).toBeCloseTo(A4.height, 1);
    expect(page.words.length).toBeGreaterThan(5);
    expect(wordsOutside(page, 14)).toEqual([]);
  }
}

export function expectWordsApart(pages: readonly PdfPage[]): void {
  for (const page of pages) expect(overlappingWords(page)).toEqual([]);
}

export function expectBenchSizes(pages: readonly PdfPage[], board: Board): void {
  for (const page of pages) expect(tooSmall(page, board)).toEqual([]);
}

export function expectEmbeddedFonts(bytes: Uint8Array): void {
  const used = fontsOfPdf(bytes);
  expect(used.length).toBeGreaterThan(2);
  expect(used.filter((font) => !font.embedded || !font.subset)).toEqual([]);
}
