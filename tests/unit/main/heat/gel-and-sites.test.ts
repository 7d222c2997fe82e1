import { expect, test } from 'vitest';
import { assess } from '../../../../main/planning/assess.ts';
import { gelWaterG, shieldById } from '../../../../shared-types/library/shields.ts';
import { heatNoticeSentence } from '../../../../shared-types/words/heat.ts';
import { evaluated, run, SHORT_PROFILE, segment, site, smallBoard, smallPlan } from './support.ts';

const gel = (waterG: number) => ({
  ...{ id: 't', kind: 'shield' as const, order: null, note: '', refdes: 'U2', shield: 'gel', waterG },
});

test('a gel says when it falls dry, also in a run that starts from the numbers of another', () => {
  const board = smallBoard();
  const heatRuns = ['run-1', 'run-2'].map((id) => run('cover-removal', id));
  const told = (waterG: number) =>
    evaluated(board, smallPlan(board, { heatRuns, tags: [gel(waterG)] })).notices.filter((one) =>
      one.code.startsWith('gel'),
    );
  const dry = told(0.03);
  expect(dry.map((one) => one.code)).toEqual(['gel-dries', 'gel-dries']);
  expect(dry[0]!.figures.seconds).toBeGreaterThan(60);
  expect(dry[1]!.figures.seconds).toBe(dry[0]!.figures.seconds);
  expect(heatNoticeSentence(dry[0]!)).toMatch(/the gel on U2 falls dry after \d+ s/);
  expect(told(5).map((one) => one.code)).toEqual(['gel-lasts', 'gel-lasts']);
});

test('water that nobody weighed is two millimetres over the part', () => {
  expect(gelWaterG(shieldById('gel')!, {}, 100)).toBeCloseTo(0.2, 9);
  expect(gelWaterG(shieldById('gel')!, { waterG: 0.5 }, 100)).toBe(0.5);
  expect(gelWaterG(shieldById('tape')!, {}, 100)).toBe(0);
});

test('the second site of a run has its own start reading: the board under its target when its gas starts', () => {
  const board = smallBoard();
  const [preheat, soak, gas, cool] = SHORT_PROFILE;
  const segments = [
    ...[preheat!, soak!, { ...gas!, siteId: 'site-1' }],
    ...[{ ...segment('Gas 2', 60, [330, 330], [345, 345]), siteId: 'site-2' }, cool!],
  ];
  const plan = smallPlan(board, {
    sites: [site(board, 'U1'), site(board, 'U2', 'site-2')],
    heatRuns: [run('removal', 'run-1', { siteIds: ['site-1', 'site-2'], segments })],
  });
  const evaluation = evaluated(board, plan);
  const { runNumbers } = assess(board, plan, evaluation);
  const [first, second] = runNumbers;
  expect(first).toMatchObject({ siteId: 'site-1', gasFromS: 180 });
  expect(second).toMatchObject({ siteId: 'site-2', gasFromS: 250 });
  expect(first!.startGasAtC).toBeCloseTo(evaluation.runs[0]!.segments[1]!.siteC, 6);
  expect(second!.startGasAtC).toBeGreaterThan(first!.startGasAtC! + 10);
  expect(second!.startGasAtC).toBeLessThan(evaluation.runs[0]!.targets[1]!.coldestJointC);
});
