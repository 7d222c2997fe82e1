import { describe, expect, test } from 'vitest';
import { splitCells } from '../../../../../shared-types/rules/straps/cells.ts';
import { groupFaults } from '../../../../../shared-types/rules/straps/check.ts';
import {
  columnsOf,
  draftOf,
  emptyDraft,
  groupOfDraft,
  type StrapDraft,
} from '../../../../../shared-types/rules/straps/draft.ts';
import { bitsOf, capacityOf, parseCapacity } from '../../../../../shared-types/rules/straps/exchange.ts';
import { draftFromTable } from '../../../../../shared-types/rules/straps/paste-group.ts';
import { sizeFromText, sizeOf } from '../../../../../shared-types/rules/straps/positions.ts';
import { readGroup } from '../../../../../shared-types/rules/straps/read.ts';
import { doubtWords, groupFaultWords } from '../../../../../shared-types/words/straps.ts';
import { bits, jumpers, position, strapPart, strapTicket } from '../../../../support/straps.ts';

const parts = [strapPart('R1', '10k'), strapPart('R2', '10k'), strapPart('R3', '4k7 -'), strapPart('R4', '10k -')];
const board = strapTicket(parts, []).board;

describe('reading', () => {
  test('positions say 1 where fitted', () => {
    const group = jumpers('G', [position('R1'), position('R3')], { a: '10', b: '1x' });
    const reading = readGroup(board, [], group);
    expect(reading.code).toBe('10');
    expect(reading.settings.map((one) => one.label)).toEqual(['a', 'b']);
  });

  test('a part of another value than belongs there is told', () => {
    const reading = readGroup(board, [], jumpers('G', [position('R1', '4k7')], { a: '1' }));
    expect(reading.settings).toHaveLength(1);
    expect(reading.doubts.map(doubtWords)).toEqual([
      '10k stands on R1, where 4k7 belongs: the code may be read otherwise',
    ]);
  });

  test('both pulls fitted, and an open bit, cannot be told', () => {
    const group = bits(
      'G',
      [
        { name: 'B0', up: 'R1', down: 'R2' },
        { name: 'B1', up: 'R3', down: 'R4' },
        { name: 'B2', up: 'R3', open: 0 },
      ],
      { a: '110' },
    );
    const reading = readGroup(board, [], group);
    expect(reading.code).toBe('??0');
    expect(reading.settings).toEqual([]);
    expect(reading.doubts.map(doubtWords)).toEqual([
      'B0 has both pulls fitted (R1, R2): take one off',
      'B1 is open: nothing defines it',
    ]);
  });
});

describe('checks', () => {
  const found = (group: Parameters<typeof groupFaults>[1]) => groupFaults(board, group).map(groupFaultWords);

  test('a sound group has nothing wrong', () => {
    expect(found(jumpers('G', [position('R1'), position('R3', '4k7')], { a: '10', b: '01' }))).toEqual([]);
  });
  test('positions on no part, listed twice, no value, no preferred value', () => {
    const all = found(jumpers('G', [position('R9'), position('R1', '10x'), position('R1', '10.3k')], { a: '111' }));
    expect(all.join('\n')).toMatch(/R9 is not on the board/);
    expect(all.join('\n')).toMatch(/'10x' of R1 is no resistance/);
    expect(all.join('\n')).toMatch(/10\.3k at R1 is no preferred value/);
    expect(all.join('\n')).toMatch(/R1 is listed twice/);
  });
  test('settings with one code, also through x; a code of another length; none at all', () => {
    const two = [position('R1'), position('R3')];
    expect(found(jumpers('G', two, { a: '10', b: '1x' }))[0]).toContain("'a' and 'b' have the same code");
    expect(found(jumpers('G', two, { a: '101' }))[0]).toContain('its code has 3 places, the group has 2');
    expect(found(jumpers('G', two, {}))).toEqual(['the table has no settings yet']);
  });
  test('a level that cannot be reached; a bit with nothing; a position of another list', () => {
    const group = bits(
      'G',
      [
        { name: 'B0', up: 'R1' },
        { name: 'B1', open: 1 },
      ],
      { a: '01' },
    );
    group.bits[0].pullDown = null;
    const all = found(group).join('\n');
    expect(all).toMatch(/setting 'a': B0 cannot be 0/);
    expect(all).toMatch(/B1 has no position/);
    const strange = bits('G', [{ name: 'B0', up: 'R1', down: 'R2' }], { a: '0' });
    strange.positions = [position('R1')];
    expect(found(strange)).toContain('R2 of B0 is not among the positions');
  });
});

