import { expect, test } from 'vitest';
import {
  readAngle,
  readLength,
  readMirror,
  readSide,
  usesDecimalComma,
} from '../../../../../../main/document/imports/placements/values.ts';

test.each([
  ['885.826mil', false, { value: 885.826, unit: 'mil' }],
  ['-3.5 mm', false, { value: -3.5, unit: 'mm' }],
  ['12,5', true, { value: 12.5, unit: null }],
  ['1,234.5', false, { value: 1234.5, unit: null }],
  ['1.234,5', true, { value: 1234.5, unit: null }],
  ['250µm', false, { value: 250, unit: 'um' }],
  ['1e1', false, { value: 10, unit: null }],
])('length %s', (cell, comma, expected) => {
  expect(readLength(cell, comma)).toEqual(expected);
});

test.each(['', 'abc', '12 parsecs', '1.2.3', 'T'])('no length: %j', (cell) => {
  expect(readLength(cell, false)).toBeNull();
});

test.each([
  ['90.00', 90],
  ['-90', -90],
  ['360', 360],
  ['22.5°', 22.5],
  ['45 deg', 45],
])('angle %s', (cell, degrees) => {
  expect(readAngle(cell, false)).toBe(degrees);
});

test.each([
  ['TOP', 'top'],
  ['t', 'top'],
  ['TopLayer', 'top'],
  ['F.Cu', 'top'],
  ['Component Side', 'top'],
  ['bottom', 'bottom'],
  ['Bot', 'bottom'],
  ['BottomLayer', 'bottom'],
  ['B.Cu', 'bottom'],
  ['Solder side', 'bottom'],
  ['Inner 2', 'inner'],
  ['Mid-Layer 3', 'inner'],
  ['elsewhere', null],
])('side word %s', (cell, side) => {
  expect(readSide(cell)).toBe(side);
});

test('mirror words', () => {
  expect(['YES', 'm', 'True', '1'].map(readMirror)).toEqual(['bottom', 'bottom', 'bottom', 'bottom']);
  expect(['NO', '', 'false', '0'].map(readMirror)).toEqual(['top', 'top', 'top', 'top']);
});

test('a decimal comma is told from a thousands comma by the column', () => {
  expect(usesDecimalComma(['1,5', '20,25', '-3,0'])).toBe(true);
  expect(usesDecimalComma(['1.5', '20.25', '1,200.5'])).toBe(false);
});
