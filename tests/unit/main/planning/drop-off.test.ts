import { expect, test } from 'vitest';
import { dropOffOf } from '../../../../main/planning/drop-off.ts';
import { partOf } from './support.ts';

/** 30 g per square inch is 0.0465 g/mm2 (surface-mount process notes quoting the rule; recomputed 0.0465). */
test('the border of the rule, from mass and pad area', () => {
  const on = (massG: number) => dropOffOf(partOf('L1', 'power-inductor', { massG, padAreaMm2: 100 }));
  expect(on(4.64).mayDrop).toBe(false);
  expect(on(4.66).mayDrop).toBe(true);
  expect(on(4.65).gramsPerSquareInch).toBeCloseTo(30, 1);
});

/** Common practice, no source: chips, arrays and moulded packages stay on by surface tension; big coils do not. */
test.each([
  ['chip-capacitor', 1, 0.5, 0.5, false],
  ['chip-resistor', 3.2, 1.6, 0.6, false],
  ['bga', 23, 23, 2.2, false],
  ['qfp', 14, 14, 1.6, false],
  ['so', 4.9, 3.9, 1.6, false],
  ['power-inductor', 6, 6, 3, false],
  ['power-inductor', 12, 12, 6, true],
  ['transformer', 20, 18, 12, true],
  ['electrolytic-medium', 10, 10, 10.2, true],
] as const)('%s of %d x %d x %d mm', (classId, lengthMm, widthMm, heightMm, drops) => {
  const shape = classId.startsWith('electrolytic') ? 'round' : 'rectangle';
  const found = dropOffOf(partOf('X1', classId, { package: { name: '', shape, lengthMm, widthMm, heightMm } }));
  expect(found.mayDrop).toBe(drops);
  expect([found.massFrom, found.padFrom]).toEqual(['estimated', 'estimated']);
});

/** A moulded SO-8 weighs about 0.08 g (maker package notes, from memory); the estimate is meant for a factor of two. */
test('an estimated mass is of the right size', () => {
  const so8 = partOf('U1', 'so', {
    package: { name: '', shape: 'rectangle', lengthMm: 4.9, widthMm: 3.9, heightMm: 1.6 },
  });
  expect(dropOffOf(so8).massG).toBeGreaterThan(0.04);
  expect(dropOffOf(so8).massG).toBeLessThan(0.16);
});
