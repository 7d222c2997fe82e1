import { parentPort, workerData } from 'node:worker_threads';
import { drawSheetPages, printWorkMap } from './print-work-map.ts';
import type { SheetOrder } from './sheet-printer.ts';

/** Draws one sheet and ends: a page of dots takes a second, and the door that started this serves windows meanwhile. */
const { format, ...sheet } = workerData as SheetOrder;
if (format === 'pages') {
  const pages = drawSheetPages(sheet);
  parentPort?.postMessage(
    pages,
    pages.map(({ buffer }) => buffer),
  );
} else {
  const printed = await printWorkMap(sheet, format);
  parentPort?.postMessage(printed, [printed.bytes.buffer]);
}
