import { describe, expect, it } from 'vitest';
import type { Cover, Part } from '../../../../../shared-types/board.ts';
import {
  boardHealth,
  healthGroups,
  openOfHealth,
  planHealth,
} from '../../../../../shared-types/rules/health/board-health.ts';
import { emptyPlan, siteOn } from '../../../../../shared-types/rules/new-plan.ts';
import { healthLine, healthSummary } from '../../../../../shared-types/words/board-health.ts';
import { METRIC } from '../../../../../shared-types/words/measures.ts';
import { boardWith, partNamed } from '../../../../support/boards.ts';

const chip = (refdes: string, fields: Partial<Part> = {}): Part =>
  partNamed(refdes, {
    class: 'chip-resistor',
    package: { name: '0402', shape: 'rectangle', lengthMm: 1, widthMm: 0.5, heightMm: 0.35 },
    ...fields,
  });
const known = (parts: Part[]) => {
  const board = boardWith(parts);
  return { ...board, laminate: { ...board.laminate, layersKnown: true } };
};
const kinds = (board: ReturnType<typeof known>) =>
  boardHealth(board).map(({ kind, refdes }) => `${kind} ${refdes.join(' ')}`.trim());

describe('the health of a board', () => {
  it('finds nothing on a plain one', () => {
    expect(boardHealth(known([chip('R1'), chip('R2', { x: 52 })]))).toEqual([]);
  });

  it('tells overlaps of one side, the deepest first, and not those of empty positions or of the other side', () => {
    const parts = [
      chip('R1'),
      chip('R2', { x: 50.8 }),
      chip('R3', { y: 40.1 }),
      chip('R4', { side: 'bottom' }),
      chip('R5', { fitted: false }),
    ];
    expect(kinds(known(parts))).toEqual(['overlap R1 R3', 'overlap R1 R2', 'overlap R2 R3']);
  });

  it('keeps still about bodies that touch within their tolerance', () => {
    expect(kinds(known([chip('R1'), chip('R2', { x: 50.92 })]))).toEqual([]);
    expect(kinds(known([chip('R1'), chip('R2', { x: 50.88 })]))).toEqual(['overlap R1 R2']);
  });

  it('makes one line of a can that was placed as a part', () => {
    const can = chip('SH1', { package: { name: 'can', shape: 'rectangle', lengthMm: 9, widthMm: 9, heightMm: 3 } });
    const under = [chip('R1'), chip('R2', { x: 52 }), chip('R3', { x: 48 }), chip('R4', { x: 54.6 })];
    expect(kinds(known([can, ...under]))).toEqual(['overlap SH1 R4', 'lies-over SH1 R1 R2 R3']);
  });

  it('tells parts off the board and over cutouts, not those that span a hole', () => {
    const square = (x: number, y: number, half: number) => [
      { x: x - half, y: y - half },
      { x: x + half, y: y - half },
      { x: x + half, y: y + half },
      { x: x - half, y: y + half },
    ];
    const board = {
      ...known([
        chip('R1', { x: 100.5 }),
        chip('R2', { x: 20, y: 20 }),
        partNamed('U1', { x: 70, y: 40 }),
        chip('J1', { x: 99.8, y: 60 }),
        chip('FID1', { x: -5, class: 'mark-on-board' }),
      ]),
      cutouts: [square(20, 20, 3), square(70, 40, 2)],
    };
    expect(kinds(board)).toEqual(['outside R1', 'over-cutout R2']);
  });

  it('tells names that only case or blanks tell apart', () => {
    const parts = [chip('R1'), chip('r1', { x: 10 }), chip('R 1', { x: 20 }), chip('R11', { x: 30 })];
    expect(kinds(known(parts))).toEqual(['same-name R1 r1 R 1']);
  });

  it('tells bodies that no part has', () => {
    const sized = (refdes: string, x: number, lengthMm: number, heightMm: number | null) =>
      chip(refdes, { x, package: { name: '', shape: 'rectangle', lengthMm, widthMm: 0.5, heightMm } });
    const parts = [sized('R1', 10, 0.01, 1), sized('R2', 20, 1, 90), sized('R3', 30, 1, 0.01), sized('R4', 60, 200, 1)];
    const odd = boardHealth(known(parts)).filter(({ kind }) => kind === 'body-odd');
    expect(odd.map(({ refdes, figures }) => `${refdes[0]} ${figures.why}`)).toEqual([
      'R1 small',
      'R2 tall',
      'R3 flat',
      'R4 large',
    ]);
  });

  it('tells unknown and guessed classes and missing heights, an empty position having none', () => {
    const bare = { name: '', shape: 'rectangle' as const, lengthMm: 1, widthMm: 0.5, heightMm: null };
    const parts = [
      chip('R1', { x: 10, class: 'unknown', classGuessed: true }),
      chip('R2', { x: 20, class: 'no-such-class' }),
      chip('R3', { x: 30, classGuessed: true }),
      chip('R4', { x: 40, package: bare }),
      chip('R5', { x: 60, package: bare, fitted: false }),
    ];
    expect(kinds(known(parts))).toEqual([
      'class-unknown R1',
      'class-unknown R2',
      'class-guessed R3',
      'height-missing R4',
    ]);
  });

  it('tells a can lower than what stands under it, and not a frame, which is open', () => {
    const can: Cover = {
      id: 'SH1',
      kind: 'can',
      side: 'top',
      x: 50,
      y: 40,
      lengthMm: 20,
      widthMm: 20,
      turn: 0,
      heightMm: 2,
      sheetMm: 0.2,
      material: 'nickel-silver',
      fixing: 'soldered',
    };
    const tall = partNamed('L1', {
      package: { name: '', shape: 'rectangle', lengthMm: 5, widthMm: 5, heightMm: 1.9 },
    });
    const board = known([tall]);
    expect(kinds({ ...board, covers: [can] })).toEqual(['cover-low L1']);
    expect(kinds({ ...board, covers: [{ ...can, kind: 'frame' }] })).toEqual([]);
    expect(kinds({ ...board, covers: [{ ...can, heightMm: 2.2 }] })).toEqual([]);
  });

  it('tells what the board as a whole lacks', () => {
    expect(kinds(boardWith([]))).toEqual(['no-parts', 'layers-guessed']);
    const board = known([chip('R1')]);
    expect(kinds({ ...board, laminate: { ...board.laminate, layers: [] } })).toEqual(['no-layers']);
  });
});

