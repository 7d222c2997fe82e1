import type { PrintedWorkMap } from '../contract/program.ts';
import type { Pictures } from '../files/ticket-photos.ts';
import { renderWorkMap } from '../work-map/render.ts';
import type { EvaluatedTicket } from '../workers/evaluator.ts';
import { loadSheetFonts } from './fonts.ts';

/** Prints an evaluated ticket with the fonts that lie beside the program, dated now. */
export async function printWorkMap(
  ticket: EvaluatedTicket,
  pictures: Pictures,
  programVersion: string,
): Promise<PrintedWorkMap> {
  const { board, plan } = ticket.document;
  const input = { board, plan, assessment: ticket.assessment, pictures, programVersion };
  const sheet = await renderWorkMap({ ...input, fonts: loadSheetFonts(), date: new Date().toISOString() });
  return { bytes: new Uint8Array(sheet.bytes), pages: sheet.pages };
}
