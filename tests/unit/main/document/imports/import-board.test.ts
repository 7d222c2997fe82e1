import { describe, expect, test } from 'vitest';
import { type GivenFile, type ImportedBoard, importBoard } from '../../../../../main/document/imports/import-board.ts';
import { ownToBoard } from '../../../../../shared-types/board.ts';
import { importNoteSentence, importReportLines } from '../../../../../shared-types/words/imports.ts';
import { INVENTED_PARTS, inventedFiles, placementText } from './invented-board.ts';

const PLACED = INVENTED_PARTS.filter(({ placed }) => placed !== false);

function imported(files: GivenFile[], choices = {}): ImportedBoard {
  const result = importBoard(files, choices);
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.value;
}

const codes = ({ report }: ImportedBoard) => report.notes.map(({ code }) => code);
const text = (name: string, content: string): GivenFile => ({ name, bytes: new TextEncoder().encode(content) });

describe('the invented board, its Gerber origin far from its placement origin', () => {
  const done = imported(inventedFiles({ origin: { x: 100, y: -200 } }));
  const { board, report } = done;

  test('parts keep side, middle and turn, at the outline lower left', () => {
    const rows = board.parts.map(({ refdes, side, x, y, turn }) => [refdes, side, x, y, turn]);
    expect(rows).toEqual(
      PLACED.map(({ refdes, side, x, y, turn }) => [refdes, side, Number(x.toFixed(6)), Number(y.toFixed(6)), turn]),
    );
    expect(report.counts).toEqual({ top: 11, bottom: 8, inner: 0, unread: 0, legend: 0 });
  });

  test('offset and shift are told', () => {
    expect(report.offset).toMatchObject({ by: 'references', votes: 19, of: 19 });
    expect(report.offset.xMm).toBeCloseTo(100, 4);
    expect(report.offset.yMm).toBeCloseTo(-200, 4);
    expect(report.shift.xMm).toBeCloseTo(-100, 4);
  });

  test('outline with its arc and its slot', () => {
    expect(report.outline).toMatchObject({
      file: 'invented-edge.gbr',
      cutouts: 1,
      arcs: 1,
      why: 'smallest',
      sharePercent: 100,
    });
    expect([report.outline.lengthMm, report.outline.widthMm]).toEqual([60, 36]);
    expect(board.outline.filter(({ bulge }) => bulge)).toHaveLength(1);
    expect(Math.min(...board.outline.map(({ x }) => x))).toBe(0);
  });

  test('pin 1 of every part lies on its pad, in the board by its own convention', () => {
    for (const part of board.parts) {
      const invented = PLACED.find(({ refdes }) => refdes === part.refdes);
      const [, ownX, ownY] = invented?.pads[0] ?? ['', 0, 0];
      expect(part.pin1?.x).toBeCloseTo(ownX, 5);
      expect(part.pin1?.y).toBeCloseTo(ownY, 5);
      expect(part.pin1 && Number.isFinite(ownToBoard(part, part.pin1).x)).toBe(true);
    }
  });

  test('an array told by its pads only', () => {
    const core = board.parts.find(({ refdes }) => refdes === 'U9');
    expect(core?.class).toBe('bga');
    expect(core?.pinCount).toBe(100);
    // 10 x 10 at 0.8 mm: the pads span 7.2 mm, the body reaches about a pitch further.
    expect(core?.package.lengthMm).toBeGreaterThan(8);
    expect(core?.package.lengthMm).toBeLessThan(9.5);
    expect(codes(done)).toContain('array-by-grid');
  });

  test('the check against the pads, and the pads without a placement', () => {
    const { check } = report;
    expect(check).toMatchObject({
      layer: 'copper',
      withPads: 19,
      side: { right: 19, throughHole: 0, wrong: [] },
      padsOnly: ['TP1'],
    });
    expect(check?.centre).toMatchObject({ within: 19, off: [] });
    expect(check?.turn).toMatchObject({
      manyPins: { right: 6, of: 6 },
      twoPads: { right: 12, of: 12, rightWithPinNumbers: 12 },
      wrong: [],
    });
    expect(check?.turn.alone).toEqual({ alongAxes: 1, of: 1, others: [] });
  });

  test('layers are counted; the order of the files does not matter', () => {
    expect(board.laminate.layers).toHaveLength(4);
    expect(board.laminate.layersKnown).toBe(false);
    const reversed = imported([...inventedFiles({ origin: { x: 100, y: -200 } })].reverse());
    expect(reversed.board.parts).toEqual(board.parts);
    expect(reversed.board.outline).toEqual(board.outline);
  });

  test('every line of the report is a plain sentence', () => {
    const lines = importReportLines(report);
    expect(lines.length).toBeGreaterThan(10);
    for (const line of lines) expect(line).not.toMatch(/undefined|NaN|\[object|null/);
  });
});

test('bottom x negated and angles as 180 - angle: both found by the pads', () => {
  const write = ({ side, x, y, turn }: (typeof PLACED)[number]) =>
    side === 'bottom' ? ([-x, y, 180 - turn] as const) : ([x, y, turn] as const);
  const { board, report } = imported(inventedFiles({ write }));
  expect(report.sense).toMatchObject({
    xNegated: true,
    xBy: 'pads',
    top: 'same',
    bottom: 'fromHalfTurn',
    agreeing: 18,
    of: 18,
  });
  const turns = Object.fromEntries(board.parts.map(({ refdes, turn }) => [refdes, turn]));
  for (const { refdes, turn } of PLACED) expect(turns[refdes]).toBeCloseTo(turn, 6);
});

test('a unit that is not said is found by the pads and told', () => {
  const write = ({ x, y, turn }: (typeof PLACED)[number]) => [x / 0.0254, y / 0.0254, turn] as const;
  const done = imported(inventedFiles({ write, heading: 'Ref,Val,Package,PosX,PosY,Rot,Side' }));
  expect(done.report.tables[0]).toMatchObject({ unit: 'mil', unitFrom: 'pads' });
  expect(codes(done)).toContain('unit-guessed');
  expect(done.board.parts[0].x).toBeCloseTo(6, 3);
});

test('a part turned wrongly, one on the wrong side and one out of place are named', () => {
  const parts = INVENTED_PARTS;
  const spoiled = placementText({
    write: ({ refdes, x, y, turn }) =>
      refdes === 'U2' ? [x, y, turn + 90] : refdes === 'U3' ? [x + 0.2, y, turn] : [x, y, turn],
  }).replace(/^(C3,.*),top$/m, '$1,bottom');
  const files = inventedFiles({ parts });
  const done = imported([text('invented-pos.csv', spoiled), ...files.slice(1)]);
  expect(done.report.check?.turn.wrong).toEqual([{ refdes: 'U2', degrees: 90 }]);
  expect(done.report.check?.side.wrong).toEqual(['C3']);
  expect(done.report.check?.centre.off).toMatchObject([{ refdes: 'U3', mm: 0.2 }]);
  expect(codes(done)).toEqual(expect.arrayContaining(['turn-differs', 'side-differs']));
});

test('an origin on pin 1 gives way to the middle of the pads', () => {
  const pads = [0, 1, 2, 3].map((index) => [`${index + 1}`, 0, -2.54 * index, 1.7, 1.7] as const);
  const header = { refdes: 'J1', packageName: 'HDR-INV', side: 'top' as const, x: 52, y: 20, turn: 0, pads };
  const { board, report } = imported(inventedFiles({ parts: [...INVENTED_PARTS, header] }));
  const part = board.parts.find(({ refdes }) => refdes === 'J1');
  expect([part?.x, part?.y]).toEqual([52, 20 - 3.81]);
  expect(part?.pin1).toEqual({ x: 0, y: 3.81 });
  expect(report.check?.centre.off).toMatchObject([{ refdes: 'J1', why: 'pin' }]);
});

test('odd rows are told and kept: duplicates, off the board, inner layers, unknown columns, unreadable rows', () => {
  const odd = `${placementText({ heading: 'Ref,Val,Package,PosX (mm),PosY (mm),Rot,Side,Reel' })}R1,1k,R_0603,200,10,0,top\nC1,1uF,C_0402,50,30,0,top\nR5,1k,R_0603,20,10,0,In1.Cu\nR6,1k,R_0603,here,10,0,top\n`;
  const done = imported([text('odd.csv', odd), ...inventedFiles().slice(1)]);
  const notes = Object.fromEntries(done.report.notes.map((note) => [note.code, note]));
  expect(notes['reference-twice'].refdes).toEqual(['C1']);
  expect(notes['off-board'].refdes).toEqual(['R1']);
  expect(notes['inner-layer'].refdes).toEqual(['R5']);
  expect(notes['columns-not-known'].detail?.columns).toBe("'Reel'");
  expect(notes['rows-not-read']).toMatchObject({ file: 'odd.csv', line: 24 });
  const names = done.board.parts.map(({ refdes }) => refdes);
  expect(names).toEqual(expect.arrayContaining(['C1', 'C1(2)', 'R1']));
  expect(names).not.toContain('R5');
  for (const note of done.report.notes) expect(importNoteSentence(note)).not.toMatch(/undefined|NaN/);
});

test('the same parts in two files count once', () => {
  const twice = [...inventedFiles(), text('again.csv', placementText())];
  const done = imported(twice);
  expect(done.board.parts).toHaveLength(PLACED.length);
  expect(codes(done)).toContain('same-in-two-files');
});

test('placements alone give a board with a rectangle round the parts, and say so', () => {
  const done = imported(inventedFiles().slice(0, 1));
  expect(done.report.outline).toMatchObject({ why: 'parts', file: null, cutouts: 0 });
  expect(codes(done)).toContain('no-outline');
  expect(done.report.check).toBeNull();
});

test('with an outline and no pads, placements that lie inside are taken as they stand; others are laid by the corner', () => {
  const files = inventedFiles().slice(0, 2);
  expect(imported(files).report.offset.by).toBe('inside');
  const moved = inventedFiles({ origin: { x: 300, y: 300 } }).slice(0, 2);
  const done = imported(moved);
  expect(done.report.offset).toMatchObject({ by: 'corner', xMm: 300, yMm: 300 });
  expect(codes(done)).toContain('offset-by-corner');
  expect(done.board.parts[0].x).toBeCloseTo(6, 6);
  expect(imported(moved, { offset: { x: 301, y: 300 } }).board.parts[0].x).toBeCloseTo(7, 6);
});
