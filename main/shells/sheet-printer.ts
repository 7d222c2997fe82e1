import { basename } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { SheetFormat } from '../../shared-types/sheet-format.ts';
import { reasons } from '../../shared-types/words/shell.ts';
import type { PrintedWorkMap } from '../contract/program.ts';
import type { Pictures } from '../files/ticket-photos.ts';
import type { EvaluatedTicket } from '../workers/evaluator.ts';

/** What a sheet is drawn from; crosses to the worker as a copy. */
export type SheetOrder = { ticket: EvaluatedTicket; pictures: Pictures; format: SheetFormat; programVersion: string };

/**
 * Draws a sheet off the main thread, each in a worker of its own, so that the memory of its pages is given back. `file`: path of the built
 * worker. Rejects with a sentence that names the file when it fails.
 */
export function printInWorker(file: string, order: SheetOrder): Promise<PrintedWorkMap> {
  const needed = new Set(order.ticket.document.board.photos.map(({ working }) => working.sha256));
  const pictures = new Map([...order.pictures].filter(([sha256]) => needed.has(sha256)));
  const worker = new Worker(file, { workerData: { ...order, pictures } satisfies SheetOrder });
  return new Promise<PrintedWorkMap>((resolve, reject) => {
    worker.once('message', resolve);
    worker.once('error', reject);
    worker.once('exit', () => reject(new Error(reasons.workerFailed(basename(file)))));
  });
}
