import { strToU8, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { importBoard } from '../../../../../../main/document/imports/import-board.ts';
import { readWorkbook } from '../../../../../../main/document/imports/sheets/read-workbook.ts';
import { problemSentence } from '../../../../../../shared-types/words/problems.ts';
import { inventedFiles, placementText } from '../invented-board.ts';

const NAMESPACES =
  'xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0" xmlns:style="urn:oasis:names:tc:opendocument:xmlns:style:1.0"';

/** A workbook as OpenDocument 1.3 describes it: the kind first and stored, then the content. */
function workbook(tables: string, styles = ''): Uint8Array {
  const content = `<?xml version="1.0"?><office:document-content ${NAMESPACES}><office:automatic-styles>${styles}</office:automatic-styles><office:body><office:spreadsheet>${tables}</office:spreadsheet></office:body></office:document-content>`;
  return zipSync({
    mimetype: [strToU8('application/vnd.oasis.opendocument.spreadsheet'), { level: 0 }],
    'content.xml': strToU8(content),
    'styles.xml': strToU8('<a/>'),
  });
}

const text = (value: string): string =>
  `<table:table-cell office:value-type="string"><text:p>${value}</text:p></table:table-cell>`;
const number = (value: string, shown: string): string =>
  `<table:table-cell office:value-type="float" office:value="${value}"><text:p>${shown}</text:p></table:table-cell>`;
const row = (...cells: string[]): string => `<table:table-row>${cells.join('')}</table:table-row>`;
const sheet = (name: string, ...rows: string[]): string =>
  `<table:table table:name="${name}">${rows.join('')}</table:table>`;

describe('cells', () => {
  test('numbers as stored, texts as shown, repeats opened, notes and hidden sheets left out', () => {
    const styles =
      '<style:style style:name="h" style:family="table"><style:table-properties table:display="false"/></style:style>';
    const hidden = '<table:table table:name="Old" table:style-name="h"><table:table-row/></table:table>';
    const empty = (count: number): string => `<table:table-cell table:number-columns-repeated="${count}"/>`;
    const noted =
      '<table:table-cell office:value-type="string"><office:annotation><text:p>a note</text:p></office:annotation><text:p>10<text:s text:c="2"/>k</text:p><text:p>1 %</text:p></table:table-cell>';
    const bytes = workbook(
      sheet(
        'Top',
        row(text('R1'), number('12.7', '12,70'), empty(2), text('x'), empty(16_380)),
        '<table:table-row table:number-rows-repeated="2"><table:table-cell table:number-columns-repeated="16384"/></table:table-row>',
        row(
          noted,
          '<table:table-cell office:value-type="boolean" office:boolean-value="true"><text:p>TRUE</text:p></table:table-cell>',
        ),
        '<table:table-row table:number-rows-repeated="1048572"><table:table-cell table:number-columns-repeated="16384"/></table:table-row>',
      ) + hidden,
      styles,
    );
    expect(readWorkbook(bytes)).toEqual([
      { name: 'Top', rows: [['R1', '12.7', '', '', 'x'], [], [], ['10  k 1 %', 'yes']] },
    ]);
  });

  test('placements in a workbook give the board that the same table as text gives', () => {
    const rows = placementText()
      .trim()
      .split('\n')
      .map((line) =>
        row(
          ...line
            .split(',')
            .map((cell) => (/^-?[\d.]+$/.test(cell) ? number(cell, cell.replace('.', ',')) : text(cell))),
        ),
      );
    const [table, ...layers] = inventedFiles();
    const whole = importBoard([table, ...layers], { name: 'x' });
    const packed = importBoard([{ name: 'parts.ods', bytes: workbook(sheet('Sheet1', ...rows)) }, ...layers], {
      name: 'x',
    });
    if (!whole.ok || !packed.ok) throw new Error('expected boards');
    expect(packed.value.board.parts).toEqual(whole.value.board.parts);
    expect(packed.value.report.tables[0].file).toBe('parts.ods [Sheet1]');
  });
});

describe('workbooks that would grow without bound are refused with one problem', () => {
  const full = `<table:table-row table:number-rows-repeated="1048576">${`<table:table-cell table:number-columns-repeated="16384" office:value-type="string"><text:p>R1</text:p></table:table-cell>`}</table:table-row>`;
  test.each([
    ['rows and columns repeated', sheet('a', full)],
    ['many columns of as many rows as a table may have', sheet('a', full.replace('1048576', '190000'))],
    ['sheet after sheet of repeats', sheet('a', full.replace('1048576', '2000')).repeat(300)],
    [
      'empty rows before one that is not',
      sheet('a', '<table:table-row table:number-rows-repeated="9999999999"/>', row(text('R1'))),
    ],
    ['cut short', '<table:table table:name="a"><table:table-row>'],
    ['entities of its own', '<!DOCTYPE a [<!ENTITY b "c">]><table:table/>'],
  ])('%s', (_, tables) => {
    const bytes = workbook(tables);
    expect(readWorkbook(bytes)).toBeNull();
    const result = importBoard([{ name: 'bad.ods', bytes }]);
    if (result.ok) throw new Error('expected a problem');
    expect(result.problem).toMatchObject({ code: 'unknown-file-kind', file: 'bad.ods' });
    expect(problemSentence(result.problem)).toMatch(/spreadsheet/);
  });

  test('names of prototypes are no elements', () => {
    expect(readWorkbook(workbook('<constructor/><toString/><__proto__/>'))).toEqual([]);
  });
});
