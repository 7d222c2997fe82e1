import { describe, expect, it } from 'vitest';
import { createBodySeries, largestRises, writeRow } from '../../../../main/heat/body-series.ts';
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
    expect(largestRise([1, 2], [20, 10], 30)).toBe(0);
  });

  it('knows its peak', () => {
    expect(peakOf(ramp, 0)).toEqual({ celsius: 60, seconds: 3 });
    expect(peakOf(ramp, 100)).toEqual({ celsius: 100, seconds: 0 });
  });
});
