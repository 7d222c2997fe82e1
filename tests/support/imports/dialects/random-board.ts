import { CHIP, FIVE, type InventedPart } from '../../../unit/main/document/imports/invented-board.ts';
import type { Draws } from './random.ts';

/** A part of a random board with all that a table may tell of it. */
export interface RandomPart extends InventedPart {
  readonly value: string;
  readonly heightMm: number;
}

const TURNS = [0, 90, 180, 270, 45, 22.5, 360, -90, 315, 157.5];
const VALUES = [
  '10k',
  '100n',
  '4k7',
  '1uF',
  '74HC00',
  'LM358D',
  '600R, 2A',
  '0201, 1uF, 10V',
  'HEADER .05" SMD',
  '4.7\u00B5',
  '22 \u03A9',
  '10 \u00B5H',
  '',
];
const PACKAGES = ['C_0402_INV', 'R0603-X', 'FIVELEG', 'SOT23-5_INV'];

/** Cells of 4 mm on a board of 60 x 36 mm; one part stands in each. */
const CELL_MM = 4;
const [COLUMNS, ROWS] = [14, 8];

/** 4 to 30 parts on one or both sides; every package stands on both sides and at several turns where the count allows. */
export function randomBoard(draws: Draws): RandomPart[] {
  const count = draws.whole(8, 30);
  const bothSides = draws.chance(0.8);
  const only = draws.one(['top', 'bottom'] as const);
  const cells = draws.shuffled(Array.from({ length: COLUMNS * ROWS }, (_, index) => index)).slice(0, count);
  const marks = draws.chance(0.3);
  return cells.map((cell, index): RandomPart => {
    const side = bothSides ? (index % 2 === 0 ? 'top' : 'bottom') : only;
    const five = index >= 8 && draws.chance(0.4);
    const jitter = (): number => draws.whole(-10, 10) * 0.05;
    const letters = five ? 'U' : draws.one(['C', 'R']);
    return {
      refdes: `${letters}${index + 1}${marks && draws.chance(0.2) ? draws.one(['_1', 'A', '.2']) : ''}`,
      packageName: five ? draws.one(PACKAGES.slice(2)) : draws.one(PACKAGES.slice(0, 2)),
      side,
      x: round(4 + CELL_MM * (cell % COLUMNS) + jitter()),
      y: round(4 + CELL_MM * Math.floor(cell / COLUMNS) + jitter()),
      turn: index < 8 ? TURNS[Math.floor(index / 2) + draws.whole(0, 2)] : draws.one(TURNS),
      value: draws.one(VALUES),
      heightMm: draws.whole(3, 40) / 10,
      pads: five ? FIVE : CHIP,
    };
  });
}

const round = (mm: number): number => Math.round(mm * 1e4) / 1e4;
