/** Covariance of unit-variance terms, row after row; square. */
export type Covariance = Float64Array;

/** What one thermocouple tells: moves of its readings under the terms, and how wrong it may be. */
export type Reading = { moves: readonly (readonly number[])[]; biasK: number; noiseK: number };

/** Terms before anything is read: their correlations, and further ones of their own (the hand's repeat). */
export function startCovariance(correlation: readonly number[], count: number, more: number): Covariance {
  const size = count + more;
  const all = new Float64Array(size * size);
  for (let row = 0; row < count; row++) {
    for (let column = 0; column < count; column++) all[row * size + column] = correlation[row * count + column]!;
  }
  for (let term = count; term < size; term++) all[term * size + term] = 1;
  return all;
}

/** Variance of a figure that moves so. */
export function varianceUnder(covariance: Covariance, moves: readonly number[]): number {
  const size = Math.sqrt(covariance.length);
  let variance = 0;
  for (let row = 0; row < moves.length; row++) {
    for (let column = 0; column < moves.length; column++) {
      variance += moves[row]! * covariance[row * size + column]! * moves[column]!;
    }
  }
  return Math.max(0, variance);
}

/**
 * Covariance after a thermocouple has been read (linear Gaussian update, reading after reading; from memory of the
 * Kalman filter). Its attachment's bias is one more unknown that all its readings share, and is then left out again.
 */
export function narrowed(covariance: Covariance, { moves, biasK, noiseK }: Reading): Covariance {
  const size = Math.sqrt(covariance.length);
  const wide = size + 1;
  const all = new Float64Array(wide * wide);
  for (let row = 0; row < size; row++) all.set(covariance.subarray(row * size, row * size + size), row * wide);
  all[wide * wide - 1] = biasK * biasK;
  const gain = new Float64Array(wide);
  for (const move of moves) {
    let variance = noiseK * noiseK;
    for (let row = 0; row < wide; row++) {
      let sum = all[row * wide + size]!;
      for (let term = 0; term < move.length; term++) sum += all[row * wide + term]! * move[term]!;
      gain[row] = sum;
    }
    for (let term = 0; term < move.length; term++) variance += move[term]! * gain[term]!;
    variance += gain[size]!;
    for (let row = 0; row < wide; row++) {
      for (let column = 0; column < wide; column++) {
        all[row * wide + column]! -= (gain[row]! * gain[column]!) / variance;
      }
    }
  }
  const left = new Float64Array(size * size);
  for (let row = 0; row < size; row++) left.set(all.subarray(row * wide, row * wide + size), row * size);
  return left;
}