it('finds sites and tags of parts that are gone, and sites on the wrong side', () => {
  const board = known([partNamed('U1'), partNamed('U2', { side: 'bottom' })]);
  const site = (target: string, id: string) => ({ ...siteOn(partNamed(target), id), side: 'top' as const });
  const plan = {
    ...emptyPlan('T-1'),
    sites: [site('U1', 'a'), site('U2', 'b'), site('U9', 'c')],
    tags: [
      { kind: 'reprogram' as const, id: 't1', order: null, note: '', refdes: 'U1', way: 'in-circuit' as const },
      { kind: 'reprogram' as const, id: 't2', order: null, note: '', refdes: 'U8', way: 'in-circuit' as const },
    ],
  };
  expect(planHealth(board, plan).map(({ kind, siteId, tagId }) => [kind, siteId ?? tagId])).toEqual([
    ['site-side', 'b'],
    ['site-lost', 'c'],
    ['tag-lost', 't2'],
  ]);
});

it('says it in one line, exceptions first, and counts a part once', () => {
  const parts = [
    chip('R1', { classGuessed: true }),
    chip('R2', { x: 50.5, classGuessed: true }),
    chip('R3', { x: 120, classGuessed: true }),
  ];
  const entries = boardHealth(known(parts));
  const groups = healthGroups(entries);
  expect(healthSummary(groups)).toBe('1 overlap · 1 outside · 3 classes guessed');
  expect(openOfHealth(entries)).toBe(3);
  expect(healthLine('overlap', groups[0].entries, METRIC)).toContain('R1 and R2, by 0.5 mm');
});

it('finds nothing on a tidy board of 3,000 parts', () => {
  const parts = Array.from({ length: 3000 }, (_, index) =>
    chip(`R${index}`, { x: 1 + (index % 60) * 1.6, y: 1 + Math.floor(index / 60) * 1.5 }),
  );
  expect(boardHealth(known(parts))).toEqual([]);
});
