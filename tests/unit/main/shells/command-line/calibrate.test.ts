import { readFileSync, writeFileSync } from 'node:fs';
import { beforeAll, expect, test } from 'vitest';
import { packTicket } from '../../../../../main/document/ticket-archive.ts';
import { readTicketFile } from '../../../../../main/files/ticket-file.ts';
import { commandLineIn } from '../../../../support/command-line.ts';
import { handCase } from '../../../../support/heat/calibration-cases.ts';
import { drawnLog } from '../../../../support/heat/calibration-truth.ts';
import { writtenLog } from '../../../../support/heat/log-file.ts';

const { at, run } = commandLineIn('calibrate');
const { board, plan } = handCase();
const POINTS = ['W1=TC 1,epoxy', 'W2=TC 2,soldered', 'W3=TC 3,epoxy', 'W4=TC 4,taped', 'W5=TC 5,epoxy'];
const withPoints = POINTS.flatMap((point) => ['--point', point]);

beforeAll(() => {
  writeFileSync(at('scrap.hmticket'), packTicket({ document: { board, plan }, photos: new Map() }));
  writeFileSync(at('log.csv'), writtenLog(drawnLog(handCase(), 3).points));
});

test('a logged run makes a calibrated ticket, says what it told, and later evaluations go by it', async () => {
  const named = withPoints.map((word) => word.replace('TC 3,', 'TC 3 (°F),'));
  const made = await run(
    ...['calibrate', at('scrap.hmticket'), at('log.csv'), '-o', at('known.hmticket'), '--start', '30', ...named],
  );
  expect(made, made.error).toMatchObject({ status: 0, error: '' });
  expect(made.out).toMatch(/readings; \d\.\d °C left/);
  expect(made.out).toMatch(/film of the preheater +×\d\.\d\d +×\/÷1\.\d\d +×\/÷1\.25/);
  expect(made.out).toMatch(/could not tell: outlet\./);
  const ticket = readTicketFile(new Uint8Array(readFileSync(at('known.hmticket'))), 'known');
  expect(ticket.ok && ticket.value.document.plan.station.calibration).toMatchObject({ board: 'small', log: 'log.csv' });
  const bandsOf = async (file: string) => {
    const told = JSON.parse((await run('evaluate', at(file), '--coarse', '--json')).out);
    return { u2: told.parts.find((part: { refdes: string }) => part.refdes === 'U2').bandK, of: told.uncertainty };
  };
  const [before, after] = [await bandsOf('scrap.hmticket'), await bandsOf('known.hmticket')];
  expect(after.u2).toBeLessThan(before.u2);
  expect(after.of.terms.every((term: { calibrated: boolean }) => term.calibrated)).toBe(true);
}, 60_000);

test.each([
  ['a column that is not there', ['--point', 'W1=TC 9,epoxy'], 'TC 9', "'TC 1'"],
  ['a watch point that is not there', ['--point', 'W9=TC 1,epoxy'], 'W9', 'Place the thermocouple'],
  ['a peak that is no figure', ['--peak', 'W1=hot,epoxy'], 'W1', 'Write the peak'],
])('%s: says where and what to do, and writes nothing', async (_, words, where, todo) => {
  const made = await run('calibrate', at('scrap.hmticket'), at('log.csv'), '-o', at('none.hmticket'), ...words);
  expect(made.status).toBe(1);
  expect(made.error).toContain(where);
  expect(made.error).toContain(todo);
  expect(() => readFileSync(at('none.hmticket'))).toThrow();
});

test('an attachment that is not known is wrong use', async () => {
  const made = await run(
    ...['calibrate', at('scrap.hmticket'), at('log.csv'), '-o', at('none.hmticket'), '--point', 'W1=TC 1,glued'],
  );
  expect(made).toMatchObject({ status: 2 });
  expect(made.error).toContain('soldered|epoxy|taped');
});
