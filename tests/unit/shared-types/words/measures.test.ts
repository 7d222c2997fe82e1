import { expect, test } from 'vitest';
import { METRIC, measuresIn, rounded } from '../../../../shared-types/words/measures.ts';

test('whole degrees and tenths of millimetres', () => {
  expect(METRIC.temperature(228.4)).toBe('228 °C');
  expect(METRIC.degrees(-0.2)).toBe('0');
  expect(METRIC.length(3.125)).toBe('3.1 mm');
  expect(METRIC.rate(3.04)).toBe('3 °C/s');
  expect(METRIC.seconds(44.6)).toBe('45 s');
});

/** 100 C is 212 F, a difference of 10 K is 18 F, 25.4 mm are 1000 mil: definitions of the units. */
test('Fahrenheit and mil; a difference has no offset', () => {
  const words = measuresIn('F', 'mil');
  expect(words.temperature(100)).toBe('212 °F');
  expect(words.difference(10)).toBe('18 °F');
  expect(words.rate(3)).toBe('5.4 °F/s');
  expect(words.length(25.4)).toBe('1000 mil');
});

test('a difference that rounds to nothing is not nothing', () => {
  expect(METRIC.difference(0.3)).toBe('less than 1 °C');
  expect(METRIC.difference(-12)).toBe('12 °C');
});

test('a missing figure reads as a question mark, never as NaN', () => {
  expect(METRIC.temperature(Number.NaN)).toBe('? °C');
  expect(rounded(Number.POSITIVE_INFINITY)).toBe('?');
});
