import type { RingM } from './scene.ts';

/** A centre this near a border counts as on it. */
const BORDER_M = 1e-9;

/** Cell centres of a raster: column i at originX + (i + 0.5) cell, row j at originY + (j + 0.5) cell. */
export type Raster = { columns: number; rows: number; cellM: number; originXM: number; originYM: number };

/** x positions where the ring crosses the horizontal line at `y`, sorted. */
function crossings(ring: RingM, y: number): number[] {
  const found: number[] = [];
  for (let index = 0; index < ring.length; index++) {
    const [x1, y1] = ring[index]!;
    const [x2, y2] = ring[(index + 1) % ring.length]!;
    if (y1 > y === y2 > y) continue;
    found.push(x1 + ((y - y1) / (y2 - y1)) * (x2 - x1));
  }
  return found.sort((left, right) => left - right);
}

function distanceToEdge(x: number, y: number, a: readonly number[], b: readonly number[]): number {
  const dx = b[0]! - a[0]!;
  const dy = b[1]! - a[1]!;
  const squared = dx * dx + dy * dy;
  const along = squared > 0 ? Math.min(1, Math.max(0, ((x - a[0]!) * dx + (y - a[1]!) * dy) / squared)) : 0;
  return Math.hypot(x - a[0]! - along * dx, y - a[1]! - along * dy);
}

/** Calls `mark` for every cell whose centre lies on the ring's border (within 1e-9 m). */
function markBorder(raster: Raster, ring: RingM, mark: (cell: number) => void): void {
  const { columns, rows, cellM, originXM, originYM } = raster;
  const limit = (value: number, count: number) => Math.min(count - 1, Math.max(0, value));
  for (let index = 0; index < ring.length; index++) {
    const a = ring[index]!;
    const b = ring[(index + 1) % ring.length]!;
    const steep = Math.abs(b[1] - a[1]) >= Math.abs(b[0] - a[0]);
    const axis = steep ? 1 : 0;
    const origin = steep ? originYM : originXM;
    const count = steep ? rows : columns;
    const low = limit(Math.floor((Math.min(a[axis], b[axis]) - origin) / cellM - 0.5), count);
    const high = limit(Math.ceil((Math.max(a[axis], b[axis]) - origin) / cellM - 0.5), count);
    for (let line = low; line <= high; line++) {
      const at = origin + (line + 0.5) * cellM;
      const span = b[axis] - a[axis];
      const share = span === 0 ? 0 : Math.min(1, Math.max(0, (at - a[axis]) / span));
      const across = a[1 - axis]! + share * (b[1 - axis]! - a[1 - axis]!);
      const other = Math.round((across - (steep ? originXM : originYM)) / cellM - 0.5);
      if (other < 0 || other >= (steep ? columns : rows)) continue;
      const column = steep ? other : line;
      const row = steep ? line : other;
      const x = originXM + (column + 0.5) * cellM;
      const y = originYM + (row + 0.5) * cellM;
      if (distanceToEdge(x, y, a, b) <= BORDER_M) mark(row * columns + column);
    }
  }
}

/**
 * Fills `mask` with `value` where a cell's centre is inside the ring.
 * @param borderCounts whether a centre on the border (within 1e-9 m) counts as inside
 */
export function fillRing(mask: Uint8Array, raster: Raster, ring: RingM, value: 0 | 1, borderCounts: boolean): void {
  const { columns, rows, cellM, originXM, originYM } = raster;
  const onBorder: number[] = [];
  markBorder(raster, ring, (cell) => onBorder.push(cell));
  const before = onBorder.map((cell) => mask[cell]!);
  for (let row = 0; row < rows; row++) {
    const found = crossings(ring, originYM + (row + 0.5) * cellM);
    for (let pair = 0; pair + 1 < found.length; pair += 2) {
      const first = Math.max(0, Math.ceil((found[pair]! - originXM) / cellM - 0.5));
      const last = Math.min(columns - 1, Math.floor((found[pair + 1]! - originXM) / cellM - 0.5));
      if (last >= first) mask.fill(value, row * columns + first, row * columns + last + 1);
    }
  }
  onBorder.forEach((cell, index) => {
    mask[cell] = borderCounts ? value : before[index]!;
  });
}

/** Area (m2) and perimeter (m) of a ring. */
export function ringMeasures(ring: RingM): { areaM2: number; perimeterM: number } {
  let twice = 0;
  let perimeterM = 0;
  for (let index = 0; index < ring.length; index++) {
    const [x1, y1] = ring[index]!;
    const [x2, y2] = ring[(index + 1) % ring.length]!;
    twice += x1 * y2 - x2 * y1;
    perimeterM += Math.hypot(x2 - x1, y2 - y1);
  }
  return { areaM2: Math.abs(twice) / 2, perimeterM };
}
