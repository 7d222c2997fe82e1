import { expect, test } from 'vitest';
import { readLog } from '../../../../../main/document/imports/logs/read-log.ts';
import { emptyDraft, orderOf, withLog } from '../../../../../renderer/stages/heat/calibration/draft.ts';
import type { LogTable } from '../../../../../shared-types/study.ts';
import { logText, loggedPlan as plan } from '../../../../support/heat/log-file.ts';

function table(): LogTable {
  const log = readLog(new TextEncoder().encode(logText()), 'log.csv');
  if (!log.ok) throw new Error(log.problem.code);
  return {
    ...log.value,
    columns: log.value.columns.map(({ name, gaps, samples }) => ({
      ...{ name, gaps },
      samples: {
        atS: Float32Array.from(samples, ({ atS }) => atS),
        celsius: Float32Array.from(samples, ({ celsius }) => celsius),
      },
    })),
  };
}

test('a log gives each bead its column, counted from the begin of the run; a bead is taped until said otherwise', () => {
  const draft = withLog(emptyDraft(plan.heatRuns[0]!.id), 'log.csv', table(), plan);
  const wished = orderOf({ ...draft, startS: 30, attachments: { w1: 'soldered' } }, plan);
  if (!('order' in wished)) throw new Error(wished.missing);
  const { points } = wished.order;
  expect(points.map(({ tagId, attachment }) => `${tagId} ${attachment}`)).toEqual([
    ...['w0 taped', 'w1 soldered', 'w2 taped', 'w3 taped', 'w4 taped'],
  ]);
  expect(points[0]!.samples!.atS[0]).toBeGreaterThanOrEqual(0);
  expect(points[0]!.samples!.atS[0]).toBeLessThanOrEqual(4);
});

test('what is missing is said: no bead, one given twice, a begin after the end of the log', () => {
  const draft = withLog(emptyDraft(plan.heatRuns[0]!.id), 'log.csv', table(), plan);
  expect(orderOf({ ...draft, columns: draft.columns.map(() => null) }, plan)).toMatchObject({
    missing: expect.stringContaining('at least one column'),
  });
  expect(orderOf({ ...draft, columns: ['w0', 'w0', null, null, null] }, plan)).toMatchObject({
    missing: expect.stringContaining('W1 is given to two columns'),
  });
  expect(orderOf({ ...draft, startS: 900 }, plan)).toMatchObject({ missing: expect.stringContaining('no reading') });
});

test('peaks are typed without a log; the ones left empty are no readings', () => {
  const draft = { ...emptyDraft(plan.heatRuns[0]!.id), peaks: { w2: 214 } };
  expect(orderOf(draft, plan)).toEqual({
    order: {
      ...{ runId: plan.heatRuns[0]!.id, logName: 'typed peaks' },
      points: [{ tagId: 'w2', attachment: 'taped', samples: null, peakC: 214 }],
    },
  });
});
