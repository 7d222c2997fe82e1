import { describe, expect, test } from 'vitest';
import { levelFor, tileMatrix, tilesFor } from '../../../../renderer/canvas/photo/tiles.ts';
import { project, projectionOf } from '../../../../renderer/canvas/view/projection.ts';
import type { PhotoPlace } from '../../../../shared-types/rules/photo-place.ts';
import { invertMap, mapPoint, type PlaneMap } from '../../../../shared-types/rules/plane-maps.ts';
import { camera } from './sample.ts';

const LEANING: PlaneMap = [0.05, 0.004, -3, 0.003, -0.052, 60, 1e-5, 8e-5, 0.94];
const FLAT: PlaneMap = [0.05, 0.004, -3, 0.003, -0.052, 60, 0, 0, 1];
const place = (toBoard: PlaneMap): PhotoPlace => ({
  ...{ toBoard, toPhoto: invertMap(toBoard) as PlaneMap, fit: null, refusal: null },
});
const SIZE = { widthPx: 2000, heightPx: 1400 };

describe.each(['top', 'bottom'] as const)('a photo on the %s', (side) => {
  const projection = projectionOf(camera({ side, turnDeg: 30, zoom: 12 }), { x: 50, y: 30 }, 1);

  test.each([
    ['under an angle', LEANING, 576],
    ['from above', FLAT, 1],
  ])(
    '%s: every point of every piece lies where the map puts it, within half a pixel of the photo',
    (_name, map, count) => {
      const there = place(map);
      const tiles = tilesFor(there, 1000, 700);
      expect(tiles).toHaveLength(count);
      for (const tile of tiles) {
        const matrix = tileMatrix(there, tile, 2, projection);
        if (!matrix) throw new Error('no matrix');
        const [a, b, c, d, tx, ty] = matrix;
        for (const [x, y] of [
          [0, 0],
          [tile.width, 0],
          [tile.width / 2, tile.height / 2],
          [tile.width, tile.height],
        ]) {
          const drawn = { x: a * x + c * y + tx, y: b * x + d * y + ty };
          const meant = project(projection, mapPoint(map, { x: (tile.x + x) * 2, y: (tile.y + y) * 2 }));
          // A photo pixel is about 0.05 mm, 0.6 pixels of this screen.
          expect(Math.hypot(drawn.x - meant.x, drawn.y - meant.y)).toBeLessThan(0.3);
        }
      }
    },
  );
});

test('pieces cover the picture without a gap', () => {
  const covered = new Uint8Array(100 * 70);
  for (const { x, y, width, height } of tilesFor(place(LEANING), 100, 70))
    for (let row = y; row < y + height; row++)
      for (let column = x; column < x + width; column++) covered[row * 100 + column] = 1;
  expect(covered.every((value) => value === 1)).toBe(true);
});

test('a piece that reaches to the horizon is left out', () => {
  const map: PlaneMap = [0.05, 0, 0, 0, -0.05, 60, 0, 5e-4, -0.1];
  const projection = projectionOf(camera(), { x: 50, y: 30 }, 1);
  expect(tileMatrix(place(map), { x: 0, y: 100, width: 50, height: 50 }, 1, projection)).toBeNull();
  expect(tileMatrix(place(map), { x: 0, y: 900, width: 50, height: 50 }, 1, projection)).not.toBeNull();
});

test('the level that is drawn has a pixel for every pixel of the screen, and no more than needed', () => {
  const widths = [2000, 1000, 500];
  // 0.05 mm a pixel: 100 mm across.
  const at = (zoom: number, ratio = 1) =>
    levelFor(place(FLAT), SIZE, widths, projectionOf(camera({ zoom }), { x: 50, y: 30 }, ratio));
  expect([at(4), at(8), at(16), at(40)]).toEqual([2, 1, 0, 0]);
  expect(at(4, 2)).toBe(1);
});
