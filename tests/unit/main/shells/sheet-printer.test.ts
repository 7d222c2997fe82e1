import { join } from 'node:path';
import { unzipSync } from 'fflate';
import { expect, test } from 'vitest';
import { drawPagesInWorker, printInWorker, type Sheet } from '../../../../main/shells/sheet-printer.ts';
import { builtPart } from '../../../support/shell/build-main.ts';
import { smallTicket } from '../../../support/shell/small-ticket.ts';
import { emptyAssessment } from '../work-map/assessment.ts';

const mainFolder = builtPart('main');
const sheet = (): Sheet => {
  const document = smallTicket('T-7');
  const bare = { ...document, plan: { ...document.plan, heatRuns: [] } };
  const ticket = { document: bare, assessment: emptyAssessment() };
  return { ticket, pictures: new Map(), programVersion: '0.0.0', units: { temperature: 'C', length: 'mm' } };
};

test('pages are drawn as dots beside the main thread, which goes on meanwhile', async () => {
  let turns = 0;
  const watch = setInterval(() => turns++, 5);
  const printed = await printInWorker(join(mainFolder(), 'sheet.worker.js'), sheet(), 'png');
  clearInterval(watch);
  const files = Object.entries(unzipSync(printed.bytes));
  expect(files.length).toBe(printed.pages);
  expect(files[0][0]).toBe('T-7-01.png');
  for (const [, bytes] of files) expect([...bytes.subarray(1, 4)]).toEqual([0x50, 0x4e, 0x47]);
  expect(turns).toBeGreaterThan(20);
});

test('pages to be looked at are those that print', async () => {
  const worker = join(mainFolder(), 'sheet.worker.js');
  const pages = await drawPagesInWorker(worker, sheet());
  const printed = await printInWorker(worker, sheet(), 'pdf');
  expect(pages.length).toBe(printed.pages);
  for (const page of pages) expect(new TextDecoder().decode(page.subarray(0, 5))).toBe('<?xml');
});

test('a worker that is not there is an error, not a wait without end', async () => {
  await expect(printInWorker(join(mainFolder(), 'no.worker.js'), sheet(), 'pdf')).rejects.toThrow('no.worker.js');
});
