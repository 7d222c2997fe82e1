import type { PlannedStep } from './step-plan.ts';

/**
 * Numbers of every body for every sub-step of a run, row by row, in pieces: one for each segment. A piece that is full is never
 * written again, so runs that begin alike share it instead of copying it: of 3,000 parts a run has 40 MB.
 */
export type BodySeries = {
  /** Numbers in a row. */
  width: number;
  /** Per row: its piece. */
  pieceOf: Uint16Array;
  /** Per piece: its first row; one more at the end. */
  firstRow: Int32Array;
  /** Rows x width numbers each; null until the run comes there. */
  pieces: (Float32Array | null)[];
};

export function createBodySeries(steps: readonly PlannedStep[], width: number): BodySeries {
  const pieceOf = new Uint16Array(steps.length);
  const firstRow: number[] = [];
  for (const [row, { segment }] of steps.entries()) {
    if (row === 0 || segment !== steps[row - 1]!.segment) firstRow.push(row);
    pieceOf[row] = firstRow.length - 1;
  }
  const pieces = firstRow.map(() => null);
  return { width, pieceOf, firstRow: Int32Array.from([...firstRow, steps.length]), pieces };
}

function openPiece({ pieces, firstRow, width }: BodySeries, piece: number): Float32Array {
  const opened = new Float32Array((firstRow[piece + 1]! - firstRow[piece]!) * width);
  pieces[piece] = opened;
  return opened;
}

/** Writes a row; rows come in order. */
export function writeRow(series: BodySeries, row: number, numbers: Float32Array): void {
  const piece = series.pieceOf[row]!;
  const values = series.pieces[piece] ?? openPiece(series, piece);
  values.set(numbers, (row - series.firstRow[piece]!) * series.width);
}

/** One number of a row that was written. */
export function numberAt({ pieceOf, firstRow, pieces, width }: BodySeries, row: number, place: number): number {
  const piece = pieceOf[row]!;
  return pieces[piece]![(row - firstRow[piece]!) * width + place]!;
}

/** The first `rows` rows for a snapshot: full pieces as they are, one that is not full as a copy of what it has. */
export function piecesUntil({ pieces, firstRow, width }: BodySeries, rows: number): Float32Array[] {
  const kept: Float32Array[] = [];
  for (let piece = 0; piece < pieces.length && firstRow[piece]! < rows; piece++) {
    const isFull = firstRow[piece + 1]! <= rows;
    kept.push(isFull ? pieces[piece]! : pieces[piece]!.slice(0, (rows - firstRow[piece]!) * width));
  }
  return kept;
}

/** Takes the rows of a snapshot over; full pieces are shared with it. */
export function takePieces(series: BodySeries, kept: readonly Float32Array[]): void {
  for (const [piece, values] of kept.entries()) {
    const isFull = values.length === (series.firstRow[piece + 1]! - series.firstRow[piece]!) * series.width;
    if (isFull) series.pieces[piece] = values;
    else openPiece(series, piece).set(values);
  }
}

/**
 * Largest rise of each body over any `windowS` seconds divided by them, K/s; 0 for one that only falls. Straight lines between
 * rows, from `startC` at time 0. Row by row for all bodies at once: those of one row lie together.
 * @param bodies how many there are: as many numbers at a row's beginning are looked at
 */
export function largestRises(
  series: BodySeries,
  times: Float64Array,
  rows: number,
  bodies: number,
  windowS: number,
  startC: number,
): Float64Array {
  const largest = new Float64Array(bodies);
  const pieceAt = (row: number) => series.pieces[series.pieceOf[row]!]!;
  const placeOf = (row: number) => (row - series.firstRow[series.pieceOf[row]!]!) * series.width;
  let behind = -1;
  for (let row = 0; row < rows; row++) {
    const from = times[row]! - windowS;
    while (behind + 1 < row && times[behind + 1]! <= from) behind++;
    const now = pieceAt(row);
    const at = placeOf(row);
    const after = pieceAt(behind + 1);
    const afterAt = placeOf(behind + 1);
    if (behind < 0) {
      const share = Math.max(0, from) / times[0]!;
      for (let body = 0; body < bodies; body++) {
        const rise = now[at + body]! - (startC + share * (after[afterAt + body]! - startC));
        if (rise > largest[body]!) largest[body] = rise;
      }
      continue;
    }
    const share = (from - times[behind]!) / (times[behind + 1]! - times[behind]!);
    const before = pieceAt(behind);
    const beforeAt = placeOf(behind);
    for (let body = 0; body < bodies; body++) {
      const earlier = before[beforeAt + body]! + share * (after[afterAt + body]! - before[beforeAt + body]!);
      const rise = now[at + body]! - earlier;
      if (rise > largest[body]!) largest[body] = rise;
    }
  }
  for (let body = 0; body < bodies; body++) largest[body]! /= windowS;
  return largest;
}
