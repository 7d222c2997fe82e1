import { describe, expect, it } from 'vitest';
import { classificationC } from '../../../../shared-types/library/package-limits.ts';

/**
 * J-STD-020 (rev. D.1, E and F print the same figures) Table 4-2, Pb-free classification temperature, C.
 * Rows: thickness < 1.6, 1.6-2.5, > 2.5 mm; columns: volume < 350, 350-2000, > 2000 mm3.
 */
const TABLE_4_2 = [
  [260, 260, 260],
  [260, 250, 245],
  [250, 245, 245],
];
const THICKNESSES = [
  [0.5, 1.0, 1.59, 1.5999],
  [1.6, 2.0, 2.5],
  [2.5001, 2.6, 6],
];
const VOLUMES = [
  [1, 200, 349, 349.99],
  [350, 1000, 2000],
  [2000.01, 2001, 20000],
];

describe('classification temperature, J-STD-020', () => {
  it('gives every field of Table 4-2 and its borders (Pb-free)', () => {
    TABLE_4_2.forEach((row, i) => {
      row.forEach((celsius, j) => {
        for (const thickness of THICKNESSES[i])
          for (const volume of VOLUMES[j])
            expect(classificationC(thickness, volume, 'lead-free'), `${thickness} mm, ${volume} mm3`).toBe(celsius);
      });
    });
  });

  it('gives every field of Table 4-1 and its borders (SnPb)', () => {
    // Thickness < 2.5 and >= 2.5 mm; volume < 350 and >= 350 mm3.
    const fields: [number, number, number][] = [
      [1, 349.9, 235],
      [2.4999, 349.9, 235],
      [1, 350, 220],
      [2.4999, 5000, 220],
      [2.5, 100, 220],
      [2.5, 350, 220],
      [4, 5000, 220],
    ];
    for (const [thickness, volume, celsius] of fields)
      expect(classificationC(thickness, volume, 'tin-lead'), `${thickness} mm, ${volume} mm3`).toBe(celsius);
  });

  it('never stands more when a package gets thicker or larger', () => {
    for (const process of ['lead-free', 'tin-lead'] as const)
      for (let thickness = 0.2; thickness < 5; thickness += 0.1)
        for (let volume = 50; volume < 4000; volume += 50) {
          const here = classificationC(thickness, volume, process);
          expect(classificationC(thickness + 0.1, volume, process)).toBeLessThanOrEqual(here);
          expect(classificationC(thickness, volume + 50, process)).toBeLessThanOrEqual(here);
        }
  });
});
