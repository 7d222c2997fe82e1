import { describe, expect, test } from 'vitest';
import { E_SERIES } from '../../../../../shared-types/rules/e-series.ts';
import { groupFaults } from '../../../../../shared-types/rules/straps/check.ts';
import { armOf, codesOf, dividerSpan } from '../../../../../shared-types/rules/straps/divider.ts';
import { planStraps } from '../../../../../shared-types/rules/straps/plan-straps.ts';
import { readGroup } from '../../../../../shared-types/rules/straps/read.ts';
import type { StrapGroupOf } from '../../../../../shared-types/straps.ts';
import { refusalWords } from '../../../../../shared-types/words/straps.ts';
import { position, strapPart, strapTicket } from '../../../../support/straps.ts';

/** Equal windows over the supply, as a converter of that many codes reads a ratio. */
const windows = (codes: number, supplyV: number) =>
  Array.from({ length: codes }, (_, code) => ({
    code: String(code),
    fromV: (supplyV * code) / codes,
    toV: (supplyV * (code + 1)) / codes,
  }));

function divider(fields: Partial<StrapGroupOf<'divider'>> = {}): StrapGroupOf<'divider'> {
  return {
    kind: 'divider',
    id: 'G',
    name: 'G',
    describes: [],
    positions: [position('R1', '', 1), position('R2', '', 1)],
    top: 'R1',
    bottom: 'R2',
    supplyV: 3.3,
    supplyTolerancePercent: 5,
    ratiometric: true,
    converterErrorMv: 0,
    windows: windows(8, 3.3),
    settings: [],
    ...fields,
  };
}
const setting = (label: string, code: string, top: string | null, bottom: string | null) => ({
  id: label,
  label,
  maker: '',
  capacity: null,
  code,
  top,
  bottom,
});

describe('worst case', () => {
  test('10k over 4k7, 1 %, by hand: 3.3 x 4653 / (10100 + 4653) to 3.3 x 4747 / (9900 + 4747)', () => {
    const group = divider();
    const span = dividerSpan(group, { ohms: 10_000, tolerancePercent: 1 }, { ohms: 4700, tolerancePercent: 1 })!;
    expect(span.lowV).toBeCloseTo(1.04079, 4);
    expect(span.nominalV).toBeCloseTo(1.0551, 4);
    expect(span.highV).toBeCloseTo(1.06951, 4);
  });

  test('supply and converter count where the converter has a reference of its own', () => {
    const group = divider({ ratiometric: false, converterErrorMv: 10 });
    const span = dividerSpan(group, { ohms: 10_000, tolerancePercent: 0 }, { ohms: 10_000, tolerancePercent: 0 })!;
    expect([span.lowV, span.highV]).toEqual([expect.closeTo(1.5575, 9), expect.closeTo(1.7425, 9)]);
  });

  test('an empty arm pulls to the other end; both empty, or two links, define nothing', () => {
    const arm = { ohms: 10_000, tolerancePercent: 1 };
    expect(dividerSpan(divider(), arm, null)).toMatchObject({ nominalV: 3.3 });
    expect(dividerSpan(divider(), null, arm)).toMatchObject({ nominalV: 0, lowV: 0 });
    expect(dividerSpan(divider(), null, null)).toBeNull();
    const link = { ohms: 0, tolerancePercent: 0 };
    expect(dividerSpan(divider(), link, link)).toBeNull();
  });

  test('no combination of parts inside their tolerances leaves the span', () => {
    const group = divider({ ratiometric: false, converterErrorMv: 4 });
    for (const [top, bottom] of [
      [10_000, 4700],
      [1000, 91_000],
      [47_000, 22],
    ]) {
      const span = dividerSpan(group, { ohms: top, tolerancePercent: 5 }, { ohms: bottom, tolerancePercent: 1 })!;
      for (let step = 0; step < 500; step++) {
        const at = (percent: number, n: number) => 1 + (percent / 100) * Math.sin(n * 12.9898 + step * 78.233);
        const [t, b, supply] = [top * at(5, 1), bottom * at(1, 2), 3.3 * at(5, 3)];
        const volts = Math.max(0, (supply * b) / (t + b) + 0.004 * Math.sin(step));
        expect(volts).toBeGreaterThanOrEqual(span.lowV - 1e-9);
        expect(volts).toBeLessThanOrEqual(span.highV + 1e-9);
      }
    }
  });
});

