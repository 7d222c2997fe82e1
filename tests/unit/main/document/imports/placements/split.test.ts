import { describe, expect, test } from 'vitest';
import { importBoard } from '../../../../../../main/document/imports/import-board.ts';
import { splitDelimited } from '../../../../../../main/document/imports/placements/split.ts';

describe('cells of a line with quotes', () => {
  test.each<[string, string, string[]]>([
    ['"a" ! "" ! "b, c"', '!', ['a', '', 'b, c']],
    ['"a","",""', ',', ['a', '', '']],
    // RFC 4180: a quote within a quoted cell is doubled.
    ['"HEADER .05"" SMD",x', ',', ['HEADER .05" SMD', 'x']],
    ['"5""",x', ',', ['5"', 'x']],
    ['"5"", b",x', ',', ['5", b', 'x']],
    // As some programs leave it.
    ['"HEADER .05" SMD",x', ',', ['HEADER .05" SMD', 'x']],
    ['"5"",x', ',', ['5"', 'x']],
    ['a"b,c', ',', ['a"b', 'c']],
    ['"a\t"\t"b"', '\t', ['a', 'b']],
    ['"never closed,x', ',', ['"never closed', 'x']],
    ['"a",', ',', ['a', '']],
  ])('%s', (line, delimiter, cells) => {
    expect(splitDelimited(line, delimiter)).toEqual(cells);
  });
});

const partsOf = (text: string) => {
  const result = importBoard([{ name: 'a-top.txt', bytes: new TextEncoder().encode(text) }]);
  if (!result.ok) throw new Error(result.problem.code);
  return result.value.board.parts.map(({ refdes, value, package: { name } }) => [refdes, value, name]);
};

test('fixed columns without headings keep the blanks of their texts', () => {
  const text = [
    'C1   10.25  12.15  180.00  4.7 uF          C_0402_INV',
    'R2    1.50   2.00    0.00  HEADER .05 SMD  R0603-X',
    'R3    4.50   9.00   90.00  10k             R0603-X',
    'U4   24.50   3.00   22.50  600R, 2A        FIVELEG',
  ].join('\n');
  expect(partsOf(text)).toEqual([
    ['C1', '4.7 uF', 'C_0402_INV'],
    ['R2', 'HEADER .05 SMD', 'R0603-X'],
    ['R3', '10k', 'R0603-X'],
    ['U4', '600R, 2A', 'FIVELEG'],
  ]);
});

test('a reference such as C17A at the start of a line makes no netlist of a table', () => {
  const text =
    'Ref  Val  Package  X (mm)  Y (mm)  Rot\nC17A 1u   C0402    11.5    2.5     90\nR2   10k  R0402    1.5     22.5    0\n';
  expect(partsOf(text).map(([refdes]) => refdes)).toEqual(['C17A', 'R2']);
});
