import { writeFileSync } from 'node:fs';
import { beforeAll, expect, test } from 'vitest';
import { packTicket } from '../../../../../main/document/ticket-archive.ts';
import { commandLineIn } from '../../../../support/command-line.ts';
import { run as heatRun, segment, smallBoard, smallPlan } from '../../heat/support.ts';

const { at, run } = commandLineIn('search');
const board = smallBoard();
const segments = [
  segment('Preheat', 100, [25, 330], null),
  segment('Soak', 80, [330, 330], null),
  segment('Gas', 40, [330, 330], [300, 300]),
  segment('Cool', 20, [25, 25], null),
];
const plan = smallPlan(board, { heatRuns: [heatRun('removal', 'run-1', { segments })] });
const NARROW = ['--preheater', '330', '--lead', '170-190', '--gas', '295-305'];

beforeAll(() => {
  writeFileSync(at('small.hmticket'), packTicket({ document: { board, plan }, photos: new Map() }));
});

test('tells the present profile, the best one and the front, with a warning before a calibration', async () => {
  const told = await run('search', at('small.hmticket'), ...NARROW);
  expect(told, told.error).toMatchObject({ status: 0 });
  expect(told.out).toContain('not calibrated');
  expect(told.out).toMatch(/Present: 220 s to the end of the gas/);
  expect(told.out).toMatch(/the coldest joint of U1 stays .* below its window/);
  expect(told.out).toMatch(/Best \(fine map\): .*preheater 330, .*E1/);
  expect(told.out).toContain('Time against margin (coarse map only):');
});

test('the same as JSON, with the bounds that were searched', async () => {
  const told = JSON.parse((await run('search', at('small.hmticket'), ...NARROW, '--json')).out);
  expect(told.bounds).toMatchObject({ belowC: { from: 330, to: 330 }, gasC: { from: 295, to: 305 } });
  expect(told.best).toMatchObject({ grid: 'fine', misses: [] });
  expect(told.front.at(-1).marginK).toBeTypeOf('number');
});

test.each([
  [['--gas', 'hot'], 2, '--gas takes two figures'],
  [['--gas', '340-300'], 2, 'takes two figures'],
  [['--run', 'none'], 1, 'none'],
])('%s: says what does not fit', async (words, status, said) => {
  const told = await run('search', at('small.hmticket'), ...words);
  expect(told.status).toBe(status);
  expect(told.error).toContain(said);
});
