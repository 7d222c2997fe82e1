import { zipSync } from 'fflate';
import { SHEET_DPI, type SheetFormat } from '../../shared-types/sheet-format.ts';
import type { Units } from '../../shared-types/units.ts';
import type { PrintedWorkMap } from '../contract/program.ts';
import { fileStem } from '../files/ticket-names.ts';
import type { Pictures } from '../files/ticket-photos.ts';
import type { WorkMapInput } from '../work-map/draw-sheet.ts';
import { renderWorkMap } from '../work-map/render.ts';
import { renderWorkMapSvg } from '../work-map/render-svg.ts';
import type { EvaluatedTicket } from '../workers/evaluator.ts';
import { loadSheetFonts } from './fonts.ts';
import { sheetPages } from './sheet-pages.ts';

/** Prints an evaluated ticket with the fonts that lie beside the program, dated now; pages as pictures come in a ZIP. */
export async function printWorkMap(
  ticket: EvaluatedTicket,
  pictures: Pictures,
  format: SheetFormat,
  programVersion: string,
  units: Units,
): Promise<PrintedWorkMap> {
  const input = inputOf(ticket, pictures, programVersion, units);
  if (format === 'pdf') {
    const sheet = await renderWorkMap(input);
    return { bytes: new Uint8Array(sheet.bytes), pages: sheet.pages };
  }
  const pages = await sheetPages(input, format, SHEET_DPI.usual);
  const stem = fileStem(input.plan.ticket.number);
  const named = pages.map(
    (bytes, index) => [`${stem}-${String(index + 1).padStart(2, '0')}.${format}`, bytes] as const,
  );
  return { bytes: new Uint8Array(zipSync(Object.fromEntries(named))), pages: pages.length };
}

/** The pages of the same sheet as SVG, to be looked at before it is printed. */
export async function drawSheetPages(
  ticket: EvaluatedTicket,
  pictures: Pictures,
  programVersion: string,
  units: Units,
): Promise<Uint8Array<ArrayBuffer>[]> {
  const encoder = new TextEncoder();
  return renderWorkMapSvg(inputOf(ticket, pictures, programVersion, units)).map((page) => encoder.encode(page));
}

function inputOf(
  { document, assessment }: EvaluatedTicket,
  pictures: Pictures,
  programVersion: string,
  units: Units,
): WorkMapInput {
  const { board, plan } = document;
  const fonts = loadSheetFonts();
  return { board, plan, assessment, pictures, programVersion, units, fonts, date: new Date().toISOString() };
}
