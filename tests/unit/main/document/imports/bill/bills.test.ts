import { describe, expect, test } from 'vitest';
import { readBill } from '../../../../../../main/document/imports/bill/read-bill.ts';
import { splitReferences } from '../../../../../../main/document/imports/bill/references.ts';
import { importBoard } from '../../../../../../main/document/imports/import-board.ts';
import { inventedFiles } from '../invented-board.ts';

const file = (name: string, text: string) => ({ name, bytes: new TextEncoder().encode(text) });
const linesOf = (text: string) => Object.fromEntries(readBill(text, 'bom.csv')?.lines ?? []);

describe('references in one cell', () => {
  test.each([
    ['C1, C4,C7', null, ['C1', 'C4', 'C7']],
    ['C1 C4;C7/C8', null, ['C1', 'C4', 'C7', 'C8']],
    ['R1-R4', 4, ['R1', 'R2', 'R3', 'R4']],
    ['R1 - R3, R9', null, ['R1', 'R2', 'R3', 'R9']],
    ['R1..R3', null, ['R1', 'R2', 'R3']],
    ['R1-R2', 1, ['R1-R2']],
    ['IC1-2', null, ['IC1-2']],
    ['R1-C3', null, ['R1-C3']],
    ['R9-R1', null, ['R9-R1']],
    ['R1-R999999', null, ['R1-R999999']],
    ['', null, []],
  ])('%s (%s)', (cell, quantity, expected) => {
    expect(splitReferences(cell, quantity)).toEqual(expected);
  });
});

test('fixed columns: texts with blanks, references in a row, an empty cell, a total below', () => {
  const text = [
    'Bill of materials of an invented board',
    '',
    'Qty  Reference    Value         Footprint     DNP',
    '---  -----------  ------------  ------------  ---',
    '3    C1, C2, C7   100n, 16 V    C_0402',
    '1    R1           10 k                        x',
    '2    R2-R3        4k7           R_0603',
    'Total: 6',
  ].join('\n');
  expect(linesOf(text)).toEqual({
    C1: { value: '100n, 16 V', packageName: 'C_0402', fitted: true },
    C2: { value: '100n, 16 V', packageName: 'C_0402', fitted: true },
    C7: { value: '100n, 16 V', packageName: 'C_0402', fitted: true },
    R1: { value: '10 k', packageName: '', fitted: false },
    R2: { value: '4k7', packageName: 'R_0603', fitted: true },
    R3: { value: '4k7', packageName: 'R_0603', fitted: true },
  });
});

describe('dialects', () => {
  const line = (value: string, packageName: string, fitted = true) => ({ value, packageName, fitted });

  test('grouped, with a preamble, quoted lists and a column of empty positions', () => {
    const text = [
      'Bill of materials,,,,',
      '',
      'Item,Qty,Reference(s),Value,Footprint,DNP',
      '1,3,"C1, C2, C3",100n,C_0402,',
      '2,1,R9,10k,R_0603,X',
      '3,1,PCB,board,,',
    ].join('\r\n');
    expect(linesOf(text)).toEqual({
      C1: line('100n', 'C_0402'),
      C2: line('100n', 'C_0402'),
      C3: line('100n', 'C_0402'),
      R9: line('10k', 'R_0603', false),
    });
  });

  test('semicolons, a fitted column, a value that says empty, quantity 0', () => {
    const text =
      'Parts;Value;Package;Fitted;Qty\nR1;1k;0402;yes;1\nR2;1k;0402;no;1\nR3;DNP;0402;yes;1\nR4;1k;0402;yes;0\n';
    expect(linesOf(text)).toEqual({
      R1: line('1k', '0402'),
      R2: line('1k', '0402', false),
      R3: line('', '0402', false),
      R4: line('1k', '0402', false),
    });
  });

  test('part number or description where no value stands; a second table adds what was missing', () => {
    const text =
      'Designator,Comment,MPN,Description\nU1,,ABC-1,Regulator\nU2,,,Sensor\nDesignator,Comment,MPN,Description\n"U1,U2",late,,\n';
    expect(linesOf(text)).toEqual({ U1: line('ABC-1', ''), U2: line('Sensor', '') });
  });

  test('a table of positions and a letter are no bills', () => {
    expect(readBill('Dear reader,\nthe parts are listed below, by value.\n', 'x')).toBeNull();
    expect(readBill('Designator,Qty\nR1,1\n', 'x')).toBeNull();
    const placed = importBoard([file('a.csv', 'Designator,Value,Footprint,Mid X (mm),Mid Y (mm)\nR1,1k,0402,1,2\n')]);
    expect(placed.ok && placed.value.board.parts).toHaveLength(1);
  });
});

describe('merged by reference', () => {
  const bare = inventedFiles({ heading: 'Ref,Unused A,Unused B,PosX (mm),PosY (mm),Rot,Side' });
  const bill = file(
    'bom.csv',
    'Reference,Value,Footprint,DNP\n"C1-C12",1u,C_0402,\nU1,chip,,DNP\nX7,crystal,,\nX8,,,DNP\n',
  );

  test('values and packages where none were, empty positions, what is missing on either side', () => {
    const made = importBoard([...bare, bill]);
    if (!made.ok) throw new Error(made.problem.code);
    const { board, report } = made.value;
    const part = (refdes: string) => board.parts.find((one) => one.refdes === refdes);
    expect(part('C5')).toMatchObject({ value: '1u', fitted: true, package: { name: 'C_0402' } });
    expect(part('U1')).toMatchObject({ value: 'chip', fitted: false });
    const note = (code: string) => report.notes.find((one) => one.code === code);
    expect(note('bill-merged')?.detail).toEqual({ matched: 13, placed: 19, values: 13, packages: 12 });
    expect(note('bill-missing')?.refdes).toEqual(['X7']);
    expect(note('bill-unlisted')?.refdes).toEqual(['U2', 'U3', 'U4', 'U5', 'U6', 'U9']);
    expect(note('not-fitted')?.refdes).toEqual(['U1']);
    expect(report.files).toContainEqual({ name: 'bom.csv', role: 'bill', by: 'content' });
  });

  test('a value of the placements is kept, and told where the bill says another', () => {
    const made = importBoard([
      ...inventedFiles(),
      file('bom.csv', 'Reference,Value,Footprint\nC1,V-C1 25V,X\nC2,else,X\n'),
    ]);
    if (!made.ok) throw new Error(made.problem.code);
    expect(made.value.report.notes.find(({ code }) => code === 'bill-differs')?.refdes).toEqual(['C2']);
    expect(made.value.board.parts.find(({ refdes }) => refdes === 'C2')?.value).toBe('V-C2');
  });

  test('a bill alone is one problem', () => {
    expect(importBoard([bill])).toMatchObject({
      ok: false,
      problem: {
        code: 'unknown-file-kind',
        file: 'bom.csv',
        detail: { found: 'a bill of materials without positions' },
      },
    });
  });
});
