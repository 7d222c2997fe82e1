import { type Point, rectangleCorners, type TurnedRectangle, turnVector } from '../../shared-types/geometry.ts';

/** True when two turned rectangles come closer than `gapMm`, measured along their own axes (separating axes). */
export function closerThan(a: TurnedRectangle, b: TurnedRectangle, gapMm: number): boolean {
  const grown = { ...a, lengthMm: a.lengthMm + 2 * gapMm, widthMm: a.widthMm + 2 * gapMm };
  const [first, second] = [rectangleCorners(grown), rectangleCorners(b)];
  const axes = [a.turnDeg, a.turnDeg + 90, b.turnDeg, b.turnDeg + 90].map((degrees) => turnVector(1, 0, degrees));
  return axes.every((axis) => {
    const one = shadow(first, axis);
    const other = shadow(second, axis);
    return one.from < other.to - 1e-9 && other.from < one.to - 1e-9;
  });
}

function shadow(points: readonly Point[], axis: Point): { from: number; to: number } {
  const along = points.map((point) => point.x * axis.x + point.y * axis.y);
  return { from: Math.min(...along), to: Math.max(...along) };
}

export type Occupied = TurnedRectangle & { name: string };

/** Rectangles of one side in cells of 10 mm, so that a search looks at neighbours only. */
export function createOccupancy() {
  const cells = new Map<string, Occupied[]>();
  const keysOf = (rectangle: TurnedRectangle, gapMm: number): string[] => {
    const corners = rectangleCorners(rectangle);
    const [xs, ys] = [corners.map((point) => point.x), corners.map((point) => point.y)];
    const keys: string[] = [];
    for (let i = Math.floor((Math.min(...xs) - gapMm) / 10); i <= Math.floor((Math.max(...xs) + gapMm) / 10); i++)
      for (let j = Math.floor((Math.min(...ys) - gapMm) / 10); j <= Math.floor((Math.max(...ys) + gapMm) / 10); j++)
        keys.push(`${i},${j}`);
    return keys;
  };
  return {
    add(rectangle: Occupied): void {
      for (const key of keysOf(rectangle, 0)) cells.set(key, [...(cells.get(key) ?? []), rectangle]);
    },
    /** The first rectangle closer than the gap; undefined when there is room. */
    conflict(rectangle: TurnedRectangle, gapMm: number): Occupied | undefined {
      for (const key of keysOf(rectangle, gapMm)) {
        const hit = cells.get(key)?.find((other) => closerThan(rectangle, other, gapMm));
        if (hit) return hit;
      }
      return undefined;
    },
  };
}
