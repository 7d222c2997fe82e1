import { describe, it, test } from 'vitest';
import { E_SERIES, nearestPreferred, type SeriesName, seriesOf } from '../../shared-types/rules/e-series.ts';
import { verification } from '../support/verification/record.ts';

/** E192 as several public tables of IEC 60063 print it; 10^(185/192) rounds to 919, the tables have 920 (edaboard 373015). */
const E192 = `
  100 101 102 104 105 106 107 109 110 111 113 114 115 117 118 120 121 123 124 126 127 129 130 132 133 135 137 138
  140 142 143 145 147 149 150 152 154 156 158 160 162 164 165 167 169 172 174 176 178 180 182 184 187 189 191 193
  196 198 200 203 205 208 210 213 215 218 221 223 226 229 232 234 237 240 243 246 249 252 255 258 261 264 267 271
  274 277 280 284 287 291 294 298 301 305 309 312 316 320 324 328 332 336 340 344 348 352 357 361 365 370 374 379
  383 388 392 397 402 407 412 417 422 427 432 437 442 448 453 459 464 470 475 481 487 493 499 505 511 517 523 530
  536 542 549 556 562 569 576 583 590 597 604 612 619 626 634 642 649 657 665 673 681 690 698 706 715 723 732 741
  750 759 768 777 787 796 806 816 825 835 845 856 866 876 887 898 909 920 931 942 953 965 976 988`
  .trim()
  .split(/\s+/)
  .map(Number);

/** E24 of figures G (IEC 60063). E12, E6 and E3 are each every second of the next finer one. */
const E24 = [10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91];

const series = (problem: string, source = 'IEC 60063, as public tables print it') =>
  verification({ topic: 'Preferred values', item: 'preferred-values', problem, source });
/** Values in the wrong place, and values too many or missing. */
const wrong = (found: readonly number[], table: readonly number[]): number =>
  Array.from({ length: Math.max(found.length, table.length) }, (_, i) => found[i] === table[i]).filter((same) => !same)
    .length;

describe('E series of IEC 60063', () => {
  it('value by value', () => {
    const verify = series('Every value of every series');
    const every = (step: number) => E192.filter((_, index) => index % step === 0);
    const tables: [SeriesName, readonly number[]][] = [
      ['E192', E192],
      ['E96', every(2)],
      ['E48', every(4)],
      ['E24', E24],
      ['E12', [10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82]],
      ['E6', [10, 15, 22, 33, 47, 68]],
      ['E3', [10, 22, 47]],
    ];
    for (const [name, table] of tables)
      verify.same(`${name}: of ${table.length} values differ`, wrong(E_SERIES[name], table), 0);
    verify.same('series known', Object.keys(E_SERIES).sort(), tables.map(([name]) => name).sort());
  });
  it('departs from the formula at eight places of E24 only (figures G)', () => {
    const formula = Array.from({ length: 24 }, (_, k) => Math.round(10 * 10 ** (k / 24)));
    const odd = E_SERIES.E24.filter((value, index) => value !== formula[index]);
    const verify = series('Where E24 departs from its formula', 'IEC 60063 (from memory)');
    verify.same('values off 10 x 10^(n/24)', odd.join(' '), '27 30 33 36 39 43 47 82');
  });
});

test('says which series a value is of, the coarsest first', () => {
  const cases: [number, SeriesName | null][] = [
    [10_000, 'E3'],
    [4700, 'E3'],
    [0.22, 'E3'],
    [680, 'E6'],
    [5100, 'E24'],
    [19_100, 'E96'],
    [249, 'E48'],
    [49.9, 'E96'],
    [9200, 'E192'],
    [9190, null],
    [19_150, null],
    [0, null],
    [Number.NaN, null],
  ];
  const verify = series('The coarsest series a value is of');
  for (const [ohms, name] of cases) verify.same(`${ohms} ohm`, seriesOf(ohms) ?? 'none', name ?? 'none');
});

test('every value of every series is found in it, over twelve decades', () => {
  const misses: string[] = [];
  for (const [name, values] of Object.entries(E_SERIES) as [SeriesName, readonly number[]][])
    for (const value of values)
      for (let power = -6; power <= 6; power++) {
        const ohms = Number(`${value}e${power}`);
        if (seriesOf(ohms) === null || nearestPreferred(ohms, name) !== ohms) misses.push(`${name} ${ohms}`);
      }
  series('Every value is found again over twelve decades').same('not found', misses.join(' '), '');
});

test('nearest by ratio, across the edge of a decade too', () => {
  const verify = series('Nearest value by ratio, across the edge of a decade too');
  const nearest: [number, SeriesName, number][] = [
    [4800, 'E24', 4700],
    [4800, 'E96', 4750],
    [960, 'E24', 1000],
    [9195, 'E192', 9200],
  ];
  for (const [ohms, name, value] of nearest) verify.same(`${ohms} ohm in ${name}`, nearestPreferred(ohms, name), value);
});
