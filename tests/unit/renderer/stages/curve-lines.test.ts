import { expect, test } from 'vitest';
import { curvePicture, gasAt, lineAt, lineHigh } from '../../../../renderer/stages/heat/curve-lines.ts';
import type { Assessment, CurveSet } from '../../../../shared-types/evaluation.ts';
import { run } from '../../main/heat/support.ts';

const one = run('removal', 'run-1');
const curves: CurveSet = {
  stepS: 1,
  parts: ['U1', 'U2'].map((refdes, index) => ({
    refdes,
    body: Float32Array.of(20, 100 + index),
    skin: Float32Array.of(20, 110 + index),
    jointMax: Float32Array.of(20, 90 + index),
    jointMin: Float32Array.of(20, 80 + index),
  })),
  points: [{ tagId: 'w1', name: 'W1', celsius: Float32Array.of(20, 70) }],
  preheater: Float32Array.of(25, 60),
  site: null,
};
const limit = (celsius: number) => ({ celsius, origin: 'class', source: {} });
const assessment = {
  evaluation: {
    runs: [{ runId: 'run-1', targets: [{ refdes: 'U1', liquidusC: 220 }] }],
    parts: [
      { refdes: 'U1', limits: { body: limit(245), skin: null, joint: null } },
      { refdes: 'U2', limits: { body: limit(245), skin: limit(250), joint: limit(217) } },
    ],
  },
} as unknown as Assessment;

test('joints: the hottest and the coldest of each part, its limit, and the liquidus of the target', () => {
  const { lines, marks, seconds } = curvePicture(curves, one, assessment, {
    ...{ measure: 'joint', points: true, profile: false },
  });
  expect(seconds).toEqual([0, 1]);
  expect(lines.map((line) => [line.name, lineAt(line, 1, 1), line.limitC])).toEqual([
    ['U1 hottest', 90, null],
    ['U1 coldest', 80, null],
    ['U2 hottest', 91, 217],
    ['U2 coldest', 81, 217],
    ['W1', 70, null],
  ]);
  expect(marks.map((mark) => mark.celsius)).toEqual([217, 220]);
});

test('parts that share a limit share its line, and keep apart by ink or dash', () => {
  const { lines, marks } = curvePicture(curves, one, assessment, {
    ...{ measure: 'body', points: false, profile: false },
  });
  expect(marks).toEqual([{ celsius: 245, text: 'U1, U2 limit' }]);
  expect(new Set(lines.map(({ style }) => JSON.stringify(style))).size).toBe(2);
});

test('the gas of the profile is drawn where it blows and nowhere else', () => {
  expect(gasAt(one, 10)).toBeNaN();
  expect(gasAt(one, 200)).toBe(345);
  const { lines } = curvePicture(curves, one, assessment, { measure: 'skin', points: false, profile: true });
  expect(lines.map((line) => line.key)).toEqual(['U1 skin', 'U2 skin', 'source']);
  expect(lineHigh({ ...lines[0], celsius: [Number.NaN, 3, 2] })).toBe(3);
});
