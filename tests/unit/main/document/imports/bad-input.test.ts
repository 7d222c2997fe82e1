import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type GivenFile, importBoard } from '../../../../../main/document/imports/import-board.ts';
import { problemSentence } from '../../../../../shared-types/words/problems.ts';
import { passesOf } from '../../../../support/yardstick.ts';
import { inventedFiles, placementText } from './invented-board.ts';

const text = (name: string, content: string): GivenFile => ({ name, bytes: new TextEncoder().encode(content) });
const raw = (name: string, ...bytes: number[]): GivenFile => ({ name, bytes: new Uint8Array(bytes) });

/** One problem, naming the file, in one sentence without gaps. */
function problemOf(files: GivenFile[]) {
  const result = importBoard(files);
  if (result.ok) throw new Error('expected a problem');
  expect(problemSentence(result.problem)).not.toMatch(/undefined|NaN|null/);
  return result.problem;
}

describe('input that gives no board gives one problem', () => {
  test.each([
    ['nothing', [], { code: 'no-placements' }],
    ['an empty file', [raw('a.csv')], { code: 'unknown-file-kind', file: 'a.csv' }],
    [
      'a ZIP under a text name',
      [raw('a.csv', 0x50, 0x4b, 3, 4, 20, 0, 0, 0)],
      { code: 'unknown-file-kind', file: 'a.csv' },
    ],
    [
      'a picture',
      [raw('board.png', 0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10)],
      { code: 'unknown-file-kind', file: 'board.png' },
    ],
    [
      'control bytes',
      [raw('a.csv', ...Array.from({ length: 400 }, (_, index) => index % 9))],
      { code: 'not-text', file: 'a.csv' },
    ],
    [
      'a letter',
      [text('a.txt', 'Dear colleague,\nthe boards are on their way.\n')],
      { code: 'unknown-file-kind', file: 'a.txt' },
    ],
    [
      'a drill file',
      [text('a.drl', 'M48\nMETRIC\nT1C0.3\n%\nT1\nX1Y1\nM30\n')],
      { code: 'unknown-file-kind', file: 'a.drl' },
    ],
    ['a Gerber head and nothing else', [text('a.gbr', 'G04 nothing*\n')], { code: 'invalid-gerber', file: 'a.gbr' }],
    [
      'headings without rows',
      [text('a.csv', 'Ref,Val,Package,PosX,PosY,Rot,Side\n')],
      { code: 'no-placements', file: 'a.csv' },
    ],
    [
      'units that nothing tells',
      [text('a.csv', 'Ref,X,Y,Rot,Side\nR1,1e7,2e7,0,top\nR2,9e7,3e7,0,top\n')],
      { code: 'unclear-units', file: 'a.csv' },
    ],
  ])('%s', (_, files, expected) => {
    expect(problemOf(files)).toMatchObject(expected);
  });

  test('an unreadable file among good ones is told and does no harm', () => {
    const result = importBoard([
      ...inventedFiles(),
      raw('photo.jpg', 0xff, 0xd8, 0xff, 0xe0),
      text('notes.txt', 'hello\n'),
    ]);
    expect(result.ok && result.value.board.parts).toHaveLength(19);
    const files = result.ok ? result.value.report.notes.map(({ file }) => file) : [];
    expect(files).toEqual(expect.arrayContaining(['photo.jpg', 'notes.txt']));
  });
});

describe('hostile sizes end soon', () => {
  // In passes over 20 MB: what grows with the square of its input would take a million.
  const within = (passes: number, work: () => void) => expect(passesOf(work)).toBeLessThan(passes);

  test('twenty megabytes of one line, of blanks, of commas, of brackets', () => {
    for (const piece of ['x', ' ', ',', '(', '%', '*', '"', 'G04 ', '1 ']) {
      within(1000, () => problemOf([text('huge.txt', piece.repeat(20_000_000 / piece.length))]));
    }
  }, 60_000);

  test('more rows than any board has', () => {
    const rows = Array.from({ length: 30_000 }, (_, index) => `R${index},1.${index},2,0,top`);
    within(3000, () => {
      expect(problemOf([text('many.csv', `Ref,X (mm),Y (mm),Rot,Side\n${rows.join('\n')}`)])).toMatchObject({
        code: 'too-large',
        file: 'many.csv',
      });
    });
  }, 30_000);

  test('a repeat bomb in a layer leaves the placements standing', () => {
    const bomb = text(
      'bomb.gbr',
      '%FSLAX46Y46*%\n%MOMM*%\n%ADD10C,1*%\nD10*\n%SRX99999Y99999I1J1*%\nX0Y0D03*\n%SR*%\nM02*\n',
    );
    within(1000, () => {
      const result = importBoard([...inventedFiles(), bomb]);
      expect(result.ok && result.value.report.notes).toEqual(
        expect.arrayContaining([expect.objectContaining({ code: 'layer-broken', file: 'bomb.gbr' })]),
      );
    });
  });
});

describe('no input makes the importer throw', () => {
  const names = fc.constantFrom('a.csv', 'top.gtl', 'edge.gm1', 'x.pos', 'bottom.txt');

  test('random bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 600 }), names, (bytes, name) => {
        importBoard([{ name, bytes }]);
      }),
      { numRuns: 400, seed: 5 },
    );
  });

  test('files cut short anywhere', () => {
    const files = inventedFiles();
    fc.assert(
      fc.property(fc.nat(files.length - 1), fc.double({ min: 0, max: 1, noNaN: true }), (which, share) => {
        const cut = files.map((file, index) =>
          index === which ? { ...file, bytes: file.bytes.slice(0, Math.floor(file.bytes.length * share)) } : file,
        );
        importBoard(cut);
      }),
      { numRuns: 60, seed: 6 },
    );
  });

  test('files with letters exchanged', () => {
    const files = inventedFiles();
    const edit = fc.record({
      file: fc.nat(files.length - 1),
      at: fc.nat(20_000),
      byte: fc.integer({ min: 32, max: 126 }),
    });
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 30 }), (edits) => {
        const spoiled = files.map((file) => ({ ...file, bytes: file.bytes.slice() }));
        for (const { file, at, byte } of edits) spoiled[file].bytes[at % spoiled[file].bytes.length] = byte;
        importBoard(spoiled);
      }),
      { numRuns: 60, seed: 7 },
    );
  });

  test('tables of random words under good headings', () => {
    const cell = fc.oneof(
      fc.string({ maxLength: 8 }),
      fc.constantFrom('1.5', '-3mm', 'top', 'R1', '"', '90', '1e300', 'NaN', 'Infinity'),
    );
    const rows = fc.array(fc.array(cell, { minLength: 3, maxLength: 9 }), { maxLength: 12 });
    fc.assert(
      fc.property(rows, fc.constantFrom(',', ';', '\t', '  '), (table, separator) => {
        const body = table.map((cells) => cells.join(separator)).join('\n');
        importBoard([
          text('a.csv', `${['Ref', 'Val', 'Package', 'PosX', 'PosY', 'Rot', 'Side'].join(separator)}\n${body}`),
        ]);
      }),
      { numRuns: 300, seed: 8 },
    );
  });

  test('the placement text itself, to be sure the cases above cut something that works', () => {
    expect(importBoard([text('a.csv', placementText())]).ok).toBe(true);
  });
});
