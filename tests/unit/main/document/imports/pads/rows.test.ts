import { expect, test } from 'vitest';
import type { Pad } from '../../../../../../main/document/imports/pads/collect.ts';
import {
  fitsTurned,
  ownBoxes,
  rowsByPin1,
  pinRows as rowsOfBoxes,
} from '../../../../../../main/document/imports/pads/rows.ts';

const POSE = { x: 0, y: 0, side: 'top', turn: 0 } as const;

const pinRows = (land: Pad[], pose: typeof POSE) => rowsOfBoxes(ownBoxes(land, pose));

function pads(...spots: readonly (readonly [number, number, number, number])[]): Pad[] {
  return spots.map(([x, y, width, height], index) => {
    const corners = [-1, 1].flatMap((sx) =>
      [-1, 1].map((sy) => ({ x: x + (sx * width) / 2, y: y + (sy * height) / 2, r: 0 })),
    );
    return { pin: String(index + 1), side: 'top', through: false, at: { x, y }, hull: corners };
  });
}

/** `count` leads a side, rows upright at x = -/+ `half`. */
const upright = (count: number, pitch: number, half: number, length: number) =>
  pads(
    ...[-half, half].flatMap((x) =>
      Array.from({ length: count }, (_, index) => [x, (index - (count - 1) / 2) * pitch, length, pitch * 0.6] as const),
    ),
  );

// Body sizes: JEDEC outlines MO-153 (TSSOP 4.4 mm wide), MS-012 (SO-8), MO-178 (SOT-23-5); from memory.
test.each([
  ['TSSOP-14: 4.4 across, 5.0 along the rows', upright(7, 0.65, 2.87, 1.5), 4.4, 5],
  ['TSSOP-8: 4.4 across, 3.0 along the rows', upright(4, 0.65, 2.87, 1.5), 4.4, 3],
  ['SO-8: 3.9 across, 4.9 along the rows', upright(4, 1.27, 2.7, 1.55), 3.9, 4.9],
  [
    'SOT-23-5: 1.6 across, 2.9 along',
    pads(
      [-1.35, 0.95, 1, 0.6],
      [-1.35, 0, 1, 0.6],
      [-1.35, -0.95, 1, 0.6],
      [1.35, -0.95, 1, 0.6],
      [1.35, 0.95, 1, 0.6],
    ),
    1.6,
    2.9,
  ],
])('%s', (_, land, acrossX, alongY) => {
  const rows = pinRows(land, POSE);
  if (!rows) throw new Error('no rows');
  expect(rows.along).toBe('y');
  expect(fitsTurned({ lengthMm: acrossX, widthMm: alongY }, rows)).toBe(false);
  expect(fitsTurned({ lengthMm: alongY, widthMm: acrossX }, rows)).toBe(true);
});

test('three leads: the row of two tells the long side; a heat pad does not count', () => {
  const three = pads([-0.65, -0.95, 0.5, 0.9], [0.65, -0.95, 0.5, 0.9], [0, 0.95, 0.5, 0.9]);
  expect(pinRows(three, POSE)).toMatchObject({ along: 'x' });
  const withHeatPad = [...upright(4, 1.27, 2.7, 1.55), ...pads([0, 0, 2.2, 2.2])];
  expect(pinRows(withHeatPad, POSE)).toMatchObject({ along: 'y' });
});

test('two pads, four corners and leads on four sides give no rows', () => {
  expect(pinRows(pads([-1, 0, 1, 1], [1, 0, 1, 1]), POSE)).toBeNull();
  expect(pinRows(pads([-1, -1, 1, 1], [1, -1, 1, 1], [1, 1, 1, 1], [-1, 1, 1, 1]), POSE)).toBeNull();
  const square = [
    ...upright(4, 0.5, 2, 0.8),
    ...upright(4, 0.5, 2, 0.8).map((pad) => ({ ...pad, hull: pad.hull.map(({ x, y, r }) => ({ x: y, y: x, r })) })),
  ];
  expect(pinRows(square, POSE)).toBeNull();
});

test.each([
  ['TSSOP-14', { x: -2.87, y: 1.95 }, 4.4, 5],
  ['TSSOP-14 with long lands', { x: -3, y: 1.95 }, 4.4, 5],
  ['SO-16', { x: -2.7, y: 4.45 }, 3.9, 9.9],
])('%s: pin 1 alone tells which way the rows run', (_, pin1, acrossX, alongY) => {
  const rows = rowsByPin1(pin1, { lengthMm: alongY, widthMm: acrossX });
  expect(rows.along).toBe('y');
  expect(fitsTurned({ lengthMm: alongY, widthMm: acrossX }, rows)).toBe(true);
});

test.each([
  ['one of the row of two', { x: -0.95, y: -1.016 }],
  ['the lone lead', { x: 0.01, y: 1.016 }],
])('SOT-23 by its first pin, %s: rows along x', (_, pin1) => {
  const rows = rowsByPin1(pin1, { lengthMm: 1.3, widthMm: 2.9 });
  expect(rows.along).toBe('x');
  expect(fitsTurned({ lengthMm: 1.3, widthMm: 2.9 }, rows)).toBe(true);
});
