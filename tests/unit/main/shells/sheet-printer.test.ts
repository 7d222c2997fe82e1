import { join } from 'node:path';
import { unzipSync } from 'fflate';
import { expect, test } from 'vitest';
import { printInWorker } from '../../../../main/shells/sheet-printer.ts';
import { builtPart } from '../../../support/shell/build-main.ts';
import { smallTicket } from '../../../support/shell/small-ticket.ts';
import { emptyAssessment } from '../work-map/assessment.ts';

const mainFolder = builtPart('main');
const order = () => {
  const document = smallTicket('T-7');
  const bare = { ...document, plan: { ...document.plan, heatRuns: [] } };
  const ticket = { document: bare, assessment: emptyAssessment() };
  return { ticket, pictures: new Map(), format: 'png' as const, programVersion: '0.0.0' };
};

test('pages are drawn as dots beside the main thread, which goes on meanwhile', async () => {
  let turns = 0;
  const watch = setInterval(() => turns++, 5);
  const printed = await printInWorker(join(mainFolder(), 'sheet.worker.js'), order());
  clearInterval(watch);
  const files = Object.entries(unzipSync(printed.bytes));
  expect(files.length).toBe(printed.pages);
  expect(files[0][0]).toBe('T-7-01.png');
  for (const [, bytes] of files) expect([...bytes.subarray(1, 4)]).toEqual([0x50, 0x4e, 0x47]);
  expect(turns).toBeGreaterThan(20);
});

test('a worker that is not there is an error, not a wait without end', async () => {
  await expect(printInWorker(join(mainFolder(), 'no.worker.js'), order())).rejects.toThrow('no.worker.js');
});
