import { expect, test } from 'vitest';
import type { Orientation } from '../../../../../shared-types/photo.ts';
import { orientationOf, uprightPoint, uprightTransform } from '../../../../../shared-types/rules/orientation.ts';

/** The letter F, as it should be seen. */
const UPRIGHT = ['####', '#...', '###.', '#...', '#...'];

type Edge = 'top' | 'bottom' | 'left' | 'right';
/** TIFF 6.0, section 8, tag Orientation: where the 0th row and the 0th column of the stored picture are seen. */
const PUBLISHED: Record<Orientation, [row: Edge, column: Edge]> = {
  1: ['top', 'left'],
  2: ['top', 'right'],
  3: ['bottom', 'right'],
  4: ['bottom', 'left'],
  5: ['left', 'top'],
  6: ['right', 'top'],
  7: ['right', 'bottom'],
  8: ['left', 'bottom'],
};

const seenAt = (
  edge: Edge,
  step: number,
  rows: number,
  columns: number,
): [row: number | null, column: number | null] => {
  switch (edge) {
    case 'top':
      return [step, null];
    case 'bottom':
      return [rows - 1 - step, null];
    case 'left':
      return [null, step];
    case 'right':
      return [null, columns - 1 - step];
  }
};

/** How a camera stores the upright picture under an orientation, by the words of the standard alone. */
function stored(orientation: Orientation): string[] {
  const [rows, columns] = [UPRIGHT.length, UPRIGHT[0].length];
  const [rowEdge, columnEdge] = PUBLISHED[orientation];
  const sideways = rowEdge === 'left' || rowEdge === 'right';
  const [storedRows, storedColumns] = sideways ? [columns, rows] : [rows, columns];
  return Array.from({ length: storedRows }, (_, r) =>
    Array.from({ length: storedColumns }, (_, c) => {
      const [rowA, columnA] = seenAt(rowEdge, r, rows, columns);
      const [rowB, columnB] = seenAt(columnEdge, c, rows, columns);
      return UPRIGHT[(rowA ?? rowB)!][(columnA ?? columnB)!];
    }).join(''),
  );
}

test.each([1, 2, 3, 4, 5, 6, 7, 8] as const)('orientation %i is set upright, pixel by pixel', (orientation) => {
  const picture = stored(orientation);
  const transform = uprightTransform(orientation, picture[0].length, picture.length);
  expect([transform.widthPx, transform.heightPx]).toEqual([4, 5]);
  const canvas = Array.from({ length: transform.heightPx }, () => Array<string>(transform.widthPx).fill('?'));
  picture.forEach((line, y) => {
    [...line].forEach((pixel, x) => {
      const { x: column, y: row } = uprightPoint(transform, { x: x + 0.5, y: y + 0.5 });
      canvas[Math.floor(row)][Math.floor(column)] = pixel;
    });
  });
  expect(canvas.map((line) => line.join(''))).toEqual(UPRIGHT);
});

test('the eight arrangements are eight different pictures', () => {
  expect(new Set([1, 2, 3, 4, 5, 6, 7, 8].map((value) => stored(value as Orientation).join('\n'))).size).toBe(8);
});

test('a missing or senseless tag counts as upright', () => {
  expect([undefined, 0, 9, 1.5, 6].map(orientationOf)).toEqual([1, 1, 1, 1, 6]);
});
