import { describe, expect, it } from 'vitest';
import { isClassId } from '../../../../shared-types/library/classes.ts';
import { chipByInch, chipByMetric, chipsOfCode } from '../../../../shared-types/library/packages/chip-sizes.ts';
import { electrolyticClass } from '../../../../shared-types/library/packages/others.ts';
import { findPackage, PACKAGES, searchPackages } from '../../../../shared-types/library/packages.ts';

/** Inch code, metric code, length, width in mm: published chip size charts (circflow.com; core-emt.com for 6332). */
const CHART: [string, string, number, number][] = [
  ['01005', '0402', 0.4, 0.2],
  ['0201', '0603', 0.6, 0.3],
  ['0402', '1005', 1.0, 0.5],
  ['0603', '1608', 1.6, 0.8],
  ['0805', '2012', 2.0, 1.25],
  ['1206', '3216', 3.2, 1.6],
  ['1210', '3225', 3.2, 2.5],
  ['1812', '4532', 4.5, 3.2],
  ['2010', '5025', 5.0, 2.5],
  ['2512', '6332', 6.3, 3.2],
];

describe('chip sizes', () => {
  it('agree with the published chart in both systems', () => {
    for (const [inch, metric, lengthMm, widthMm] of CHART) {
      expect(chipByInch(inch), inch).toMatchObject({ metric, lengthMm, widthMm });
      expect(chipByMetric(metric), metric).toMatchObject({ inch, lengthMm, widthMm });
    }
    expect(chipByMetric('6432')?.lengthMm).toBe(6.4);
  });

  it('know the three codes that exist in both systems', () => {
    const twofold = CHART.flatMap(([inch, metric]) => [inch, metric] as const).filter(
      (code) => chipsOfCode(code).length > 1,
    );
    expect([...new Set(twofold)].sort()).toEqual(['0201', '0402', '0603']);
  });
});

describe('packages', () => {
  it('have unique names, known classes and believable bodies', () => {
    expect(new Set(PACKAGES.map((one) => one.name)).size).toBe(PACKAGES.length);
    for (const one of PACKAGES) {
      expect(isClassId(one.classId), one.name).toBe(true);
      expect(one.heightMm, one.name).toBeGreaterThan(0);
      if (one.shape === 'round') expect(one.lengthMm, one.name).toBe(one.widthMm);
    }
  });

  it('are found whatever the case, spaces and dashes', () => {
    expect(findPackage('soic8')).toMatchObject({ name: 'SOIC-8', lengthMm: 4.9, widthMm: 3.9 });
    expect(findPackage('bga 17X17 0.8')).toMatchObject({ lengthMm: 17, classId: 'bga' });
    expect(findPackage('C0402')?.classId).toBe('chip-capacitor');
    expect(findPackage('C 1210')?.classId).toBe('chip-capacitor-large');
    expect(findPackage('nothing of the kind')).toBeUndefined();
  });

  it('are offered while somebody types, the nearest first', () => {
    expect(searchPackages('0603')[0].name).toBe('R 0603');
    expect(searchPackages('bga 17')[0].name).toBe('BGA 17x17 0.8');
    expect(searchPackages('electrolytic 8').every((one) => one.name.includes('8'))).toBe(true);
    expect(searchPackages('zzz')).toEqual([]);
    expect(searchPackages('', 5)).toHaveLength(5);
  });

  it('put electrolytics into the diameter classes of their maker (4-6.3, 8-10, 12.5-18)', () => {
    expect([4, 6.3].map(electrolyticClass)).toEqual(['electrolytic-small', 'electrolytic-small']);
    expect([8, 10].map(electrolyticClass)).toEqual(['electrolytic-medium', 'electrolytic-medium']);
    expect([12.5, 18].map(electrolyticClass)).toEqual(['electrolytic-large', 'electrolytic-large']);
  });
});
