import { expect, test } from 'vitest';
import { parseClock } from '../../../../shared-types/rules/clock-time.ts';
import { clock } from '../../../../shared-types/words/work-map.ts';

test('a time is read as minutes and seconds or as seconds, and nothing else', () => {
  expect(['6:01', '361', '361 s', ' 0:07 '].map(parseClock)).toEqual([361, 361, 361, 7]);
  expect(['', '6:75', '6.1', 'six', '-3', '6:'].map(parseClock)).toEqual([null, null, null, null, null, null]);
  for (const seconds of [0, 59, 60, 3599]) expect(parseClock(clock(seconds))).toBe(seconds);
});
