import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { csvBytes, csvCell } from '../../../../../main/document/exports/csv.ts';
import { withoutTextMark } from '../../../../../main/document/imports/placements/values.ts';

/** Beginnings listed by OWASP, 'CSV Injection' (the full-width forms too) and by ASVS 5.0, 1.2.10 (the null character). */
const BEGINNINGS = ['=', '+', '-', '@', '\t', '\r', '\n', '\0', '\uFF1D', '\uFF0B', '\uFF0D', '\uFF20'];
const read = (bytes: Uint8Array) => Papa.parse<string[]>(new TextDecoder().decode(bytes), { delimiter: ',' }).data;

describe('texts never begin like a formula', () => {
  test.each(BEGINNINGS.map((first) => [JSON.stringify(first), first]))('%s', (_, first) => {
    for (const text of [`${first}1+1`, first, ` ${first}HYPERLINK("x";"y")`, `'${first}x`]) {
      const [[cell]] = read(csvBytes([text], []));
      expect(cell).toBe(`'${text}`);
    }
  });

  test('numbers stay numbers, negative ones too', () => {
    expect(csvCell(-12.5)).toBe('-12.5');
    expect(csvCell(1e-7)).toBe('0');
    expect(csvCell(-0)).toBe('0');
    expect(csvCell(1e9)).toBe('1000000000');
    expect(csvCell(0.1 + 0.2)).toBe('0.3');
    expect(csvCell(100)).toBe('100');
    expect([Number.NaN, Number.POSITIVE_INFINITY].map(csvCell)).toEqual(['', '']);
  });
});

test('any table comes back by a general CSV parser, once the text mark is off (RFC 4180)', () => {
  const cell = fc.oneof(
    fc.string({ unit: 'grapheme', maxLength: 8 }),
    fc.constantFrom('"', ',', ';', "''=", '\r\n', '-', ' x '),
  );
  fc.assert(
    fc.property(fc.array(fc.array(cell, { minLength: 3, maxLength: 3 }), { minLength: 1, maxLength: 5 }), (rows) => {
      const back = read(csvBytes(['a', 'b', 'c'], rows)).slice(1, -1);
      expect(back.map((row) => row.map(withoutTextMark))).toEqual(rows);
      for (const text of back.flat()) expect(text.trimStart()).not.toMatch(/^[=+\-@]/);
    }),
    { numRuns: 300, seed: 3 },
  );
});

test('plain tables carry no byte-order mark, others do', () => {
  expect(csvBytes(['a'], [['b']])[0]).toBe('a'.charCodeAt(0));
  expect([...csvBytes(['a'], [['10 µF']]).slice(0, 3)]).toEqual([0xef, 0xbb, 0xbf]);
});
