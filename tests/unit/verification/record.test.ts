import { describe, expect, it, TestRunner } from 'vitest';
import { besselI0, besselI1, besselK0, besselK1, hantush } from '../../support/verification/bessel.ts';
import { figure, verification } from '../../support/verification/record.ts';

const heading = { topic: 'Films', item: 'films', problem: 'own', source: 'none' } as const;

describe('a row of the report', () => {
  it('is written with the comparison it stands for', () => {
    const verify = verification(heading);
    verify.near('length', 'mm', 10.1, 10, 0.2);
    verify.ratio('share', '', 99, 100, 0.02);
    verify.below('error', 'K', 0.5, 1);
    verify.between('order', '', 2.02, 1.9, 2.1);
    verify.same('words', ['a'], ['a']);
    const rows = TestRunner.getCurrentTest()?.meta.verification?.[0]?.rows ?? [];
    expect(rows.map((row) => row.ok)).toEqual([true, true, true, true, true]);
    expect(rows[0]).toMatchObject({ expected: '10 mm', got: '10.1 mm', error: '+0.1', limit: '± 0.2 mm' });
    expect(rows[0]?.used).toBeCloseTo(0.5, 9);
    expect(rows[1]).toMatchObject({ error: '-1 %', limit: '± 2 %' });
  });

  it.fails.each([
    ['outside its limit', Number(10.3)],
    ['not a number', Number.NaN],
    ['endless', Number.POSITIVE_INFINITY],
  ])('fails its test when it is %s', (_name, got) => {
    verification(heading).near('length', 'mm', got, 10, 0.2);
  });

  it('gives figures that read well', () => {
    expect([1234.567, 81.2144, 0.123456, 1.23e-7, 0].map(figure)).toEqual([
      '1234.57',
      '81.214',
      '0.12346',
      '1.23e-7',
      '0',
    ]);
  });
});

describe('functions of the exact solutions, against printed tables (Abramowitz and Stegun, tables 9.8 and 5.1; from memory)', () => {
  it.each([
    ['K0(1)', besselK0(1), 0.4210244382],
    ['K1(1)', besselK1(1), 0.6019072302],
    ['I0(1)', besselI0(1), 1.2660658778],
    ['I1(1)', besselI1(1), 0.565159104],
    ['E1(1)', hantush(1, 0), 0.2193839344],
    ['E1(0.1)', hantush(0.1, 0), 1.8229239585],
  ])('%s', (_name, found, printed) => expect(found).toBeCloseTo(printed, 8));
});
