import { describe, expect, it } from 'vitest';
import { type GivenFile, importBoard } from '../../../../../main/document/imports/import-board.ts';
import { importForUpdate } from '../../../../../main/document/imports/update-board.ts';
import { compareBoards } from '../../../../../shared-types/rules/board-update/compare.ts';
import { inventedFiles, placementText } from './invented-board.ts';

const fileOf = (text: string, name: string): GivenFile => ({ name, bytes: new TextEncoder().encode(text) });
const boardOf = (files: readonly GivenFile[], choices = {}) => {
  const result = importBoard(files, choices);
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.value;
};
const [PLACEMENTS, , ...COPPER] = inventedFiles();
const TICKET = boardOf(inventedFiles()).board;
const BILL = fileOf('Designator,Value,Quantity\nC1,47n,1\nC2,100n,1\n', 'bill.csv');

describe('a bill of materials for a board that is known', () => {
  it('is laid on it, alone or beside what says nothing of boards', () => {
    for (const files of [[BILL], [BILL, fileOf('Dear all,\nhere it comes.\n', 'letter.txt')]]) {
      const read = importForUpdate(files, {}, TICKET);
      if (!read.ok) throw new Error(JSON.stringify(read.problem));
      expect(read.value.board.parts.find(({ refdes }) => refdes === 'C1')?.value).toBe('47n');
    }
  });

  // So small that no unit gives a board of a likely size.
  const write = (part: { x: number; y: number; turn: number }) => [part.x / 1e4, part.y / 1e4, part.turn] as const;
  it.each([
    ['placements of unknown unit', placementText({ heading: 'Ref,Val,Package,X,Y,Rot,Side', write }), 'unclear-units'],
    ['placements without a row that reads', 'Ref,Val,Package,PosX (mm),PosY (mm),Rot,Side\n', 'no-placements'],
    ['a design cut short', '<?xml version="1.0"?><IPC-2581 revision="B"><Content>', 'unknown-file-kind'],
    ['a layer with nothing in it', 'G04 nothing*\n', 'invalid-gerber'],
  ])('does not hide the problem of %s beside it', (_name, text, code) => {
    const read = importForUpdate([BILL, fileOf(text, 'other.txt')], {}, TICKET);
    expect(read).toMatchObject({ ok: false, problem: { code, file: 'other.txt' } });
  });
});

const at = ([x, y]: readonly [number, number]) => `X${x * 1e6}Y${y * 1e6}`;
const loop = (...corners: [number, number][]) =>
  [...corners, corners[0]].map((corner, index) => `${at(corner)}D0${index === 0 ? 2 : 1}*`);
const edge = (...lines: string[]) => {
  const head = ['%TF.FileFunction,Profile,NP*%', '%FSLAX46Y46*%', '%MOMM*%', 'G01*', '%ADD10C,0.05*%', 'D10*'];
  return fileOf([...head, ...lines, 'M02*', ''].join('\n'), 'edge.gbr');
};
const codesOf = ({ report }: ReturnType<typeof boardOf>) => report.notes.map(({ code }) => code);
const RECTANGLE = loop([0, 0], [60, 0], [60, 36], [0, 36]);

describe('damaged contours', () => {
  it('a cutout that crosses itself does not cost the cutouts of the ticket', () => {
    const crossed = loop([20, 31], [30, 34], [30, 32], [20, 34]);
    const read = boardOf([PLACEMENTS, edge(...RECTANGLE, ...crossed), ...COPPER]);
    expect(codesOf(read)).toContain('cutouts-broken');
    const changes = compareBoards(TICKET, { board: read.board, told: read.report.told });
    expect([TICKET.cutouts.length, changes.outline]).toEqual([1, null]);
    // The same without the damage is a change.
    const whole = boardOf([PLACEMENTS, edge(...RECTANGLE), ...COPPER]);
    expect(compareBoards(TICKET, { board: whole.board, told: whole.report.told }).cutouts).toEqual({
      added: 0,
      gone: 1,
    });
  });

  it('an outline that crosses itself leaves the other loops to choose from', () => {
    const crossed = loop([0, 0], [60, 0], [60, 36], [30, 36], [45, -1], [20, 36], [0, 36]);
    const frame = loop([-40, -40], [100, -40], [100, 80], [-40, 80]);
    const files = [PLACEMENTS, edge(...crossed, ...frame), ...COPPER];
    const ranks = [0, 1].map((outline) => boardOf(files, { outline }));
    const broken = ranks.find((one) => codesOf(one).includes('outline-broken'));
    expect(broken?.report.outline.others).toHaveLength(1);
    const sound = boardOf(files, { outline: broken?.report.outline.others[0].rank });
    expect(sound.report.outline.lengthMm).toBeCloseTo(140, 3);
  });
});

it('tells of fitted positions only by tables that have a column for them', () => {
  const top = 'Ref,Package,PosX (mm),PosY (mm),Rot,Side,Fitted\nR1,C_0402,5,5,0,top,yes\nR2,C_0402,9,5,0,top,no\n';
  const bottom = 'Ref,Package,PosX (mm),PosY (mm),Rot,Side\nR3,C_0402,5,9,0,bottom\nR4,C_0402,9,9,0,bottom\n';
  const { report } = boardOf([fileOf(top, 'front.csv'), fileOf(bottom, 'back.csv')]);
  expect(report.told.fitted).toEqual(['R1', 'R2']);
});

it('asks about the sign of an axis until that axis was chosen', () => {
  const rows = ['R1,C_0402,-5,-5,0,bottom', 'R2,C_0402,-9,-5,0,bottom', 'R3,C_0402,-9,-9,0,bottom'];
  const files = [fileOf(['Ref,Package,PosX (mm),PosY (mm),Rot,Side', ...rows].join('\n'), 'back.csv')];
  const axes = (choices: object) =>
    boardOf(files, choices).report.notes.find(({ code }) => code === 'bottom-sign-not-told')?.detail?.axis;
  expect(axes({})).toBe('x and y');
  expect(axes({ bottomX: 'asSeenFromTop' })).toBe('y');
  expect(axes({ bottomY: 'asSeenFromTop' })).toBe('x');
  expect(axes({ bottomX: 'negated', bottomY: 'negated' })).toBeUndefined();
});
