import type { Part } from '../../shared-types/board.ts';
import type { Point, Side } from '../../shared-types/geometry.ts';

/** A place after snapping, and the lines that it snapped to (board mm). */
export type Snapped = { at: Point; guides: [Point, Point][] };

export type SnapTo = {
  /** mm; 0: no grid. */
  gridMm: number;
  rows: boolean;
  parts: readonly Part[];
  side: Side;
  /** Name of the package that lies or moves: rows of its own kind pull farther than others. */
  like?: string;
  /** Parts that move themselves are no neighbours. */
  without?: ReadonlySet<string>;
  /** How far a row pulls, mm. */
  reachMm: number;
};

/** How far a row pulls at most, mm, of parts of the same package and of any: on a board that is seen whole pixels are coarse. */
const LIKE_MM = 0.3;
const UNLIKE_MM = 0.12;
/** Beyond this distance a part is no neighbour, mm. */
const NEIGHBOUR_MM = 25;
const tidy = (mm: number): number => Math.round(mm * 1000) / 1000 || 0;

/** The nearest place on the rows and columns of neighbours, else on the grid; each axis by itself. */
export function snap(at: Point, to: SnapTo): Snapped {
  const onGrid = (mm: number) => tidy(to.gridMm > 0 ? Math.round(mm / to.gridMm) * to.gridMm : mm);
  const x = to.rows ? nearestLine(at, 'x', to) : null;
  const y = to.rows ? nearestLine(at, 'y', to) : null;
  const place = { x: x?.line ?? onGrid(at.x), y: y?.line ?? onGrid(at.y) };
  const guides: [Point, Point][] = [];
  if (x) guides.push([{ x: x.line, y: x.from }, place]);
  if (y) guides.push([{ x: y.from, y: y.line }, place]);
  return { at: place, guides };
}

type Line = { line: number; from: number };

/** The row or column of the nearest neighbour within reach; a column that goes on at the same step counts too. */
function nearestLine(at: Point, axis: 'x' | 'y', { parts, side, like, without, reachMm }: SnapTo): Line | null {
  const across = axis === 'x' ? 'y' : 'x';
  let best: Line | null = null;
  let least = reachMm;
  for (const part of parts) {
    if (part.side !== side || without?.has(part.refdes)) continue;
    const off = Math.abs(part[axis] - at[axis]);
    const away = Math.abs(part[across] - at[across]);
    if (off > Math.min(least, part.package.name === like ? LIKE_MM : UNLIKE_MM) || away > NEIGHBOUR_MM) continue;
    const nearer = off < least - 1e-9 || best === null || away < Math.abs(best.from - at[across]);
    if (!nearer) continue;
    best = { line: part[axis], from: part[across] };
    least = off;
  }
  return best;
}
