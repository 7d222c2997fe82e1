import { expect, test } from 'vitest';
import { PART_CLASSES } from '../../../../shared-types/library/classes.ts';
import { freeRefdes, freeSeries, nextOfPrefix, prefixOfClass } from '../../../../shared-types/rules/refdes.ts';

const taken = new Set(['C1', 'C2', 'C4', 'U7', 'X']);

test('a free designator stays, a taken one counts up to the next free number of its letters', () => {
  expect(freeRefdes('C3', taken)).toBe('C3');
  expect(freeRefdes('C1', taken)).toBe('C3');
  expect(freeRefdes(' C4 ', taken)).toBe('C5');
  expect(freeRefdes('X', taken)).toBe('X1');
  expect(freeRefdes('', new Set())).toBe('X1');
});

test('a series skips what is taken, and a prefix goes on above its highest', () => {
  expect(freeSeries('C2', 3, taken)).toEqual(['C3', 'C5', 'C6']);
  expect(nextOfPrefix('C', taken)).toBe('C5');
  expect(nextOfPrefix('R', taken)).toBe('R1');
});

test('letters of a class', () => {
  const of = (id: string) => prefixOfClass(id);
  expect(['chip-capacitor', 'electrolytic-small', 'chip-resistor', 'bga', 'diode', 'crystal'].map(of)).toEqual([
    'C',
    'C',
    'R',
    'U',
    'D',
    'Y',
  ]);
  for (const { id } of PART_CLASSES) expect(of(id)).toMatch(/^[A-Z]{1,3}$/);
});
