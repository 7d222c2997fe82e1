import { expect, test } from 'vitest';
import {
  applyTurn,
  fitTurn,
  judgeTurns,
  phaseGroups,
  type TurnRule,
  type TurnSample,
  voteTurnRule,
} from '../../../../../../main/document/imports/pads/turn.ts';
import { type Point, turnPoint } from '../../../../../../main/document/imports/plane.ts';

/** Own axes of an invented five-pin part and of a two-pad chip. */
const FIVE: [string, Point][] = [
  ['1', { x: -0.95, y: 1.3 }],
  ['2', { x: 0, y: 1.3 }],
  ['3', { x: 0.95, y: 1.3 }],
  ['4', { x: 0.95, y: -1.3 }],
  ['5', { x: -0.95, y: -1.3 }],
];
const TWO: [string, Point][] = [
  ['1', { x: -0.5, y: 0 }],
  ['2', { x: 0.5, y: 0 }],
];

/** A part as it lies on the board: own y mirrored on the bottom, then turned counter-clockwise (shared-types/board.ts). */
function place(
  refdes: string,
  side: 'top' | 'bottom',
  turn: number,
  written: number,
  pins = FIVE,
  packageName = 'P',
): TurnSample {
  const at = pins.map(([pin, { x, y }]): [string, Point] => {
    const turned = turnPoint({ x, y: side === 'bottom' ? -y : y }, turn);
    return [pin, { x: turned.x + 10, y: turned.y - 7 }];
  });
  return { refdes, side, packageName, written, pins: new Map(at) };
}

test('the fit gives back the angle between two patterns', () => {
  const fit = fitTurn(new Map(FIVE), new Map(FIVE.map(([pin, point]) => [pin, turnPoint(point, 33)])));
  expect(fit?.degrees).toBeCloseTo(33, 6);
  expect(fit?.misfitMm).toBeCloseTo(0, 9);
});

const RULES: [string, TurnRule, (turn: number, side: 'top' | 'bottom') => number][] = [
  ['as usual', { top: 'same', bottom: 'same' }, (turn) => turn],
  [
    'bottom mirrored after turning: 180 - angle',
    { top: 'same', bottom: 'fromHalfTurn' },
    (turn, side) => (side === 'top' ? turn : 180 - turn),
  ],
  ['bottom clockwise', { top: 'same', bottom: 'opposite' }, (turn, side) => (side === 'top' ? turn : -turn)],
  [
    'bottom half a turn on',
    { top: 'same', bottom: 'plusHalfTurn' },
    (turn, side) => (side === 'top' ? turn : turn - 180),
  ],
  ['all clockwise', { top: 'opposite', bottom: 'opposite' }, (turn) => -turn],
];

test.each(RULES)('the pins tell the sense of the written angles: %s', (_, rule, write) => {
  const turns = [0, 90, 180, 270, 45, 22.5];
  const samples = (['top', 'bottom'] as const).flatMap((side) =>
    turns.map((turn) => place(`${side}${turn}`, side, turn, write(turn, side))),
  );
  const vote = voteTurnRule(phaseGroups(samples));
  expect(vote).toEqual({ rule, agreeing: 12, of: 12, open: [] });
  for (const [index, { written, side }] of samples.entries()) {
    expect(applyTurn(written, side, vote.rule)).toBeCloseTo(turns[index % turns.length], 6);
  }
});

test('one part turned wrongly is named, with how far it is off', () => {
  const samples = [0, 90, 180, 270].map((turn) => place(`U${turn}`, 'top', turn, turn));
  const groups = phaseGroups([...samples, place('U9', 'top', 90, 0)]);
  const verdicts = judgeTurns(groups, voteTurnRule(groups).rule);
  expect(verdicts.filter(({ offDegrees }) => offDegrees > 1)).toMatchObject([{ refdes: 'U9', offDegrees: 90 }]);
});

test('two pads count modulo 180, apart from the count with pin numbers', () => {
  const samples = [0, 90, 180].map((turn) => place(`R${turn}`, 'top', turn, turn, TWO, 'CHIP'));
  const groups = phaseGroups([...samples, place('R9', 'top', 180, 0, TWO, 'CHIP')]);
  const odd = judgeTurns(groups, { top: 'same', bottom: 'same' }).find(({ refdes }) => refdes === 'R9');
  expect(odd).toMatchObject({ twoPads: true, offDegrees: 0, offWithPins: 180 });
});

test('land patterns that differ under one name are not held against each other', () => {
  const wide = FIVE.map(([pin, { x, y }]): [string, Point] => [pin, { x: x * 1.5, y }]);
  const groups = phaseGroups([place('U1', 'top', 0, 0), place('U2', 'top', 90, 90), place('U3', 'top', 0, 0, wide)]);
  expect(groups.map((group) => group.length)).toEqual([2, 1]);
});

test('without anything to compare the usual rule stands', () => {
  expect(voteTurnRule(phaseGroups([place('U1', 'bottom', 90, 90)])).rule).toEqual({ top: 'same', bottom: 'same' });
});

test('packages on one side alone: of rules that agree alike the one with pin 1 where it is usual; where few say so, it is told', () => {
  const turns = [0, 90, 180, 270, 45, 22.5];
  const samples = turns.map((turn) => place(`U${turn}`, 'bottom', turn, turn + 180));
  expect(voteTurnRule(phaseGroups(samples))).toMatchObject({ rule: { top: 'same', bottom: 'plusHalfTurn' }, open: [] });
  const few = voteTurnRule(phaseGroups(samples.slice(0, 3)));
  expect(few).toMatchObject({ rule: { top: 'same', bottom: 'same' }, open: ['U0', 'U90', 'U180'] });
});
