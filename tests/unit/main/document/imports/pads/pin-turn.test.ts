import { expect, test } from 'vitest';
import { turnByPins } from '../../../../../../main/document/imports/pads/pin-turn.ts';
import { turnPoint } from '../../../../../../main/document/imports/plane.ts';

type Pattern = readonly (readonly [pin: string, x: number, y: number])[];

/** Zero orientations of IPC-7351, level A (from memory): pin 1 left of two, upper left of more. */
const PATTERNS: Record<string, Pattern> = {
  'a chip': [
    ['1', -0.5, 0],
    ['2', 0.5, 0],
  ],
  'a diode named by letters': [
    ['K', -0.8, 0],
    ['A', 0.8, 0],
  ],
  'two rows': Array.from({ length: 8 }, (_, pin) => [
    String(pin + 1),
    pin < 4 ? -2 : 2,
    pin < 4 ? 1.5 - pin : pin - 5.5,
  ]),
  'four sides': Array.from({ length: 16 }, (_, pin) => {
    const at = turnPoint({ x: -2, y: 0.9 - 0.6 * (pin % 4) }, 90 * Math.floor(pin / 4));
    return [String(pin + 1), at.x, at.y] as const;
  }),
  'one row': Array.from({ length: 5 }, (_, pin) => [String(pin + 1), pin - 2, 0]),
};

const pinsOf = (pattern: Pattern, side: 'top' | 'bottom', turn: number) =>
  new Map(
    pattern.map(([pin, x, y]) => {
      const at = turnPoint({ x, y: side === 'bottom' ? -y : y }, turn);
      return [pin, { x: 20 + at.x, y: 30 + at.y }];
    }),
  );

test.each(Object.entries(PATTERNS))('%s comes back at the turn it was laid at, on both sides', (_, pattern) => {
  for (const side of ['top', 'bottom'] as const) {
    for (const turn of [0, 22.5, 45, 90, 135, 180, 270, 301]) {
      expect(turnByPins(pinsOf(pattern, side, turn), side), `${side} ${turn}`).toBeCloseTo(turn, 2);
    }
  }
});

test('pins without a first one tell no turn', () => {
  const pins = pinsOf(
    [
      ['G', 0, 0],
      ['S', 1, 0],
    ],
    'top',
    90,
  );
  expect(turnByPins(pins, 'top')).toBeNull();
});