describe('pasted tables', () => {
  const table = [
    ['Setting', 'Maker', 'Size', 'R1', 'R2', 'R3'],
    ['small', 'Halm', '4 Gbit', '10k', '-', 'DNP'],
    ['large', 'Halm', '8 Gbit', '10k', '', '4k7'],
  ];
  const read = (text: string) => {
    const draft = draftFromTable(text, board, 'M')!;
    return groupOfDraft(draft, 'strap-1', board, null);
  };

  test.each([
    ['tabs', '\t'],
    ['semicolons', ';'],
    ['commas', ','],
  ])('%s: one column for each position, cells fitted, empty or a value', (_, delimiter) => {
    const { group, faults } = read(table.map((row) => row.join(delimiter)).join('\r\n'));
    expect(faults).toEqual([]);
    expect(group?.settings).toEqual([
      { id: 'setting-1', label: 'small', maker: 'Halm', capacity: { amount: 4, unit: 'Gbit' }, code: '100' },
      { id: 'setting-2', label: 'large', maker: 'Halm', capacity: { amount: 8, unit: 'Gbit' }, code: '101' },
    ]);
    expect(group?.positions.map(({ refdes, value }) => [refdes, value])).toEqual([
      ['R1', '10k'],
      ['R2', '10k'],
      ['R3', '4k7'],
    ]);
  });

  test('crosses and blanks alone mean fitted and empty; beside figures x means either', () => {
    expect(read('Option\tR1\tR2\nA\tx\t\nB\t\tX').group?.settings.map((one) => one.code)).toEqual(['10', '01']);
    expect(read('Option\tR1\tR2\nA\t1\tx').group?.settings[0].code).toBe('1x');
  });

  test('quoted cells keep delimiters and line ends; a table without a designator is not taken', () => {
    expect(splitCells('"a, b",c\n"d ""e""",f')).toEqual([
      ['a, b', 'c'],
      ['d "e"', 'f'],
    ]);
    expect(draftFromTable('a\tb\n1\t2', board, '')).toBeNull();
    expect(draftFromTable('', board, '')).toBeNull();
  });

  test('a cell that makes no sense is told by its place, and the group is not made', () => {
    const { group, faults } = read('Setting\tR1\tR2\na\tmaybe\t0');
    expect(group).toBeNull();
    expect(faults).toEqual([{ table: 'settings', row: 0, column: 3, code: 'no-level', text: 'maybe' }]);
  });
});

describe('drafts', () => {
  const there = (draft: StrapDraft, before: Parameters<typeof groupOfDraft>[3]) =>
    groupOfDraft(draft, before?.id ?? 'strap-1', board, before);

  test.each([
    jumpers('J', [position('R1', '10k', 5), position('R3', '4k7')], { a: '10', b: 'x1' }),
    bits(
      'B',
      [
        { name: 'B0', up: 'R1', down: 'R2' },
        { name: 'B1', down: 'R3', open: 1 },
      ],
      { a: '10' },
    ),
    {
      kind: 'divider' as const,
      id: 'D',
      name: 'D',
      describes: ['R1'],
      positions: [position('R1', '', 1), position('R2', '', 0.5)],
      top: 'R1',
      bottom: 'R2',
      supplyV: 1.8,
      supplyTolerancePercent: 2,
      ratiometric: false,
      converterErrorMv: 3,
      windows: [
        { code: 'A', fromV: 0, toV: 0.9 },
        { code: 'B', fromV: 0.9, toV: 1.8 },
      ],
      settings: [
        { id: 's-7', label: 'low', maker: '', capacity: null, code: 'A', top: '10k', bottom: '0' },
        { id: 's-8', label: 'high', maker: 'M', capacity: null, code: 'B', top: '10k', bottom: null },
      ],
    },
  ])('a group comes through its tables unchanged: $kind', (group) => {
    expect(there(draftOf(group), group)).toEqual({ group, faults: [] });
  });

  test('positions of bits are added by themselves, with the value of the drawing', () => {
    const draft = { ...emptyDraft('bits'), name: 'N' };
    draft.tables = { ...draft.tables, bits: [['B0', 'R1', 'R3', '']], settings: [['a', '', '', '1']] };
    expect(there(draft, null).group?.positions.map(({ refdes, value }) => [refdes, value])).toEqual([
      ['R1', '10k'],
      ['R3', '4k7'],
    ]);
    expect(columnsOf(draft, 'settings')).toBe(4);
  });

  test('an empty draft says what is missing', () => {
    expect(
      there(emptyDraft('divider'), null)
        .faults.map((fault) => fault.code)
        .sort(),
    ).toEqual(['needs-name', 'needs-position', 'needs-rows', 'needs-rows']);
  });
});

test('chip sizes from body, name or words', () => {
  const body = (name: string, lengthMm: number, widthMm: number) =>
    sizeOf(strapPart('R1', '10k', { package: { name, shape: 'rectangle', lengthMm, widthMm, heightMm: null } }));
  expect([body('', 1, 0.5), body('', 0.5, 1), body('', 1.6, 0.8)]).toEqual(['0402', '0402', '0603']);
  expect([body('R_0402_1005Metric', 1.7, 0.7), body('odd', 1.7, 0.7)]).toEqual(['0402', '1.7 x 0.7 mm']);
  expect(['0402', 'R0402', '1,0 x 0,5', '1.7x0.7 mm'].map(sizeFromText)).toEqual([
    '0402',
    '0402',
    '0402',
    '1.7 x 0.7 mm',
  ]);
});

test('capacities as memory is counted: 8 Gbit is 1 GB', () => {
  expect(parseCapacity('8 Gbit')).toEqual({ amount: 8, unit: 'Gbit' });
  expect(parseCapacity('512MB')).toEqual({ amount: 512, unit: 'MB' });
  expect(parseCapacity('16Gb')).toEqual({ amount: 16, unit: 'Gbit' });
  expect(['8', 'G', 'eight Gbit', '8 Tbit'].map(parseCapacity)).toEqual([null, null, null, null]);
  expect(bitsOf({ amount: 8, unit: 'Gbit' })).toBe(bitsOf({ amount: 1, unit: 'GB' }));
  expect(capacityOf(2 ** 34, 'Gbit')).toEqual({ amount: 16, unit: 'Gbit' });
});
