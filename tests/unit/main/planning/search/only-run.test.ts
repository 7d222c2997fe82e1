import { expect, test } from 'vitest';
import { onlyRun } from '../../../../../main/planning/search/only-run.ts';
import { evaluated, exposure, run, site, smallBoard, smallPlan } from '../../heat/support.ts';

const board = smallBoard();
const plan = smallPlan(board, {
  sites: [site(board, 'U1'), site(board, 'U2', 'site-2')],
  heatRuns: [run('removal', 'run-1'), run('removal', 'run-2', { siteIds: ['site-2'] })],
});

test('a run alone goes as it does in its plan: what was lifted before it is off the board', () => {
  const alone = onlyRun(board, plan, plan.heatRuns[1]!);
  const [whole, single] = [evaluated(board, plan), evaluated(alone.board, alone.plan)];
  expect(single.runs).toHaveLength(1);
  expect(single.runs[0]!.targets).toEqual(whole.runs[1]!.targets);
  expect(single.parts.some(({ refdes }) => refdes === 'U1')).toBe(false);
  const naive = evaluated(board, { ...plan, heatRuns: [plan.heatRuns[1]!] });
  expect(exposure(naive, 'C1').body.maxC).not.toBe(exposure(single, 'C1').body.maxC);
});
