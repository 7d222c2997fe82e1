import { expect, test } from 'vitest';
import { calibrateRun } from '../../../../../main/heat/calibration/calibrate-run.ts';
import { loggedBoard as board, loggedOrder as order, loggedPlan as plan } from '../../../../support/heat/log-file.ts';

test('the model after the fit reads nearer to every bead than before, and progress never falls back', () => {
  const shares: number[] = [];
  const answer = calibrateRun(board, plan, order(), { onProgress: (share) => shares.push(share) });
  if (!answer.ok) throw new Error(answer.problem.code);
  const off = (read: Float32Array, said: Float32Array) =>
    Math.sqrt(read.reduce((sum, one, row) => sum + (one - said[row]!) ** 2, 0) / read.length);
  expect(answer.value.curves).toHaveLength(5);
  for (const { tagId, read, before, after } of answer.value.curves) {
    expect(off(read, after), tagId).toBeLessThan(Math.max(6, off(read, before)));
  }
  const total = (which: 'before' | 'after') =>
    answer.value.curves.reduce((sum, curve) => sum + off(curve.read, curve[which]), 0);
  expect(total('after')).toBeLessThan(total('before') / 2);
  expect(shares.every((share, index) => share < 1 && share >= (shares[index - 1] ?? 0))).toBe(true);
});

test('a typed peak comes back as what was read, before and after', () => {
  const [point] = order().points;
  const peaked = { ...order(), points: [{ ...point!, samples: null, peakC: 240 }] };
  const answer = calibrateRun(board, plan, peaked);
  expect(answer.ok && answer.value.peaks).toMatchObject([{ tagId: 'w0', read: 240 }]);
  expect(answer.ok && answer.value.curves).toEqual([]);
});

test('a cancelled fit ends within a look', () => {
  let looks = 0;
  const answer = calibrateRun(board, plan, order(), { isCancelled: () => ++looks >= 5 });
  expect(answer).toMatchObject({ problem: { code: 'cancelled' } });
  expect(looks).toBe(5);
});

test('a run or a bead that is not there is named, nothing is fitted', () => {
  expect(calibrateRun(board, plan, { ...order(), runId: 'run-9' })).toMatchObject({ problem: { code: 'no-heat-run' } });
  const [point] = order().points;
  const lost = { ...order(), points: [{ ...point!, tagId: 'w9' }] };
  expect(calibrateRun(board, plan, lost)).toMatchObject({ problem: { code: 'invalid-field', where: 'w9' } });
});
