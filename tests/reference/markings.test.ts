import { describe, expect, it, test } from 'vitest';
import { CHIP_SIZES } from '../../shared-types/library/packages/chip-sizes.ts';
import { EIA96_MULTIPLIERS, markingFits, mostlyUnmarked, readMarking } from '../../shared-types/rules/markings.ts';
import { verification } from '../support/verification/record.ts';

/**
 * EIA-96 codes 01 to 96 as printed by public tables (getelectronics.net/smd-resistors.php; oscilloscope manual
 * GW Instek GDS-200, page 178; found in two public decoders too). One page (3bmdesign.com) prints 237 for code 42: a slip,
 * code 37 has it already and all others say 267.
 */
const EIA96 = `
  01 100 17 147 33 215 49 316 65 464 81 681
  02 102 18 150 34 221 50 324 66 475 82 698
  03 105 19 154 35 226 51 332 67 487 83 715
  04 107 20 158 36 232 52 340 68 499 84 732
  05 110 21 162 37 237 53 348 69 511 85 750
  06 113 22 165 38 243 54 357 70 523 86 768
  07 115 23 169 39 249 55 365 71 536 87 787
  08 118 24 174 40 255 56 374 72 549 88 806
  09 121 25 178 41 261 57 383 73 562 89 825
  10 124 26 182 42 267 58 392 74 576 90 845
  11 127 27 187 43 274 59 402 75 590 91 866
  12 130 28 191 44 280 60 412 76 604 92 887
  13 133 29 196 45 287 61 422 77 619 93 909
  14 137 30 200 46 294 62 432 78 634 94 931
  15 140 31 205 47 301 63 442 79 649 95 953
  16 143 32 210 48 309 64 453 80 665 96 976`;
const words = EIA96.trim().split(/\s+/);
const codes = words.filter((_, index) => index % 2 === 0);
const significands = words.filter((_, index) => index % 2 === 1).map(Number);

/** Multipliers as the same tables print them. */
const MULTIPLIERS: Record<string, number> = {
  Z: 0.001,
  Y: 0.01,
  R: 0.01,
  X: 0.1,
  S: 0.1,
  A: 1,
  B: 10,
  H: 10,
  C: 100,
  D: 1000,
  E: 10_000,
  F: 100_000,
};

const marks = (problem: string, source: string) =>
  verification({ topic: 'Markings', item: 'markings', problem, source });
const told = (marking: string): string =>
  readMarking(marking)
    .map(
      ({ system, ohms, tolerancePercent }) =>
        `${ohms} ohm${tolerancePercent === null ? '' : `, ${tolerancePercent} %`} (${system})`,
    )
    .join(' or ') || 'no reading';
const values = (marking: string) => readMarking(marking).map((reading) => reading.ohms);

describe('EIA-96', () => {
  it('has every letter of the tables and no other', () => {
    expect(Object.keys(EIA96_MULTIPLIERS).sort()).toEqual(Object.keys(MULTIPLIERS).sort());
  });

  test.each(Object.entries(MULTIPLIERS))('letter %s times %s on all 96 codes', (letter, multiplier) => {
    expect(codes).toHaveLength(96);
    const wrong = codes.filter((code, index) => {
      const found = readMarking(code + letter).filter((reading) => reading.system === 'eia-96');
      const ohms = found[0]?.ohms ?? Number.NaN;
      const near = Math.abs(ohms - significands[index]! * multiplier) < 5e-7;
      return found.length !== 1 || !near || found[0]?.tolerancePercent !== 1;
    });
    const verify = marks(
      'EIA-96: all codes with every letter',
      'public tables: getelectronics.net, GW Instek GDS-200 manual p. 178 (found)',
    );
    verify.same(`letter ${letter}, times ${multiplier}: of 96 codes wrong`, wrong.length, 0);
  });

  it('gives the worked values of figures G: 01C = 10 k, 01F = 10 M', () => {
    const verify = marks('EIA-96: worked values', 'public tables (found)');
    verify.same('01C', told('01C'), '10000 ohm, 1 % (eia-96)');
    verify.same('01F', told('01F'), '10000000 ohm, 1 % (eia-96)');
  });

  it('knows no code 00, none above 96 and no other letters', () => {
    for (const marking of ['00A', '97A', '99C', '00C', '01I', '01J', '01N', '01P', '01Q', '01U', '01V', '01W'])
      expect(readMarking(marking)).toEqual([]);
  });
});

describe('three and four digits', () => {
  // getelectronics.net (330 331 332 3300 3301 3302 102 100), GW Instek manual (220), 3bmdesign.com (470 561 223 5362 8663).
  test.each([
    ['100', 10],
    ['102', 1000],
    ['220', 22],
    ['330', 33],
    ['331', 330],
    ['332', 3300],
    ['470', 47],
    ['561', 560],
    ['223', 22_000],
  ])('%s is %s ohm', (marking, ohms) => {
    const verify = marks('Three digits', 'getelectronics.net, GW Instek manual, 3bmdesign.com (found)');
    verify.same(marking, told(marking), `${ohms} ohm (three-digit)`);
  });

  test.each([
    ['1000', 100],
    ['3300', 330],
    ['3301', 3300],
    ['3302', 33_000],
    ['5362', 53_600],
    ['8663', 866_000],
    ['1002', 10_000],
  ])('%s is %s ohm, 1 %%', (marking, ohms) => {
    const verify = marks('Four digits', 'getelectronics.net, 3bmdesign.com (found)');
    verify.same(marking, told(marking), `${ohms} ohm, 1 % (four-digit)`);
  });

  it('takes a tolerance letter behind the digits (common practice, no source)', () => {
    expect(readMarking('103J')).toEqual([{ system: 'three-digit', ohms: 10_000, tolerancePercent: 5 }]);
    expect(readMarking('1002D')).toEqual([{ system: 'four-digit', ohms: 10_000, tolerancePercent: 0.5 }]);
  });

  it('reads no number that begins with 0, and none of another length', () => {
    for (const marking of ['012', '0100', '12', '1', '12345', '']) expect(readMarking(marking)).toEqual([]);
  });
});

