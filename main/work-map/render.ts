import PDFDocument from 'pdfkit';
import { SHEET } from '../../shared-types/words/work-map.ts';
import { drawSheet, type WorkMapInput } from './draw-sheet.ts';
import { createPdfInk } from './drawing/pdf-ink.ts';
import { createTypefaces } from './drawing/typeface.ts';

export type { SheetFonts } from './drawing/typeface.ts';

/**
 * Prints the work map: A4, vectors, fonts embedded. Pure: the same input gives the same bytes, `date` included.
 * Pages: bench page with the site, what to do before heat, the whole board, one sheet for each heat run, the record.
 */
export async function renderWorkMap(input: WorkMapInput): Promise<{ bytes: Uint8Array; pages: number }> {
  const { board, plan } = input;
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
  drawSheet(createPdfInk(document, createTypefaces(document, input.fonts)), document, input);
  const { count } = document.bufferedPageRange();
  document.end();
  return { bytes: await bytes, pages: count };
}

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
