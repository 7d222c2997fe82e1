import { zipSync } from 'fflate';
import { SHEET_DPI, type SheetFormat } from '../../shared-types/sheet-format.ts';
import type { PrintedWorkMap } from '../contract/program.ts';
import { fileStem } from '../files/ticket-names.ts';
import type { WorkMapInput } from '../work-map/draw-sheet.ts';
import { renderWorkMap } from '../work-map/render.ts';
import { renderWorkMapSvg } from '../work-map/render-svg.ts';
import { loadSheetFonts } from './fonts.ts';
import { sheetPages } from './sheet-pages.ts';
import type { Sheet } from './sheet-printer.ts';

/** Prints an evaluated ticket with the fonts that lie beside the program, dated now; pages as pictures come in a ZIP. */
export async function printWorkMap(sheet: Sheet, format: SheetFormat): Promise<PrintedWorkMap> {
  const input = inputOf(sheet);
  if (format === 'pdf') {
    const { bytes, pages } = await renderWorkMap(input);
    return { bytes: new Uint8Array(bytes), pages };
  }
  const pages = await sheetPages(input, format, SHEET_DPI.usual);
  const stem = fileStem(input.plan.ticket.number);
  const named = pages.map(
    (bytes, index) => [`${stem}-${String(index + 1).padStart(2, '0')}.${format}`, bytes] as const,
  );
  return { bytes: new Uint8Array(zipSync(Object.fromEntries(named))), pages: pages.length };
}

/** The pages of the same sheet as SVG, to be looked at before it is printed. */
export function drawSheetPages(sheet: Sheet): Uint8Array<ArrayBuffer>[] {
  const encoder = new TextEncoder();
  return renderWorkMapSvg(inputOf(sheet)).map((page) => encoder.encode(page));
}

function inputOf({ ticket, ...rest }: Sheet): WorkMapInput {
  const { board, plan } = ticket.document;
  return {
    ...rest,
    board,
    plan,
    assessment: ticket.assessment,
    fonts: loadSheetFonts(),
    date: new Date().toISOString(),
  };
}
