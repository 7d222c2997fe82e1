import { zipSync } from 'fflate';
import { SHEET_DPI, type SheetFormat } from '../../shared-types/sheet-format.ts';
import type { Units } from '../../shared-types/units.ts';
import type { PrintedWorkMap } from '../contract/program.ts';
import { fileStem } from '../files/ticket-names.ts';
import type { Pictures } from '../files/ticket-photos.ts';
import { renderWorkMap } from '../work-map/render.ts';
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
  const { board, plan } = ticket.document;
  const input = { board, plan, assessment: ticket.assessment, pictures, programVersion, units };
  const dated = { ...input, fonts: loadSheetFonts(), date: new Date().toISOString() };
  if (format === 'pdf') {
    const sheet = await renderWorkMap(dated);
    return { bytes: new Uint8Array(sheet.bytes), pages: sheet.pages };
  }
  const pages = await sheetPages(dated, format, SHEET_DPI.usual);
  const stem = fileStem(plan.ticket.number);
  const named = pages.map(
    (bytes, index) => [`${stem}-${String(index + 1).padStart(2, '0')}.${format}`, bytes] as const,
  );
  return { bytes: new Uint8Array(zipSync(Object.fromEntries(named))), pages: pages.length };
}
