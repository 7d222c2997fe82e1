import { expect, test } from 'vitest';
import { suggestPackages, takenAtOnce } from '../../../../shared-types/rules/suggest-packages.ts';

test('a drawn body finds the nearest package, both ways round, with its error', () => {
  const [best] = suggestPackages(14.4, 10.1);
  expect(best.offer).toMatchObject({ name: 'BGA 10x14.5 0.8', lengthMm: 10, widthMm: 14.5 });
  expect(best.turned).toBe(true);
  expect(best.errorMm).toBeCloseTo(0.1, 9);
  expect(best.errorMm).toBeLessThan(takenAtOnce(14.4, 10.1));
  expect(suggestPackages(10.1, 14.4)[0].turned).toBe(false);
});

test('errors never fall along the list, and the letters at hand come first among equals', () => {
  const fits = suggestPackages(1.05, 0.48, { prefix: 'C', most: 40 });
  expect(fits[0].offer.name).toBe('C 0402');
  for (let index = 1; index < fits.length; index++)
    expect(fits[index].errorMm).toBeGreaterThan(fits[index - 1].errorMm - 0.01);
});
