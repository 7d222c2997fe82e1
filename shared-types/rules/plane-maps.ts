import type { Point } from '../geometry.ts';

/** A projective map of the plane, row after row: x' = (m0 x + m1 y + m2) / w, y' = (m3 x + m4 y + m5) / w, w = m6 x + m7 y + m8. */
export type PlaneMap = readonly [number, number, number, number, number, number, number, number, number];

/** The divisor of the map at a point: it changes sign across the horizon, where the map has no value. */
export const divisorAt = (map: PlaneMap, point: Point): number => map[6] * point.x + map[7] * point.y + map[8];

/** The point under the map; beyond the horizon the figures mean nothing: see `divisorAt`. */
export function mapPoint(map: PlaneMap, point: Point): Point {
  const w = divisorAt(map, point);
  return {
    x: (map[0] * point.x + map[1] * point.y + map[2]) / w,
    y: (map[3] * point.x + map[4] * point.y + map[5]) / w,
  };
}

/** The map that does `first` and then `second`. */
export function chainMaps(second: PlaneMap, first: PlaneMap): PlaneMap {
  const cell = (row: number, column: number) =>
    second[3 * row] * first[column] + second[3 * row + 1] * first[3 + column] + second[3 * row + 2] * first[6 + column];
  return [cell(0, 0), cell(0, 1), cell(0, 2), cell(1, 0), cell(1, 1), cell(1, 2), cell(2, 0), cell(2, 1), cell(2, 2)];
}

/** The map back, by the adjugate; null when the map flattens the plane to a line. */
export function invertMap([a, b, c, d, e, f, g, h, i]: PlaneMap): PlaneMap | null {
  const adjugate = [
    e * i - f * h,
    c * h - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * h - e * g,
    b * g - a * h,
    a * e - b * d,
  ];
  const determinant = a * adjugate[0] + b * adjugate[3] + c * adjugate[6];
  if (!Number.isFinite(1 / determinant)) return null;
  return adjugate.map((value) => value / determinant) as unknown as PlaneMap;
}

/** The 2 x 2 derivative at a point, [dx'/dx, dx'/dy, dy'/dx, dy'/dy]. */
export function derivativeAt(map: PlaneMap, point: Point): [number, number, number, number] {
  const w = divisorAt(map, point);
  const { x, y } = mapPoint(map, point);
  return [(map[0] - x * map[6]) / w, (map[1] - x * map[7]) / w, (map[3] - y * map[6]) / w, (map[4] - y * map[7]) / w];
}
