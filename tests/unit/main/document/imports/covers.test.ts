import { describe, expect, it } from 'vitest';
import { importBoard } from '../../../../../main/document/imports/import-board.ts';
import type { WindowImportChoices } from '../../../../../shared-types/import-choices.ts';
import { importReportSchema } from '../../../../../shared-types/import-report.ts';
import { INVENTED_PARTS, type InventedPart, inventedFiles } from './invented-board.ts';

/** Twelve pads of one pin in a ring of 14 x 9 mm, outside to outside, as the lands of a soldered frame stand. */
const RING: InventedPart['pads'] = [
  ...[-5, -1.7, 1.7, 5].flatMap((x) => [['1', x, 4, 2, 1] as const, ['1', x, -4, 2, 1] as const]),
  ...[-2, 2].flatMap((y) => [['1', -6.5, y, 1, 2] as const, ['1', 6.5, y, 1, 2] as const]),
];
const shield = (refdes: string, fields: Partial<InventedPart> = {}): InventedPart => ({
  ...{ refdes, packageName: 'SCREEN-14X9', side: 'top', x: 20, y: 10, turn: 90, pads: RING },
  ...fields,
});

function read(extra: readonly InventedPart[], choices: WindowImportChoices = {}, withPads = true) {
  const files = inventedFiles({ parts: [...INVENTED_PARTS, ...extra] });
  const result = importBoard(withPads ? files : files.slice(0, 2), choices);
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  const { notes, ...facts } = result.value.report;
  expect(importReportSchema.parse(facts)).toEqual(facts);
  const { board } = result.value;
  const isPart = (refdes: string) => board.parts.some((part) => part.refdes === refdes);
  return { board, facts, isPart, codes: notes.map(({ code }) => code) };
}

describe('a shield among the placements', () => {
  it('becomes a can of the size of its ring of pads, with the parts under it left as they are', () => {
    const { board, facts, isPart, codes } = read([shield('SHLD1')]);
    expect(board.covers).toMatchObject([
      { id: 'SHLD1', kind: 'can', side: 'top', x: 20, y: 10, lengthMm: 14, widthMm: 9, turn: 90 },
    ]);
    expect([isPart('SHLD1'), board.parts.length]).toEqual([false, 19]);
    // By hand: the tops of C1, C3 ... that lie within 4.5 mm of x 20 and 7 mm of y 10.
    const under = INVENTED_PARTS.filter(
      ({ side, x, y, placed }) => placed !== false && side === 'top' && Math.abs(x - 20) < 4.5 && Math.abs(y - 10) < 7,
    );
    expect(facts.covers).toMatchObject([
      { refdes: 'SHLD1', as: 'can', by: 'name', chosen: false, under: under.length },
    ]);
    expect(codes).toContain('covers-found');
    expect(codes).not.toContain('lies-over-parts');
  });

  it('lies about the middle of its pads where the placement gives another point, on the bottom too', () => {
    const off = RING.map(([pin, x, y, w, h]) => [pin, x + 1, y + 0.5, w, h] as const);
    const { board } = read([shield('SHLD1', { side: 'bottom', turn: 0, pads: off })]);
    // Own y runs down on the bottom.
    expect(board.covers).toMatchObject([{ side: 'bottom', x: 21, y: 9.5, lengthMm: 14, widthMm: 9 }]);
  });

  it.each([
    ['SHIELD_FRAME_14X9', 'X12', 'frame'],
    ['RF-CAN 14x9', 'MP3', 'can'],
    ['SCREEN-14X9', 'SH1', 'can'],
  ])('is told by %s of %s', (packageName, refdes, kind) => {
    const { board } = read([shield(refdes === 'X12' ? 'Z12' : refdes, { packageName })]);
    expect(board.covers.map((cover) => cover.kind)).toEqual([kind]);
  });

  it.each([
    ['a shielded coil', shield('L3', { packageName: 'SHIELDED-COIL' })],
    ['a shielded socket', shield('J3', { packageName: 'RJ45_SHIELD' })],
    ['a bus transceiver beside everything', shield('CAN1', { x: 50, y: 30, packageName: 'SOIC-8' })],
    [
      'a shunt',
      shield('SH1', {
        packageName: 'R_2512',
        pads: [
          ['1', -3, 0, 1, 3],
          ['2', 3, 0, 1, 3],
        ],
      }),
    ],
  ])('is not: %s', (_name, part) => {
    const { board, isPart } = read([part]);
    expect([board.covers, isPart(part.refdes)]).toEqual([[], true]);
  });

  it('stays a part where nothing tells its size, and is said', () => {
    const { board, isPart, codes } = read([shield('SHLD1', { packageName: 'SCREEN-A' })], {}, false);
    expect([board.covers, isPart('SHLD1')]).toEqual([[], true]);
    expect(codes).toContain('cover-size-unknown');
    const insisted = read([shield('SHLD1', { packageName: 'SCREEN-A' })], { covers: { SHLD1: 'can' } }, false);
    expect([insisted.board.covers, insisted.codes.includes('cover-size-unknown')]).toEqual([[], true]);
  });

  it('is a part again, or a frame, when somebody says so', () => {
    const part = read([shield('SHLD1')], { covers: { SHLD1: 'part' } });
    expect([part.board.covers, part.isPart('SHLD1')]).toEqual([[], true]);
    expect(read([shield('SHLD1')], { covers: { SHLD1: 'frame' } }).board.covers[0].kind).toBe('frame');
  });

  it('is asked of a part that only lies over others', () => {
    const [chip] = INVENTED_PARTS;
    const under = [15, 17, 19].map((x, index) => ({
      ...chip,
      refdes: `R${index + 1}`,
      side: 'top' as const,
      x,
      y: 12,
    }));
    const lid = [shield('MP1', { x: 17, y: 10 }), ...under];
    const { board, facts, codes } = read(lid);
    expect([board.covers, facts.covers.map(({ by, as }) => [by, as])]).toEqual([[], [['over', 'part']]]);
    expect(codes).toContain('lies-over-parts');
    expect(read(lid, { covers: { MP1: 'can' } }).board.covers.map(({ id }) => id)).toEqual(['MP1']);
  });
});
