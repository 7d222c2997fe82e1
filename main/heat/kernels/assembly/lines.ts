import { at, count, num, pair } from './access';
import {
  CAPACITY,
  CELLS,
  COLUMN_AHEAD,
  COLUMN_BACK,
  COLUMN_INVERSE,
  COLUMNS,
  DT,
  RATE,
  ROW_AHEAD,
  ROW_BACK,
  ROW_INVERSE,
  ROWS,
} from './slots';

/** One cell on the way to the right: both layers in the lanes of `carried`, which is returned. */
@inline
function forward(value: usize, layer: usize, inverse: usize, back: usize, scale: v128, carried: v128): v128 {
  const factor = f64x2.mul(v128.load64_splat(inverse), scale);
  const next = f64x2.add(f64x2.mul(pair(value, value + layer), factor), f64x2.mul(v128.load64_splat(back), carried));
  v128.store64_lane(value, next, 0);
  v128.store64_lane(value + layer, next, 1);
  return next;
}

/** One cell on the way back. */
@inline
function backward(value: usize, layer: usize, ahead: usize, carried: v128): v128 {
  const next = f64x2.add(pair(value, value + layer), f64x2.mul(v128.load64_splat(ahead), carried));
  v128.store64_lane(value, next, 0);
  v128.store64_lane(value + layer, next, 1);
  return next;
}

/** Four rows side by side: four independent chains hide the latency of one. */
function solveFourRows(start: usize, line: usize, layer: usize, scale: v128): void {
  const values = at(RATE) + start;
  const inverse = at(ROW_INVERSE) + start;
  const back = at(ROW_BACK) + start;
  const ahead = at(ROW_AHEAD) + start;
  const two = line << 1;
  const three = line + two;
  let a = f64x2.splat(0);
  let b = a;
  let c = a;
  let d = a;
  for (let o: usize = 0; o < line; o += 8) {
    a = forward(values + o, layer, inverse + o, back + o, scale, a);
    b = forward(values + o + line, layer, inverse + o + line, back + o + line, scale, b);
    c = forward(values + o + two, layer, inverse + o + two, back + o + two, scale, c);
    d = forward(values + o + three, layer, inverse + o + three, back + o + three, scale, d);
  }
  for (let o: usize = line - 8; o > 0; ) {
    o -= 8;
    a = backward(values + o, layer, ahead + o, a);
    b = backward(values + o + line, layer, ahead + o + line, b);
    c = backward(values + o + two, layer, ahead + o + two, c);
    d = backward(values + o + three, layer, ahead + o + three, d);
  }
}

function solveRow(start: usize, line: usize, layer: usize, scale: v128): void {
  const values = at(RATE) + start;
  const inverse = at(ROW_INVERSE) + start;
  const back = at(ROW_BACK) + start;
  const ahead = at(ROW_AHEAD) + start;
  let a = f64x2.splat(0);
  for (let o: usize = 0; o < line; o += 8) a = forward(values + o, layer, inverse + o, back + o, scale, a);
  for (let o: usize = line - 8; o > 0; ) {
    o -= 8;
    a = backward(values + o, layer, ahead + o, a);
  }
}

/** Along y, the way up, for some cells of one layer that have just been solved along x and lie near. */
@inline
function columnsForward(values: usize, inverse: usize, back: usize, line: usize, from: usize, to: usize): void {
  let o = from;
  for (; o + 16 <= to; o += 16) {
    const carried = f64x2.mul(v128.load(back + o), v128.load(values + o - line));
    v128.store(values + o, f64x2.add(f64x2.mul(v128.load(values + o), v128.load(inverse + o)), carried));
  }
  if (o < to) {
    const carried = load<f64>(back + o) * load<f64>(values + o - line);
    store<f64>(values + o, load<f64>(values + o) * load<f64>(inverse + o) + carried);
  }
}

/** Along y, the way down, for one layer. */
function columnsBackward(values: usize, line: usize, size: usize): void {
  const ahead = at(COLUMN_AHEAD);
  let o = size - line;
  for (; o >= 16; ) {
    o -= 16;
    const carried = f64x2.mul(v128.load(ahead + o), v128.load(values + o + line));
    v128.store(values + o, f64x2.add(v128.load(values + o), carried));
  }
  if (o > 0) store<f64>(values, load<f64>(values) + load<f64>(ahead) * load<f64>(values + line));
}

/**
 * Solves all lines along x, then all along y, in place and for both layers, whose factors are the same: a band of rows along x and
 * at once on its way up along y. Lines are at least two cells long.
 */
export function solveLines(): void {
  const layer = count(CELLS) << 3;
  const line = count(COLUMNS) << 3;
  const rows = count(ROWS);
  const scale = f64x2.splat(num(DT) / num(CAPACITY));
  const values = at(RATE);
  const inverse = at(COLUMN_INVERSE);
  const back = at(COLUMN_BACK);
  let row: usize = 0;
  while (row < rows) {
    const start = row * line;
    const many = row + 4 <= rows;
    if (many) solveFourRows(start, line, layer, scale);
    else solveRow(start, line, layer, scale);
    row += many ? 4 : 1;
    columnsForward(values, inverse, back, line, start, row * line);
    columnsForward(values + layer, inverse, back, line, start, row * line);
  }
  columnsBackward(values, line, layer);
  columnsBackward(values + layer, line, layer);
}