describe('codes', () => {
  test('a span that touches an inner edge can be read as either; the outer ends are open', () => {
    const group = divider({ windows: windows(4, 4), supplyV: 4 });
    const codes = (lowV: number, highV: number) => codesOf(group, { lowV, nominalV: lowV, highV });
    expect(codes(1.1, 1.9)).toMatchObject({ codes: ['1'], alone: { code: '1' } });
    expect(codes(1.1, 2)).toMatchObject({ codes: ['1', '2'], alone: null });
    expect(codes(0, 0.5).alone?.code).toBe('0');
    expect(codes(3.5, 4.2).alone?.code).toBe('3');
  });

  test('a gap between windows, and a top window that ends below the supply, are no code', () => {
    const group = divider({
      supplyV: 4,
      windows: [
        { code: 'A', fromV: 0, toV: 1 },
        { code: 'B', fromV: 2, toV: 3 },
      ],
    });
    const codes = (lowV: number, highV: number) => codesOf(group, { lowV, nominalV: lowV, highV });
    expect(codes(1.2, 1.8)).toEqual({ codes: [], alone: null });
    expect(codes(2.5, 3.1)).toMatchObject({ codes: ['B'], alone: null });
  });
});

describe('sixteen codes of E96 values at 1 %', () => {
  const e96 = E_SERIES.E96;
  /** For each code the lower arm of 10k .. 97k6 .. whose ratio to 10k comes nearest to the middle of the window. */
  const lower = (code: number): string => {
    const ratio = (code + 0.5) / 16;
    const wanted = (10_000 * ratio) / (1 - ratio);
    const all = [0.1, 1, 10, 100, 1000].flatMap((decade) => e96.map((value) => value * decade));
    return String(all.reduce((best, value) => (Math.abs(value - wanted) < Math.abs(best - wanted) ? value : best)));
  };
  const settings = Array.from({ length: 16 }, (_, code) => setting(`code ${code}`, String(code), '10k', lower(code)));

  test('none is ambiguous at 1 %; at 10 % the middle ones are, and are refused', () => {
    const group = divider({ windows: windows(16, 3.3), settings, converterErrorMv: 5 });
    const board = strapTicket([strapPart('R1', '10k'), strapPart('R2', '10k -')], [group]).board;
    expect(groupFaults(board, group)).toEqual([]);
    const coarse = { ...group, positions: [position('R1', '', 10), position('R2', '', 10)] };
    const faulty = groupFaults(board, coarse).flatMap((fault) => ('setting' in fault ? [fault.setting] : []));
    expect(faulty).toContain('code 7');
    expect(faulty).not.toContain('code 15');
  });

  test('every code is read back from its own values', () => {
    const group = divider({ windows: windows(16, 3.3), settings, converterErrorMv: 5 });
    for (const one of settings) {
      const parts = [strapPart('R1', one.top ?? ''), strapPart('R2', one.bottom ?? '')];
      expect(readGroup(strapTicket(parts, [group]).board, [], group)).toMatchObject({ code: one.code, doubts: [] });
    }
  });
});

test('an ambiguous code is refused with its voltages and the codes it can be read as; nothing is moved', () => {
  const group = divider({ settings: [setting('half', '4', '10k', '10k'), setting('low', '2', '10k', '4k7')] });
  const { board, plan } = strapTicket([strapPart('R1', '10k'), strapPart('R2', '4k7')], [group], { G: 'half' });
  const { moves, refused } = planStraps(board, plan);
  expect(moves).toEqual([]);
  expect(refused.map(refusalWords)[0]).toMatch(/code 4 is ambiguous: .*1\.6\d\d V to 1\.6\d\d V can be read as 3, 4/);
});

test('values with no tolerance told count as 5 %, one written with the value wins', () => {
  const group = divider({ positions: [position('R1', ''), position('R2', '')] });
  expect(armOf(group, 'R1', '10k')).toEqual({ ohms: 10_000, tolerancePercent: 5 });
  expect(armOf(group, 'R1', '10k 0.5%')).toEqual({ ohms: 10_000, tolerancePercent: 0.5 });
  expect(armOf(group, 'R1', null)).toBeNull();
});
