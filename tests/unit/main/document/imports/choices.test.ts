import { describe, expect, it } from 'vitest';
import { type ImportChoices, importBoard } from '../../../../../main/document/imports/import-board.ts';
import { importChoicesSchema } from '../../../../../shared-types/import-choices.ts';
import { importReportSchema } from '../../../../../shared-types/import-report.ts';

const file = (name: string, text: string) => ({ name, bytes: new TextEncoder().encode(text) });
// X and Y are those of the first pad; the body's middle stands in the columns behind, under headings that mean nothing.
const heading = 'Ref,X,Y,Ctr1,Ctr2,Rot,Comment';
const top = [heading, 'R1,10,10,10.5,10,0,10k', 'R2,20,10,20.5,10,90,1k', 'C1,30,12,30.5,12,180,100n'].join('\n');
const bottom = [heading, 'R9,-10,30,-10.5,30,90,10k', 'C9,-20,30,-20.5,30,0,1u'].join('\n');
const files = [file('board-top.csv', top), file('board-bottom.csv', bottom)];

function read(choices: ImportChoices) {
  const result = importBoard(files, choices);
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  const { board, report } = result.value;
  const { notes, ...facts } = report;
  expect(importReportSchema.parse(facts)).toEqual(facts);
  const at = (refdes: string) => board.parts.find((part) => part.refdes === refdes);
  const apart = (a: string, b: string) => ({
    x: (at(b)?.x ?? 0) - (at(a)?.x ?? 0),
    y: (at(b)?.y ?? 0) - (at(a)?.y ?? 0),
  });
  return { board, report, at, apart, notes };
}
const plain = read({ unit: 'mm' });
const [{ shape }] = plain.report.tables;

describe('what a user chooses', () => {
  it('tells the columns, their reason and the first rows', () => {
    expect(plain.report.tables[0].columns.map(({ meaning, by }) => [meaning, by])).toEqual([
      ['refdes', 'heading'],
      ['x', 'heading'],
      ['y', 'heading'],
      [null, 'heading'],
      [null, 'heading'],
      ['rotation', 'heading'],
      ['value', 'heading'],
    ]);
    expect(plain.report.tables[0].sample[0]).toEqual(['R1', '10', '10', '10.5', '10', '0', '10k']);
    expect(plain.report.tables.map((table) => table.shape)).toEqual([shape, shape]);
  });

  it('gives columns another meaning, in all files of the same headings', () => {
    const columns = ['refdes', 'padX', 'padY', 'x', 'y', 'rotation', 'value'] as const;
    const chosen = read({ unit: 'mm', tables: { [shape]: { columns: [...columns] } } });
    expect(chosen.report.tables.map((table) => table.columns[3])).toEqual([
      { heading: 'Ctr1', meaning: 'x', by: 'chosen' },
      { heading: 'Ctr1', meaning: 'x', by: 'chosen' },
    ]);
    expect(chosen.apart('R1', 'C1')).toEqual({ x: 20, y: 2 });
    // The bottom file goes the same way.
    expect(chosen.apart('R9', 'R1').x - plain.apart('R9', 'R1').x).toBeCloseTo(0, 6);
  });

  it('leaves a choice for another number of columns alone', () => {
    const odd = read({ unit: 'mm', tables: { [shape]: { columns: ['refdes', 'y', 'x'] } } });
    expect(odd.report.tables[0].columns).toEqual(plain.report.tables[0].columns);
  });

  it('takes another unit, side, x of the bottom and sense of rotation', () => {
    const inches = read({ tables: { [shape]: { unit: 'inch' } } });
    expect(inches.apart('R1', 'R2').x).toBeCloseTo(254, 6);
    expect(inches.report.tables[0].unitFrom).toBe('chosen');

    const moved = read({ unit: 'mm', sides: { 'board-bottom.csv': 'top' } });
    expect([plain.at('R9')?.side, moved.at('R9')?.side]).toEqual(['bottom', 'top']);
    expect(moved.report.tables[1].sideFrom).toBe('chosen');

    const seen = read({ unit: 'mm', bottomX: 'asSeenFromTop' });
    const negated = read({ unit: 'mm', bottomX: 'negated' });
    expect([seen.apart('R1', 'R9').x, negated.apart('R1', 'R9').x]).toEqual([-20, 0]);

    const clockwise = read({ unit: 'mm', turn: { top: 'opposite', bottom: 'fromHalfTurn' } });
    expect([plain.at('R2')?.turn, clockwise.at('R2')?.turn]).toEqual([90, 270]);
    expect([plain.at('R9')?.turn, clockwise.at('R9')?.turn]).toEqual([90, 90]);
    expect(clockwise.report.sense.turnsChosen).toBe(true);
  });

  it('gives one problem when the columns chosen hold no places, and throws nothing', () => {
    const columns = heading.split(',').map(() => 'plain' as const);
    const result = importBoard(files, { unit: 'mm', tables: { [shape]: { columns } } });
    expect(result).toMatchObject({ ok: false, problem: { code: 'no-placements' } });
  });

  it('comes over the contract only in its own form', () => {
    expect(importChoicesSchema.safeParse({ tables: { [shape]: { unit: 'mil' } }, outline: 2 }).success).toBe(true);
    for (const wrong of [{ outline: -1 }, { unit: 'furlong' }, { tables: { x: { columns: ['somewhere'] } } }])
      expect(importChoicesSchema.safeParse(wrong).success).toBe(false);
  });
});

