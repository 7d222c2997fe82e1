import { expect, test } from 'vitest';
import { spanBand, spansOf } from '../../../../../main/heat/uncertainty/spans.ts';

/** The run as it is, then two runs for each of `shifts`, K; seconds by a rule. */
const runsAt = (shifts: readonly number[], seconds: (celsius: number) => number) =>
  [0, ...shifts.flatMap((shift) => [-shift, shift])].map((shift) => ({
    celsius: 230 + shift,
    seconds: seconds(230 + shift),
  }));

test('seconds that follow their temperature evenly have its band, by their slope', () => {
  const even = runsAt([4, 8, 15], (celsius) => 3 * (celsius - 130));
  // 90 % of a normal distribution lie within 1.645 deviations (handbook value, from memory).
  expect(spanBand(even, 10)).toBeCloseTo(1.645 * 10 * 3, -0.3);
  const falling = runsAt([4, 8, 15], (celsius) => 3 * (330 - celsius));
  expect(spanBand(falling, 10, false)).toBeCloseTo(1.645 * 10 * 3, -0.3);
});

test('seconds cannot be less than none: what cannot happen widens no band', () => {
  const clipped = runsAt([4, 8, 15], (celsius) => Math.max(0, 3 * (celsius - 220)));
  const band = spanBand(clipped, 10);
  // 30 s now. Half of all draws rise; those that fall end at 0, 30 s below. 90 % within: the upper 10 % begin at 1.282 deviations.
  expect(band).toBeGreaterThan(0.93 * 1.282 * 10 * 3);
  expect(band).toBeLessThan(1.07 * 1.282 * 10 * 3);
});

test('what moves the seconds but not the temperature counts as well', () => {
  const even = runsAt([4, 8, 15], (celsius) => 3 * (celsius - 130));
  const slower = [
    { celsius: 230, seconds: 230 },
    { celsius: 230, seconds: 370 },
  ];
  // 70 s up and down beside 30 s: in quadrature.
  expect(spanBand([...even, ...slower], 10)).toBeGreaterThan(0.9 * 1.645 * Math.hypot(30, 70));
});

test('a figure that some run does not tell has no band', () => {
  const hanging = [{ count: 'molten', temperature: 'coldest', rises: false }];
  const told = new Map([
    ['coldest', 230],
    ['molten', 200],
  ]);
  const untold = new Map([['coldest', 210]]);
  expect(spansOf(hanging, [told, told, told], () => 10).has('molten')).toBe(true);
  expect(spansOf(hanging, [told, told, untold], () => 10).has('molten')).toBe(false);
});
