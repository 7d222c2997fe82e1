import { describe, expect, it } from 'vitest';
import {
  createBodySeries,
  largestRises,
  numberAt,
  piecesUntil,
  takePieces,
  writeRow,
} from '../../../../main/heat/body-series.ts';
import { evenRows, firstAbove, peakOf, type Series, secondsAbove, valueAt } from '../../../../main/heat/series.ts';
import type { PlannedStep } from '../../../../main/heat/step-plan.ts';

const series = (times: number[], values: number[]): Series => ({
  times: Float64Array.from(times),
  rows: times.length,
  at: evenRows(Float32Array.from(values)),
});

/** The largest rise of one body over 5 s, its rows in two pieces, beside another that stays at 0. */
function largestRise(times: number[], values: number[], startC: number): number {
  const segment = (row: number) => (row < times.length / 3 ? 0 : 1);
  const steps = times.map((endS, row) => ({ endS, segment: segment(row) }) as PlannedStep);
  const rows = createBodySeries(steps, 2);
  for (const [row, value] of values.entries()) writeRow(rows, row, Float32Array.of(value, 0));
  const [largest, still] = largestRises(rows, Float64Array.from(times), times.length, 2, 5, startC);
  expect(still).toBe(0);
  return largest!;
}

describe('a series', () => {
  const ramp = series([0.5, 1, 2, 3, 4], [10, 20, 40, 60, 40]);

  it('counts seconds above a limit on straight lines', () => {
    expect(secondsAbove(ramp, 50, 0)).toBeCloseTo(1, 9);
    expect(secondsAbove(ramp, 60, 0)).toBe(0);
    expect(secondsAbove(ramp, -1, 0)).toBe(4);
  });

  it('finds when a limit is first passed', () => {
    expect(firstAbove(ramp, 30, 0)).toBeCloseTo(1.5, 9);
    expect(firstAbove(ramp, 5, 0)).toBeCloseTo(0.25, 9);
    expect(firstAbove(ramp, 60, 0)).toBeNull();
    expect(firstAbove(ramp, -5, 0)).toBe(0);
  });

  it('reads values between its rows and at its ends', () => {
    expect(valueAt(ramp, 1.5, 0)).toBeCloseTo(30, 9);
    expect(valueAt(ramp, 0.25, 0)).toBeCloseTo(5, 9);
    expect(valueAt(ramp, 3, 0)).toBe(60);
    expect(valueAt(ramp, 99, 0)).toBe(40);
  });

  it('takes the largest rise over any window, uneven rows included', () => {
    const times = Array.from({ length: 40 }, (_, i) => (i < 4 ? (i + 1) * 0.5 : i - 1));
    expect(
      largestRise(
        times,
        times.map((s) => 25 + 2 * s),
        25,
      ),
    ).toBeCloseTo(2, 5);
    expect(largestRise([1, 2, 3, 4, 5, 6, 7, 8, 9, 10], [0, 0, 0, 0, 0, 0, 15, 15, 15, 15], 0)).toBeCloseTo(3, 9);
    const seconds = Array.from({ length: 10 }, (_, i) => i + 1);
    const faster = seconds.map((s) => s * s);
    expect(largestRise(seconds, faster, 0)).toBeCloseTo((100 - 25) / 5, 9);
    expect(largestRise([1, 2], [20, 10], 30)).toBe(0);
  });

  it('of bodies is kept for others in pieces: full ones are shared, one that goes on is not', () => {
    const steps = [0, 0, 1, 1, 1].map((segment, row) => ({ endS: row + 1, segment }) as PlannedStep);
    const [own, other] = [createBodySeries(steps, 1), createBodySeries(steps, 1)];
    for (let row = 0; row < 3; row++) writeRow(own, row, Float32Array.of(row));
    const kept = piecesUntil(own, 3);
    takePieces(other, kept);
    writeRow(own, 3, Float32Array.of(30));
    writeRow(other, 3, Float32Array.of(40));
    expect(kept.map((piece) => [...piece])).toEqual([[0, 1], [2]]);
    expect(kept[0]).toBe(own.pieces[0]);
    expect([0, 1, 2, 3].map((row) => numberAt(own, row, 0))).toEqual([0, 1, 2, 30]);
    expect([0, 1, 2, 3].map((row) => numberAt(other, row, 0))).toEqual([0, 1, 2, 40]);
  });

  it('knows its peak', () => {
    expect(peakOf(ramp, 0)).toEqual({ celsius: 60, seconds: 3 });
    expect(peakOf(ramp, 100)).toEqual({ celsius: 100, seconds: 0 });
  });
});
