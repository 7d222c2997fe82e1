import { describe, expect, it } from 'vitest';
import { buildEntries } from '../../../../main/heat/body-entries.ts';
import { forEachCovered, planMeasures } from '../../../../main/heat/coverage.ts';
import { buildGrid, cellAt, MOST_CELLS } from '../../../../main/heat/grid.ts';
import type { RingM, SceneBoard } from '../../../../main/heat/scene.ts';
import { bareScene, body } from './support.ts';

const rectangle = (x0: number, y0: number, x1: number, y1: number): RingM => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];

const board = (outlines: RingM[], cutouts: RingM[] = []): SceneBoard => ({ ...bareScene().board, outlines, cutouts });
const count = (mask: Uint8Array) => mask.reduce((sum, value) => sum + value, 0);

describe('grid', () => {
  it('starts at the lower-left corner of the outline and keeps the cell exact', () => {
    const grid = buildGrid(board([rectangle(0.01, 0.02, 0.1505, 0.12)]), 0.002);
    expect(grid).toMatchObject({ columns: 71, rows: 50, originXM: 0.01, originYM: 0.02, cellM: 0.002, grown: false });
    // The last column's centres lie beyond the border: no cells there.
    expect(count(grid.exists)).toBe(70 * 50);
  });

  it('counts a centre on the outline in and one on a cutout as not cut', () => {
    // Centres at 1, 3, 5... mm: the outline ends on one, the cutout begins and ends on one.
    const grid = buildGrid(board([rectangle(0, 0, 0.011, 0.009)], [rectangle(0.003, 0.003, 0.007, 0.007)]), 0.002);
    expect(count(grid.exists)).toBe(6 * 5 - 1);
    expect(grid.exists[2 * grid.columns + 2]).toBe(0);
    expect(grid.exists[1 * grid.columns + 1]).toBe(1);
  });

  it('follows a slanted border and a ring of either sense', () => {
    const triangle: RingM = [
      [0, 0],
      [0.02, 0],
      [0, 0.02],
    ];
    const grid = buildGrid(board([triangle]), 0.002);
    // Row j holds the centres with x + y <= 20 mm, the diagonal's included.
    expect(count(grid.exists)).toBe(55);
    expect(count(buildGrid(board([[...triangle].reverse()]), 0.002).exists)).toBe(55);
  });

  it('takes area and perimeter of the outline without its cutouts', () => {
    const grid = buildGrid(board([rectangle(0, 0, 0.1, 0.05)], [rectangle(0.02, 0.02, 0.06, 0.04)]), 0.002);
    expect(grid.plateLengthM).toBeCloseTo((0.1 * 0.05) / 0.3, 12);
  });

  it('grows the cell where the board is too large and says so', () => {
    const grid = buildGrid(board([rectangle(0, 0, 1, 1)]), 0.001);
    expect(grid.grown).toBe(true);
    expect(grid.cellCount).toBeLessThanOrEqual(MOST_CELLS);
    expect(grid.cellM).toBeLessThan(0.0017);
  });

  it('finds the cell of a point, none off the board', () => {
    const grid = buildGrid(board([rectangle(0, 0, 0.02, 0.02)], [rectangle(0.008, 0.008, 0.012, 0.012)]), 0.002);
    expect(cellAt(grid, 0.0041, 0.0001)).toBe(2);
    expect(cellAt(grid, 0.01, 0.01)).toBe(-1);
    expect(cellAt(grid, -0.001, 0.01)).toBe(-1);
    expect(cellAt(grid, 0.5, 0.01)).toBe(-1);
  });
});

describe('coverage', () => {
  const grid = buildGrid(board([rectangle(0, 0, 0.04, 0.04)]), 0.002);
  const area = (one: ReturnType<typeof body>) => {
    let sum = 0;
    forEachCovered(grid, one, (_, share) => {
      sum += share * grid.cellM ** 2;
    });
    return sum;
  };

  it('adds up to the plan area, turned or not, square, round and hollow', () => {
    for (const turnDeg of [0, 30, 90, 211]) {
      const one = body('U', 0.0203, 0.0197, { lengthM: 0.0135, widthM: 0.0092, turnDeg });
      expect(area(one)).toBeCloseTo(0.0135 * 0.0092, 5);
    }
    const round = body('E', 0.02, 0.02, { lengthM: 0.01, widthM: 0.01, shape: 'round' });
    expect(Math.abs(area(round) / planMeasures(round).areaM2 - 1)).toBeLessThan(0.01);
    const frame = body('F', 0.0201, 0.0201, { lengthM: 0.02, widthM: 0.015, shape: 'frame', wallM: 0.001 });
    expect(Math.abs(area(frame) / planMeasures(frame).areaM2 - 1)).toBeLessThan(0.05);
  });

  it('lets nothing between the samples be lost: a tiny part takes its share of one cell', () => {
    const tiny = body('R', 0.01, 0.01, { lengthM: 0.0001, widthM: 0.0001 });
    expect(area(tiny)).toBeCloseTo(1e-8, 12);
  });

  it('keeps what lies on the board of a part over its edge, and reports one beside it', () => {
    const edge = body('H', 0.04, 0.02, { lengthM: 0.008, widthM: 0.004 });
    expect(area(edge)).toBeCloseTo(0.004 * 0.004, 6);
    const entries = buildEntries(grid, [body('X', 0.2, 0.2), edge], 'top');
    expect(entries.offBoard).toEqual([0]);
  });

  it('never averages parts that share a cell, and scales crowded shares for films only', () => {
    const first = body('A', 0.021, 0.021, { lengthM: 0.0019, widthM: 0.0019, heightM: 0.001 });
    const second = { ...first, id: 'B', heightM: 0.005 };
    const entries = buildEntries(grid, [first, second], 'top');
    expect(entries.count).toBe(2);
    expect(entries.capacity[1]! / entries.capacity[0]!).toBeCloseTo(5, 9);
    const share = entries.share[0]!;
    expect(share * 2).toBeGreaterThan(1);
    const side = (height: number) => 1 + (0.5 * 4 * height) / 0.0019;
    expect(entries.filmArea[0]!).toBeCloseTo((share / (share * 2)) * side(0.001), 9);
    expect(entries.bare[entries.face[0]!]).toBe(0);
    expect(entries.joint[0]).toBeCloseTo(share * 20000, 9);
  });

  it('puts the worked side up, whichever it is', () => {
    const parts = [body('T', 0.01, 0.01), body('B', 0.01, 0.01, { side: 'bottom' })];
    const top = buildEntries(grid, parts, 'top');
    const bottom = buildEntries(grid, parts, 'bottom');
    expect([...top.bodyOfScene]).toEqual([0, 1]);
    expect([...bottom.bodyOfScene]).toEqual([1, 0]);
    expect(top.face[0]!).toBeLessThan(grid.cellCount);
    expect(top.face[top.count - 1]!).toBeGreaterThanOrEqual(grid.cellCount);
  });
});
