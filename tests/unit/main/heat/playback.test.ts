import { expect, test } from 'vitest';
import { curvesOf, MOST_FRAME_BYTES, momentOf, type Playback } from '../../../../main/heat/playback.ts';
import { frameSize } from '../../../../main/heat/playback-frames.ts';
import type { Evaluation, HeatMoment } from '../../../../shared-types/evaluation.ts';
import type { Plan } from '../../../../shared-types/plan.ts';
import { evaluated, run, smallBoard, smallPlan } from './support.ts';

function recorded(more: Partial<Plan> = {}): { evaluation: Evaluation; playback: Playback } {
  const board = smallBoard();
  let playback: Playback | null = null;
  const evaluation = evaluated(board, smallPlan(board, more), {
    revision: 7,
    onPlayback: (given) => {
      playback = given;
    },
  });
  return { evaluation, playback: playback! };
}

function moment(playback: Playback, runId: string, atS: number): HeatMoment {
  const found = momentOf(playback, 7, runId, atS);
  if (!found.ok) throw new Error(found.problem.code);
  return found.value;
}

const hottest = (field: Float32Array) => Math.max(...field.filter((value) => !Number.isNaN(value)));

test('the board is at room at first, warms, and never passes the peaks that the evaluation tells', () => {
  const { evaluation, playback } = recorded();
  expect(hottest(moment(playback, 'run-1', 0).top)).toBe(25);
  const peaks = evaluation.runs[0].fields.top;
  let near = 0;
  for (let atS = 0; atS <= 280; atS += 5) {
    const { top } = moment(playback, 'run-1', atS);
    top.forEach((value, cell) => {
      if (!Number.isNaN(value)) expect(value).toBeLessThanOrEqual(peaks[cell] + 0.01);
    });
    near = Math.max(near, hottest(top));
  }
  expect(near, 'some frame comes within 3 K of the hottest cell').toBeGreaterThan(hottest(peaks) - 3);
});

test('the map of a moment agrees with the site curve at the same moment', () => {
  const { evaluation, playback } = recorded();
  const { celsius, stepS } = evaluation.runs[0].siteSeries!;
  for (const atS of [30, 90, 200, 250]) {
    const { top, grid } = moment(playback, 'run-1', atS);
    const [column, row] = [(30 - grid.originX) / grid.cellMm, (22 - grid.originY) / grid.cellMm].map(Math.round);
    const around = [0, 1].flatMap((up) => [0, 1].map((right) => top[(row - up) * grid.columns + column - right]));
    const mean = around.reduce((sum, value) => sum + value, 0) / 4;
    expect(Math.abs(mean - celsius[atS / stepS]), `at ${atS} s`).toBeLessThan(0.05);
  }
});

test('between two frames the map is blended by time, beyond the run it is held', () => {
  const { playback } = recorded();
  const [early, middle, late] = [60, 62, 65].map((atS) => moment(playback, 'run-1', atS).top[400]);
  expect(middle).toBeCloseTo(early + 0.4 * (late - early), 3);
  expect(moment(playback, 'run-1', 1e5).atS).toBe(280);
});

test('a run that starts from the numbers of another plays the same as alone', () => {
  const runs = [run('cover-removal', 'run-1'), run('cover-removal', 'run-2')];
  const alone = recorded({ heatRuns: [runs[0]] }).playback;
  const { playback } = recorded({ heatRuns: runs });
  for (const id of ['run-1', 'run-2']) expect(moment(playback, id, 140)).toEqual(moment(alone, 'run-1', 140));
  const kept = [...playback.runs.values()].map((one) => one.frames.times.length);
  expect(kept).toEqual([57, 57]);
  const { frames } = playback.runs.get('run-2')!;
  expect(frames.times).toEqual(Array.from({ length: 57 }, (_, index) => index * 5));
});

test('curves of parts and watch points rise to the peaks that are told', () => {
  const tag = { id: 'w1', kind: 'watchPoint' as const, order: 1, note: '', name: 'W1' };
  const { evaluation, playback } = recorded({ tags: [{ ...tag, x: 44, y: 22, side: 'top', refdes: 'U2' }] } as never);
  const found = curvesOf(playback, 7, 'run-1', ['U2', 'C1', 'not there'], ['w1']);
  if (!found.ok) throw new Error(found.problem.code);
  const { parts, points, stepS, preheater } = found.value;
  expect(parts.map((one) => one.refdes)).toEqual(['U2', 'C1']);
  expect(parts[0].body).toHaveLength(280 / stepS + 1);
  for (const one of parts) {
    const told = evaluation.parts.find((part) => part.refdes === one.refdes)!;
    expect(Math.abs(hottest(one.jointMax) - told.joint.maxC), one.refdes).toBeLessThan(6);
    expect(hottest(one.jointMin)).toBeLessThanOrEqual(hottest(one.jointMax));
  }
  expect(Math.abs(hottest(points[0].celsius) - evaluation.runs[0].watch[0].peakC)).toBeLessThan(0.2);
  expect(hottest(preheater)).toBeGreaterThan(320);
});

test('an earlier revision, an unknown run and nothing recorded are refused', () => {
  const { playback } = recorded();
  const stale = { ok: false, problem: { code: 'stale-evaluation' } };
  expect(momentOf(playback, 6, 'run-1', 10)).toEqual(stale);
  expect(momentOf(playback, 7, 'run-9', 10)).toEqual(stale);
  expect(momentOf(null, 7, 'run-1', 10)).toEqual(stale);
  expect(curvesOf(playback, 6, 'run-1', [], [])).toEqual(stale);
});

test('frames become coarser first, then fewer, and stay in their room', () => {
  const bytes = (columns: number, rows: number, seconds: number[]) => {
    const { factor, everyS } = frameSize(columns, rows, seconds, MOST_FRAME_BYTES);
    const frames = seconds.reduce((sum, one) => sum + Math.ceil(one / everyS) + 1, 0);
    return { factor, everyS, bytes: frames * Math.ceil(columns / factor) * Math.ceil(rows / factor) * 8 };
  };
  expect(bytes(120, 90, [440, 475, 450])).toMatchObject({ factor: 1, everyS: 5 });
  expect(bytes(300, 250, [440, 475, 450])).toMatchObject({ factor: 2, everyS: 5 });
  const large = bytes(800, 500, [1200, 1200, 1200, 1200, 1200]);
  expect(large.factor).toBe(4);
  expect(large.everyS).toBeGreaterThan(5);
  for (const one of [bytes(300, 250, [440, 475, 450]), large]) expect(one.bytes).toBeLessThanOrEqual(MOST_FRAME_BYTES);
});
