import { basename } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { SheetFormat } from '../../shared-types/sheet-format.ts';
import type { Units } from '../../shared-types/units.ts';
import { reasons } from '../../shared-types/words/shell.ts';
import type { PrintedWorkMap } from '../contract/program.ts';
import type { Pictures } from '../files/ticket-photos.ts';
import type { EvaluatedTicket } from '../workers/evaluator.ts';

/** What a sheet is drawn from; crosses to the worker as a copy. */
export type Sheet = { ticket: EvaluatedTicket; pictures: Pictures; programVersion: string; units: Units };
/** A file of the sheet, or its pages to be looked at. */
export type SheetOrder = Sheet & { format: SheetFormat | 'pages' };

/**
 * Draws a sheet off the main thread, each in a worker of its own, so that the memory of its pages is given back. `file`: path of the built
 * worker. Rejects with a sentence that names the file when it fails.
 */
export const printInWorker = (file: string, sheet: Sheet, format: SheetFormat) =>
  draw<PrintedWorkMap>(file, { ...sheet, format });

/** The same for its pages as SVG text in UTF-8. */
export const drawPagesInWorker = (file: string, sheet: Sheet) =>
  draw<Uint8Array<ArrayBuffer>[]>(file, { ...sheet, format: 'pages' });

function draw<Drawn>(file: string, order: SheetOrder): Promise<Drawn> {
  const needed = new Set(order.ticket.document.board.photos.map(({ working }) => working.sha256));
  const pictures = new Map([...order.pictures].filter(([sha256]) => needed.has(sha256)));
  const worker = new Worker(file, { workerData: { ...order, pictures } satisfies SheetOrder });
  return new Promise<Drawn>((resolve, reject) => {
    worker.once('message', resolve);
    worker.once('error', reject);
    worker.once('exit', () => reject(new Error(reasons.workerFailed(basename(file)))));
  });
}
