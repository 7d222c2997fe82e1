/** A series read at irregular times: row r belongs to `times[r]`. */
export type Series = { times: Float64Array; rows: number; at: (row: number) => number };

/** Rows that lie evenly in an array: `values[offset + row * stride]`. */
export const evenRows =
  (values: Float32Array, offset = 0, stride = 1): Series['at'] =>
  (row) =>
    values[offset + row * stride]!;

const at = (series: Series, row: number): number => series.at(row);

/** Seconds that a series spends above a temperature; straight lines between its rows, from `startC` at time 0. */
export function secondsAbove(series: Series, limitC: number, startC: number): number {
  let seconds = 0;
  let before = startC;
  let beforeS = 0;
  for (let row = 0; row < series.rows; row++) {
    const now = at(series, row);
    const dt = series.times[row]! - beforeS;
    if (before > limitC && now > limitC) seconds += dt;
    else if (before > limitC || now > limitC) {
      const share = (limitC - before) / (now - before);
      seconds += dt * (now > limitC ? 1 - share : share);
    }
    before = now;
    beforeS = series.times[row]!;
  }
  return seconds;
}

/** When a series first passes a temperature, s; null: never. */
export function firstAbove(series: Series, limitC: number, startC: number): number | null {
  let before = startC;
  let beforeS = 0;
  for (let row = 0; row < series.rows; row++) {
    const now = at(series, row);
    if (now > limitC) {
      if (before > limitC) return beforeS;
      return beforeS + ((limitC - before) / (now - before)) * (series.times[row]! - beforeS);
    }
    before = now;
    beforeS = series.times[row]!;
  }
  return null;
}

/** Value at a time between rows `row` and `row + 1` (row -1: the start). */
function between(series: Series, row: number, timeS: number, startC: number): number {
  const beforeS = row < 0 ? 0 : series.times[row]!;
  const before = row < 0 ? startC : at(series, row);
  const after = at(series, row + 1);
  return before + ((timeS - beforeS) / (series.times[row + 1]! - beforeS)) * (after - before);
}

/** Value at a time; clamped to the series. */
export function valueAt(series: Series, timeS: number, startC: number): number {
  if (timeS <= 0 || series.rows === 0) return startC;
  let row = 0;
  while (row < series.rows - 1 && series.times[row]! < timeS - 1e-9) row++;
  if (timeS >= series.times[row]!) return at(series, row);
  return between(series, row - 1, timeS, startC);
}

/** Highest value of a series and when. */
export function peakOf(series: Series, startC: number): { celsius: number; seconds: number } {
  const peak = { celsius: startC, seconds: 0 };
  for (let row = 0; row < series.rows; row++) {
    if (at(series, row) > peak.celsius) {
      peak.celsius = at(series, row);
      peak.seconds = series.times[row]!;
    }
  }
  return peak;
}

/** A series at even times, from `startC` at time 0 on: one value every `stepS` seconds up to its end. */
export function sampled(series: Series, stepS: number, startC: number): Float32Array<ArrayBuffer> {
  const endS = series.rows > 0 ? series.times[series.rows - 1]! : 0;
  const values = new Float32Array(Math.floor(endS / stepS + 1e-9) + 1);
  values[0] = startC;
  let row = 0;
  for (let index = 1; index < values.length; index++) {
    const seconds = index * stepS;
    while (row < series.rows - 1 && series.times[row]! < seconds - 1e-9) row++;
    values[index] = between(series, row - 1, seconds, startC);
  }
  return values;
}
