import { strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import writeExcelFile from 'write-excel-file/node';
import { importBoard } from '../../../../../../main/document/imports/import-board.ts';
import { readWorkbook } from '../../../../../../main/document/imports/sheets/read-workbook.ts';
import { problemSentence } from '../../../../../../shared-types/words/problems.ts';
import { passesOf } from '../../../../../support/yardstick.ts';
import { inventedFiles, placementText } from '../invented-board.ts';

/** Workbooks made by a general-purpose library that none of us wrote. */
async function workbook(sheets: Record<string, (string | number | boolean | null)[][]>): Promise<Uint8Array> {
  const data = Object.entries(sheets).map(([sheet, rows]) => ({
    sheet,
    data: rows.map((row) => row.map((value) => (value === null ? null : { value }))),
  }));
  return new Uint8Array(await (await writeExcelFile(data)).toBuffer());
}

/** The invented placements as cells: numbers as numbers. */
const ROWS = placementText()
  .trim()
  .split('\n')
  .map((line) => line.split(',').map((cell) => (/^-?[\d.]+$/.test(cell) ? Number(cell) : cell)));

const boardOf = (files: Parameters<typeof importBoard>[0]) => {
  const result = importBoard(files, { name: 'x' });
  if (!result.ok) throw new Error(problemSentence(result.problem));
  return result.value;
};

test('texts, numbers, truth values, gaps and marks come out as they were put in', async () => {
  const bytes = await workbook({
    'A & B': [
      ['R1', 12.7, true],
      [null, 'µ "quoted" <x>'],
      ['a\nb', -0.1],
    ],
  });
  expect(readWorkbook(bytes)).toEqual([
    {
      name: 'A & B',
      rows: [
        ['R1', '12.7', 'yes'],
        ['', 'µ "quoted" <x>'],
        ['a\nb', '-0.1'],
      ],
    },
  ]);
});

describe('placements in a workbook', () => {
  test('give the same board as the CSV file, next to Gerber layers', async () => {
    const [csv, ...layers] = inventedFiles();
    const packed = { name: 'parts.xlsx', bytes: await workbook({ Placement: ROWS }) };
    const [known, made] = [boardOf([csv, ...layers]), boardOf([packed, ...layers])];
    expect(made.board.parts).toEqual(known.board.parts);
    expect(made.report.tables[0].file).toBe('parts.xlsx [Placement]');
  });

  test('preambles are passed over, sheets named by side tell the side, other sheets are told', async () => {
    const heading = ['Designator', 'X (mm)', 'Y (mm)', 'Rotation'];
    const bytes = await workbook({
      Notes: [['Made for the shop']],
      Top: [['Board', 'invented'], [null], heading, ['R1', 1, 2, 90], ['R2', 5, 6, 0]],
      Bottom: [heading, ['C1', 3, 4, 180]],
    });
    const { board, report } = boardOf([{ name: 'b.xlsx', bytes }]);
    expect(board.parts.map(({ refdes, side, turn }) => [refdes, side, turn])).toEqual([
      ['R1', 'top', 90],
      ['R2', 'top', 0],
      ['C1', 'bottom', 180],
    ]);
    expect(report.notes.find(({ file }) => file === 'b.xlsx [Notes]')?.code).toBe('file-not-used');
  });

  test('a workbook in an archive is opened too', async () => {
    const bytes = zipSync({ 'docs/parts.xlsx': await workbook({ Placement: ROWS }) });
    const { board, report } = boardOf([{ name: 'all.zip', bytes }]);
    expect(board.parts).toHaveLength(19);
    expect(String(report.notes.find(({ code }) => code === 'archive-opened')?.detail?.used)).toBe('docs/parts.xlsx');
  });
});

describe('workbooks that cannot be read are one problem', () => {
  const change = async (edit: (parts: Record<string, Uint8Array>) => void): Promise<Uint8Array> => {
    const parts = unzipSync(await workbook({ Placement: ROWS }));
    edit(parts);
    return zipSync(parts);
  };
  const sheetOf = (parts: Record<string, Uint8Array>): string =>
    Object.keys(parts).find((name) => name.startsWith('xl/worksheets/')) ?? '';

  test.each<[string, (parts: Record<string, Uint8Array>) => void]>([
    [
      'entities of its own',
      (parts) => {
        const sheet = new TextDecoder().decode(parts[sheetOf(parts)]);
        parts[sheetOf(parts)] = strToU8(`<!DOCTYPE a [<!ENTITY a "aaaa">]>${sheet.replace(/<\?xml[^>]*>/, '')}`);
      },
    ],
    [
      'a sheet that unpacks to more than 128 MB',
      (parts) => {
        parts[sheetOf(parts)] = new Uint8Array(129 * 1024 * 1024);
      },
    ],
    [
      'a row beyond any table',
      (parts) => {
        parts[sheetOf(parts)] = strToU8('<worksheet><sheetData><row r="999999999"/></sheetData></worksheet>');
      },
    ],
    [
      'a sheet cut short',
      (parts) => {
        parts[sheetOf(parts)] = parts[sheetOf(parts)].slice(0, 200);
      },
    ],
    ['no list of sheets', (parts) => void delete parts['xl/workbook.xml']],
  ])('%s', async (_, edit) => {
    const bytes = await change(edit);
    let result: ReturnType<typeof importBoard> | undefined;
    const passes = passesOf(() => {
      result = importBoard([{ name: 'bad.xlsx', bytes }]);
    });
    expect(passes).toBeLessThan(1000);
    expect(result).toMatchObject({ ok: false, problem: { code: 'unknown-file-kind', file: 'bad.xlsx' } });
  });

  test('cut anywhere, nothing is thrown', async () => {
    const bytes = await workbook({ Placement: ROWS });
    for (let length = 4; length < bytes.length; length += 97)
      importBoard([{ name: 'cut.xlsx', bytes: bytes.slice(0, length) }]);
  });
});

test('runs of rich text are joined, phonetic hints left out, inline texts and texts of formulas read, hidden sheets passed over', () => {
  const bytes = zipSync({
    '[Content_Types].xml': strToU8('<Types/>'),
    'xl/workbook.xml': strToU8(
      '<workbook xmlns:r="r"><sheets><sheet name="H" sheetId="1" state="hidden" r:id="a"/><sheet name="S" sheetId="2" r:id="b"/></sheets></workbook>',
    ),
    'xl/_rels/workbook.xml.rels': strToU8(
      '<Relationships><Relationship Id="a" Target="worksheets/sheet1.xml"/><Relationship Id="b" Target="/xl/worksheets/sheet2.xml"/></Relationships>',
    ),
    'xl/sharedStrings.xml': strToU8(
      '<sst><si><r><t>Re</t></r><r><t>f</t></r><rPh sb="0" eb="1"><t>hint</t></rPh></si></sst>',
    ),
    'xl/worksheets/sheet1.xml': strToU8('<worksheet><sheetData><row><c><v>1</v></c></row></sheetData></worksheet>'),
    'xl/worksheets/sheet2.xml': strToU8(
      '<worksheet><sheetData><row r="2"><c r="A2" t="s"><v>0</v></c><c r="C2" t="inlineStr"><is><t>in</t></is></c><c t="str"><f>1+1</f><v>two</v></c><c t="e"><v>#REF!</v></c><c><v>12.700000000000001</v></c></row></sheetData></worksheet>',
    ),
  });
  expect(readWorkbook(bytes)).toEqual([{ name: 'S', rows: [[], ['Ref', '', 'in', 'two', '', '12.7']] }]);
});
