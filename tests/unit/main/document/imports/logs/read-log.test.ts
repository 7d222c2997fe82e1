import { describe, expect, test } from 'vitest';
import { readLog } from '../../../../../../main/document/imports/logs/read-log.ts';

const read = (text: string) => {
  const log = readLog(new TextEncoder().encode(text), 'log.csv');
  if (!log.ok) throw new Error(JSON.stringify(log.problem));
  return log.value;
};
const rounded = (text: string, column = 0) =>
  read(text).columns[column]!.samples.map(({ atS, celsius }) => [atS, Math.round(celsius * 100) / 100]);

/** The same three samples, as loggers write them. */
const SAME = [
  [0, 25],
  [1, 30.5],
  [2, 41],
];

describe('temperature logs', () => {
  test.each([
    ['plain', 'Time (s),TC1\n0,25\n1,30.5\n2,41'],
    ['semicolons and decimal comma', 'Zeit;Fühler 1\n0,0;25,0\n1,0;30,5\n2,0;41,0'],
    ['tabs and units in cells', 't\tA\n0 s\t25.0 °C\n1 s\t30.5 °C\n2 s\t41 °C'],
    ['fahrenheit in the heading', 'Elapsed,TC1 (°F)\n0,77\n1,86.9\n2,105.8'],
    ['fahrenheit in the cells', 'Elapsed,TC1\n0,77 F\n1,86.9 F\n2,105.8 F'],
    ['kelvin', 'Elapsed [s],TC1 [K]\n0,298.15\n1,303.65\n2,314.15'],
    ['hours, minutes, seconds', 'Time,TC1\n00:00:00,25\n00:00:01,30.5\n00:00:02,41'],
    ['minutes and seconds', 'Time,TC1\n0:00,25\n0:01,30.5\n0:02,41'],
    ['a date and a clock', 'Date/Time,TC1\n2026-11-25 14:00:07,25\n2026-11-25 14:00:08,30.5\n2026-11-25 14:00:09,41'],
    ['a clock over midnight', 'Time,TC1\n23:59:59,25\n00:00:00,30.5\n00:00:01,41'],
    ['milliseconds', 'Time (ms),TC1\n0,25\n1000,30.5\n2000,41'],
    ['lines before the heading', 'Logger 4\nSerial;0815\n\nTime;TC1\n0;25\n1;30,5\n2;41'],
    ['no heading at all', '0,25\n1,30.5\n2,41'],
    ['times that do not start at 0', 'Time,TC1\n120,25\n121,30.5\n122,41'],
  ])('%s', (_, text) => {
    expect(rounded(text)).toEqual(SAME);
  });

  test('gaps, open beads and overloads are left out and counted', () => {
    const log = read('Time,A,B\n0,25,20\n1,---,OL\n2,,9999\n3,NaN,21\n4,31,');
    expect(log.columns.map(({ name, samples, gaps }) => [name, samples.map(({ atS }) => atS), gaps])).toEqual([
      ['A', [0, 4], 3],
      ['B', [0, 3], 3],
    ]);
    expect([log.rows, log.seconds]).toEqual([5, 4]);
  });

  test.each([
    ['no rows', 'hello\nworld', 'rows of figures'],
    ['no times', 'A,B\n25,24\n25,24\n24,25', 'column of times'],
  ])('%s: says what is missing', (_, text, found) => {
    const log = readLog(new TextEncoder().encode(text), 'log.csv');
    if (log.ok) throw new Error('was read');
    expect(log.problem).toMatchObject({ code: 'wrong-format', file: 'log.csv' });
    expect(log.problem.detail!.found).toContain(found);
  });
});