describe('links (figures G)', () => {
  test.each(['0', '00', '000', '0000', '0R', '0R0', '0R00'])('%s', (marking) => {
    marks('Links', 'public tables (found)').same(marking, told(marking), '0 ohm (link)');
  });
});

describe('letters of IEC 60062', () => {
  // Examples of the public article on the RKM code (en.wikipedia.org/wiki/RKM_code), of 3bmdesign.com (1R2, 0R47) and
  // of the GW Instek manual (12R0); R10 and R300 from probsee.com/p/RKM_code.
  test.each([
    ['R47', 0.47],
    ['4R7', 4.7],
    ['470R', 470],
    ['4K7', 4700],
    ['47K', 47_000],
    ['47K3', 47_300],
    ['4M7', 4_700_000],
    ['1K0', 1000],
    ['2M2', 2_200_000],
    ['R10', 0.1],
    ['R300', 0.3],
    ['1R2', 1.2],
    ['0R47', 0.47],
    ['12R0', 12],
    // L, G and T from figures G (from memory).
    ['5L0', 0.005],
    ['L50', 0.0005],
    ['1G5', 1.5e9],
    ['1T0', 1e12],
  ])('%s is %s ohm', (marking, ohms) => {
    const verify = marks(
      'Letters of IEC 60062',
      'en.wikipedia.org/wiki/RKM_code, 3bmdesign.com, GW Instek manual, probsee.com (found); L, G, T from memory',
    );
    verify.same(marking, told(marking), `${ohms} ohm (letter-code)`);
  });

  // Tolerance letters of figures G: B .1 C .25 D .5 F 1 G 2 J 5 K 10 M 20 %.
  test.each([
    ['B', 0.1],
    ['C', 0.25],
    ['D', 0.5],
    ['F', 1],
    ['G', 2],
    ['J', 5],
    ['K', 10],
    ['M', 20],
  ])('tolerance letter %s is %s %%', (letter, percent) => {
    const verify = marks('Tolerance letters of IEC 60062', 'from memory');
    verify.same(`4K7${letter}`, told(`4K7${letter}`), `4700 ohm, ${percent} % (letter-code)`);
    expect(readMarking(`R22${letter}`)[0]).toMatchObject({ ohms: 0.22, tolerancePercent: percent });
  });

  it('reads a small m both ways: the case of print on a chip cannot be trusted', () => {
    expect(values('4m7').sort()).toEqual([0.0047, 4_700_000].sort());
    expect(values('4M7')).toEqual([4_700_000]);
  });
});

describe('markings with two readings', () => {
  // Figures G: '10R' and '22R' can be RKM (10, 22 ohm) as well as EIA-96.
  it('shows both for two digits and R', () => {
    const verify = marks('Markings with two readings: both are shown', 'the two public systems overlap for 01R to 96R');
    verify.same('10R', told('10R'), '1.24 ohm, 1 % (eia-96) or 10 ohm (letter-code)');
    verify.same('22R', told('22R'), '1.65 ohm, 1 % (eia-96) or 22 ohm (letter-code)');
  });

  it('is ambiguous for 01R to 96R and nowhere else among two digits and a letter', () => {
    const letters = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'];
    const all = Array.from({ length: 100 }, (_, n) => String(n).padStart(2, '0')).flatMap((n) =>
      letters.map((l) => n + l),
    );
    const ambiguous = all.filter((marking) => readMarking(marking).length > 1);
    const verify = marks('Markings with two readings: both are shown', 'the two public systems overlap for 01R to 96R');
    verify.same('ambiguous among 2600 of two digits and a letter', ambiguous.length, 96);
    expect(ambiguous).toEqual(codes.map((code) => `${code}R`).toSorted());
  });

  it('shows both where the letter behind three digits may be point or tolerance', () => {
    // 470 kilohm by the article's example; 47 ohm, 10 % by three digits and the tolerance letter K.
    expect(readMarking('470K')).toEqual([
      { system: 'three-digit', ohms: 47, tolerancePercent: 10 },
      { system: 'letter-code', ohms: 470_000, tolerancePercent: null },
    ]);
  });

  it('says so when only one reading fits what belongs there', () => {
    expect(markingFits('10R', 10)).toBe('ambiguous');
    expect(markingFits('10R', 1.24)).toBe('ambiguous');
    expect(markingFits('01C', 10_000)).toBe('fits');
    expect(markingFits('103', 4700)).toBe('differs');
    expect(markingFits('??', 10)).toBe('not-readable');
  });
});

test('no marking is expected on 0402 and smaller (common practice, no source)', () => {
  const unmarked = CHIP_SIZES.filter((size) => mostlyUnmarked(size.lengthMm, size.widthMm)).map((size) => size.inch);
  expect(unmarked.toSorted()).toEqual(['008004', '01005', '0201', '0402', '0404']);
});
