import { expect, test } from 'vitest';
import { hullAreaMm2, type Pad } from '../../../../../../main/document/imports/pads/collect.ts';
import { arrayGrid, describeLand } from '../../../../../../main/document/imports/pads/extents.ts';
import { turnPoint } from '../../../../../../main/document/imports/plane.ts';

/** A pad of 0.6 x 0.9 mm about (x, y) in own axes, on a board at (20, 30). */
function pad(pin: string, x: number, y: number, side: 'top' | 'bottom', turn: number): Pad {
  const corners = [
    [-0.3, -0.45],
    [0.3, -0.45],
    [0.3, 0.45],
    [-0.3, 0.45],
  ];
  const toBoard = (ownX: number, ownY: number) => {
    const turned = turnPoint({ x: ownX, y: side === 'bottom' ? -ownY : ownY }, turn);
    return { x: turned.x + 20, y: turned.y + 30 };
  };
  const hull = corners.map(([cx, cy]) => ({ ...toBoard(x + cx, y + cy), r: 0 }));
  return { pin, side, through: false, at: toBoard(x, y), hull };
}

test.each([
  ['top', 0],
  ['top', 33],
  ['bottom', 90],
  ['bottom', 22.5],
] as const)('extents and pin 1 in own axes do not depend on side and turn: %s, %d degrees', (side, turn) => {
  const land = describeLand([pad('1', -0.8, 0.3, side, turn), pad('2', 0.8, 0, side, turn)], {
    x: 20,
    y: 30,
    side,
    turn,
  });
  expect(land.lengthMm).toBeCloseTo(2.2, 9);
  expect(land.widthMm).toBeCloseTo(1.2, 9);
  expect(land.padsBox.maxY).toBeCloseTo(0.75, 9);
  expect(land.pin1?.x).toBeCloseTo(-0.8, 9);
  expect(land.pin1?.y).toBeCloseTo(0.3, 9);
  expect(land.padAreaMm2).toBeCloseTo(2 * 0.6 * 0.9, 9);
  expect(land.pinCount).toBe(2);
});

test('area of a round pad and of a rounded rectangle', () => {
  expect(hullAreaMm2([{ x: 3, y: 4, r: 0.5 }])).toBeCloseTo(Math.PI * 0.25, 6);
  const rounded = [
    { x: -1, y: -0.5, r: 0.2 },
    { x: 1, y: -0.5, r: 0.2 },
    { x: 1, y: 0.5, r: 0.2 },
    { x: -1, y: 0.5, r: 0.2 },
  ];
  expect(hullAreaMm2(rounded)).toBeCloseTo(2 + 6 * 0.2 + Math.PI * 0.04, 2);
});

const grid = (columns: number, rows: number, pitch: number) =>
  Array.from({ length: columns * rows }, (_, index) => ({
    x: (index % columns) * pitch,
    y: Math.floor(index / columns) * pitch,
  }));

test('a full or thinned grid is an array', () => {
  expect(arrayGrid(grid(18, 18, 0.8))).toEqual({ pitchMm: 0.8, columns: 18, rows: 18 });
  expect(arrayGrid(grid(9, 16, 0.8).filter(({ x }) => x < 2 || x > 4))).toEqual({ pitchMm: 0.8, columns: 9, rows: 16 });
});

test('leads round an edge, two rows, and uneven pads are no array', () => {
  const edge = grid(12, 12, 0.5).filter(({ x, y }) => x === 0 || y === 0 || x === 5.5 || y === 5.5);
  expect(arrayGrid(edge)).toBeNull();
  expect(arrayGrid(grid(8, 2, 1.27))).toBeNull();
  expect(arrayGrid(grid(4, 4, 0.8).map(({ x, y }) => ({ x: x * 1.37, y })))).toBeNull();
});