describe('words of the side column', () => {
  const table = [
    'Ref,X (mm),Y (mm),Rot,Side',
    'R1,10,10,0,zonzijde',
    'R2,20,15,0,maanzijde',
    'R3,30,12,0,zonzijde',
    'R4,40,9,0,Top',
  ];
  const sided = (choices: ImportChoices) => {
    const result = importBoard([file('lamp.csv', table.join('\n'))], choices);
    if (!result.ok) throw new Error(JSON.stringify(result.problem));
    const { board, report } = result.value;
    return { sides: board.parts.map(({ side }) => side), words: report.tables[0].sideWords, report };
  };

  it('are listed with what each was taken for', () => {
    expect(sided({}).words).toEqual([
      { word: 'zonzijde', side: null, count: 2, chosen: false },
      { word: 'maanzijde', side: null, count: 1, chosen: false },
      { word: 'Top', side: 'top', count: 1, chosen: false },
    ]);
  });

  it('mean what was said of them, of one kind of tables or of all', () => {
    const { report } = sided({});
    const said = sided({ tables: { [report.tables[0].shape]: { sideWords: { zonzijde: 'bottom' } } } });
    expect(said.sides).toEqual(['bottom', 'top', 'bottom', 'top']);
    expect(said.words[0]).toEqual({ word: 'zonzijde', side: 'bottom', count: 2, chosen: true });
    // Known words may be said otherwise too, and a part on an inner layer is not on the board.
    expect(sided({ sideWords: { MAANZIJDE: 'inner', top: 'bottom' } }).sides).toEqual(['top', 'top', 'bottom']);
  });
});

it('a unit that nothing tells is a problem, or for a window millimetres to be changed', () => {
  const rows = ['R1,1000,2000,0,top', 'R2,1900,2500,0,top', 'R3,1500,2900,0,top'];
  const file = { name: 'a.csv', bytes: new TextEncoder().encode(`Ref,X,Y,Rot,Side\n${rows.join('\n')}\n`) };
  const tiny = {
    name: 'a.csv',
    bytes: new TextEncoder().encode('Ref,X,Y,Rot,Side\nR1,0.01,0.02,0,top\nR2,0.015,0.02,0,top\n'),
  };
  expect(importBoard([file], { unitMayBeChosen: true })).toMatchObject({ ok: true });
  expect(importBoard([tiny])).toMatchObject({ ok: false, problem: { code: 'unclear-units' } });
  const asked = importBoard([tiny], { unitMayBeChosen: true });
  if (!asked.ok) throw new Error(asked.problem.code);
  expect(asked.value.report.notes[0]).toMatchObject({ weight: 'stop', code: 'unit-not-told' });
  expect(asked.value.report.tables[0]).toMatchObject({ unit: 'mm', unitFrom: 'none' });
});
