import { expect, test } from 'vitest';
import { parseResistance, parseTolerance, sameOhms } from '../../../../../shared-types/rules/resistance.ts';

test.each([
  ['10k', 10_000, null],
  ['4k7', 4700, null],
  ['4.7k', 4700, null],
  ['4,7 kΩ', 4700, null],
  ['4.7 kOhm', 4700, null],
  ['19k1', 19_100, null],
  ['249R', 249, null],
  ['22', 22, null],
  ['0R', 0, null],
  ['0', 0, null],
  ['link', 0, null],
  ['1M', 1e6, null],
  ['1 MOhm', 1e6, null],
  ['100 mohm', 0.1, null],
  ['5m', 0.005, null],
  ['R22', 0.22, null],
  ['10k 1%', 10_000, 1],
  ['10k ±0.5 %', 10_000, 0.5],
  ['10k/1%', 10_000, 1],
  ['1% 10k', 10_000, 1],
  ['4k7J', 4700, 5],
  ['10k 0402', 10_000, null],
  ['10k/0603/1%', 10_000, 1],
  ['4k7 ohm', 4700, null],
] as const)('%s', (text, ohms, tolerancePercent) => {
  expect(parseResistance(text)).toEqual({ ohms, tolerancePercent });
});

test.each(['', 'DNP', '100n', '10u', '4x33', 'HG-MEM8G', 'k', '-5', '10kx', '1e3'])('%s is no resistance', (text) => {
  expect(parseResistance(text)).toBeNull();
});

test('tolerances in per cent or by letter', () => {
  expect(['1', '1%', '±0,5 %', '+/-5%', 'F', 'j'].map(parseTolerance)).toEqual([1, 1, 0.5, 5, 1, 5]);
  expect(['', 'x', 'about 1'].map(parseTolerance)).toEqual([null, null, null]);
});

test('a link is the same as no other value', () => {
  expect(sameOhms(0, 0)).toBe(true);
  expect(sameOhms(0, 0.1)).toBe(false);
  expect(sameOhms(4700, 4700.0000001)).toBe(true);
  expect(sameOhms(4700, 4701)).toBe(false);
});
