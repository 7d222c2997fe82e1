import { distance, median, type Point } from '../plane.ts';

export interface OffsetVote {
  readonly x: number;
  readonly y: number;
  /** How many pairs or placements agree with the offset. */
  readonly votes: number;
  readonly of: number;
}

const BIN_MM = 0.1;
const AGREES_MM = 0.05;

const HALF_SPAN = 33_554_432;
const ROW_SPAN = 2 * HALF_SPAN;

/** Number key of a cell; cells lie within +-2^25 of the origin. */
function cellKey(column: number, row: number): number {
  return (column + HALF_SPAN) * ROW_SPAN + (row + HALF_SPAN);
}

/** Hands every difference to `take`; called twice, so that a million of them need not be kept. */
type Differences = (take: (x: number, y: number) => void) => void;

/** The fullest cell of a histogram of differences, as their median; neighbours count, so that a border does not split a peak. */
function densest(each: Differences): Point | null {
  const cells = new Map<number, number>();
  each((x, y) => {
    const key = cellKey(Math.round(x / BIN_MM), Math.round(y / BIN_MM));
    cells.set(key, (cells.get(key) ?? 0) + 1);
  });
  let best: { column: number; row: number; count: number } | null = null;
  for (const [key, own] of cells) {
    if (own * 9 < (best?.count ?? 0)) continue;
    const column = Math.floor(key / ROW_SPAN) - HALF_SPAN;
    const row = (key % ROW_SPAN) - HALF_SPAN;
    const count = countNear(cells, column, row);
    if (count > (best?.count ?? 0)) best = { column, row, count };
  }
  if (best === null) return null;
  const { column, row } = best;
  const xs: number[] = [];
  const ys: number[] = [];
  each((x, y) => {
    if (Math.abs(Math.round(x / BIN_MM) - column) > 1 || Math.abs(Math.round(y / BIN_MM) - row) > 1) return;
    xs.push(x);
    ys.push(y);
  });
  return { x: median(xs), y: median(ys) };
}

function countNear(cells: ReadonlyMap<number, number>, column: number, row: number): number {
  let count = 0;
  for (let dx = -1; dx <= 1; dx++)
    for (let dy = -1; dy <= 1; dy++) count += cells.get(cellKey(column + dx, row + dy)) ?? 0;
  return count;
}

/** Offset between named pairs: most parts have the middle of their pads where the placement file puts them. */
export function voteByPairs(pairs: readonly { readonly from: Point; readonly to: Point }[]): OffsetVote | null {
  const differences = pairs.map(({ from, to }) => ({ x: to.x - from.x, y: to.y - from.y }));
  const peak = densest((take) => {
    for (const { x, y } of differences) take(x, y);
  });
  if (peak === null) return null;
  const votes = differences.filter((difference) => distance(difference, peak) <= AGREES_MM).length;
  return { ...peak, votes, of: pairs.length };
}

const SAMPLE_PLACEMENTS = 100;
const MAX_TARGETS = 20_000;

/** Sets of points whose members do not say to whom they belong: placements of a side, and pad-pair midpoints of that side. */
export interface UnnamedPoints {
  readonly from: readonly Point[];
  readonly to: readonly Point[];
}

/** Offset that brings most points of `from` onto some point of `to`, side by side. */
export function voteByPlaces(sides: readonly UnnamedPoints[]): OffsetVote | null {
  const peak = densest((take) => {
    for (const { from, to } of sides) {
      const targets = sampled(to, MAX_TARGETS);
      for (const a of sampled(from, SAMPLE_PLACEMENTS)) for (const b of targets) take(b.x - a.x, b.y - a.y);
    }
  });
  if (peak === null) return null;
  return settle(sides, peak);
}

function sampled<T>(items: readonly T[], most: number): readonly T[] {
  if (items.length <= most) return items;
  const step = items.length / most;
  return Array.from({ length: most }, (_, index) => items[Math.floor(index * step)]);
}

/** Counts matches of all placements and takes the median of what is left as a correction. */
function settle(sides: readonly UnnamedPoints[], peak: Point): OffsetVote {
  const left: Point[] = [];
  let of = 0;
  for (const { from, to } of sides) {
    const near = finder(to);
    of += from.length;
    for (const point of from) {
      const found = near({ x: point.x + peak.x, y: point.y + peak.y });
      if (found) left.push({ x: found.x - point.x - peak.x, y: found.y - point.y - peak.y });
    }
  }
  const x = peak.x + median(left.map((point) => point.x));
  const y = peak.y + median(left.map((point) => point.y));
  return { x, y, votes: left.length, of };
}

/** Finds a point within the agreeing distance. */
export function finder(points: readonly Point[]): (at: Point) => Point | undefined {
  const cells = new Map<number, Point[]>();
  for (const point of points) {
    const key = cellKey(Math.floor(point.x / BIN_MM), Math.floor(point.y / BIN_MM));
    const cell = cells.get(key);
    if (cell) cell.push(point);
    else cells.set(key, [point]);
  }
  return (at) => {
    const column = Math.floor(at.x / BIN_MM);
    const row = Math.floor(at.y / BIN_MM);
    for (let dx = -1; dx <= 1; dx++) {
      for (let dy = -1; dy <= 1; dy++) {
        const found = cells.get(cellKey(column + dx, row + dy))?.find((point) => distance(point, at) <= AGREES_MM);
        if (found) return found;
      }
    }
    return undefined;
  };
}
