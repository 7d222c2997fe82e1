import { parentPort, workerData } from 'node:worker_threads';
import { printWorkMap } from './print-work-map.ts';
import type { SheetOrder } from './sheet-printer.ts';

/** Draws one sheet and ends: a page of dots takes a second, and the door that started this serves windows meanwhile. */
const { ticket, pictures, format, programVersion } = workerData as SheetOrder;
const printed = await printWorkMap(ticket, pictures, format, programVersion);
parentPort?.postMessage(printed, [printed.bytes.buffer]);
