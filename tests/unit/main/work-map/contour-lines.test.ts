import { describe, expect, it } from 'vitest';
import {
  distanceRings,
  distanceToArea,
  filledBeyondEdge,
  isothermLevels,
  isothermLines,
} from '../../../../main/work-map/drawing/contour-lines.ts';
import { sheetFigures } from '../../../../shared-types/words/sheet-figures.ts';

const grid = { columns: 60, rows: 40, cellMm: 2, originX: 10, originY: -20, grownFromMm: null };

/** A field given as a formula of the board's mm at the cells' centres. */
function field(of: (x: number, y: number) => number): Float32Array {
  const values = new Float32Array(grid.columns * grid.rows);
  for (let row = 0; row < grid.rows; row++)
    for (let column = 0; column < grid.columns; column++)
      values[row * grid.columns + column] = of(
        grid.originX + (column + 0.5) * grid.cellMm,
        grid.originY + (row + 0.5) * grid.cellMm,
      );
  return values;
}

const inside = ({ x, y }: { x: number; y: number }) => x > 11 && x < 129 && y > -19 && y < 59;

const celsius = sheetFigures({ temperature: 'C', length: 'mm' }).isothermsC;
const fahrenheit = sheetFigures({ temperature: 'F', length: 'mm' }).isothermsC;

describe('isotherms', () => {
  it('lie where a field that rises with x reaches the level', () => {
    const [line] = isothermLines(
      field((x) => 100 + x),
      grid,
      [180],
    );
    const points = line.rings.flat().filter(inside);
    expect(points.length).toBeGreaterThan(20);
    for (const point of points) expect(point.x).toBeCloseTo(80, 1);
  });

  it('are circles of the right radius round a cone', () => {
    const cone = field((x, y) => 250 - 4 * Math.hypot(x - 70, y - 20));
    const [line] = isothermLines(cone, grid, [170]);
    const radii = line.rings.flat().map((point) => Math.hypot(point.x - 70, point.y - 20));
    expect(Math.max(...radii)).toBeLessThan(20.2);
    expect(Math.min(...radii)).toBeGreaterThan(19.8);
  });

  it('leave a board with a missing corner across its edge, not along it', () => {
    const notched = field((x, y) => (x > 100 && y > 30 ? Number.NaN : 100 + x));
    const points = isothermLines(notched, grid, [150])[0].rings.flat().filter(inside);
    for (const point of points) expect(point.x).toBeCloseTo(50, 1);
  });

  it('fill what has no value and end on an all-empty field', () => {
    const filled = filledBeyondEdge(Float32Array.from([1, Number.NaN, Number.NaN, 3]), 2, 2);
    expect([...filled]).toEqual([1, 2, 2, 3]);
    expect(isothermLines(new Float32Array(2400).fill(Number.NaN), grid, [100])).toEqual([]);
    expect(isothermLevels(new Float32Array(4).fill(Number.NaN), celsius)).toEqual([]);
  });

  it('come every 20 °C, or every 40 °F, between the coldest and the hottest place', () => {
    expect(isothermLevels(Float32Array.from([141, 239.5, Number.NaN]), celsius)).toEqual([160, 180, 200, 220]);
    expect(isothermLevels(Float32Array.from([160, 220]), celsius)).toEqual([180, 200]);
    const levels = isothermLevels(Float32Array.from([140, 240]), fahrenheit);
    expect(levels.map((level) => Math.round(level * 1.8 + 32))).toEqual([320, 360, 400, 440]);
  });
});

describe('distance rings', () => {
  const area = { x: 50, y: 40, lengthMm: 20, widthMm: 10, turnDeg: 30 };

  it('measure from the edge of a turned area', () => {
    expect(distanceToArea({ x: 50, y: 40 }, area)).toBe(0);
    const along = { x: 50 + 17 * Math.cos(Math.PI / 6), y: 40 + 17 * Math.sin(Math.PI / 6) };
    expect(distanceToArea(along, area)).toBeCloseTo(7, 9);
  });

  it('run 5, 10 and 20 mm off the edge', () => {
    for (const { level, rings } of distanceRings([area], [5, 10, 20])) {
      expect(rings.length).toBe(1);
      for (const point of rings[0]) expect(distanceToArea(point, area)).toBeCloseTo(level, 0);
    }
  });

  it('go round sites that lie close together as one', () => {
    const second = { ...area, x: 75 };
    const [five, twenty] = distanceRings([area, second], [1, 20]);
    expect(five.rings.length).toBe(2);
    expect(twenty.rings.length).toBe(1);
    for (const point of twenty.rings[0])
      expect(Math.min(distanceToArea(point, area), distanceToArea(point, second))).toBeCloseTo(20, 0);
  });
});
