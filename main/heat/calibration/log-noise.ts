import type { LogReading } from './log-model.ts';

/** Reading to reading before any log is seen, K, and how many readings that guess is worth (A). */
export const USUAL_NOISE_K = 1;
const GUESS_WEIGHT = 4;
/** The model may be wrong for long, never for ever: its bias is a term of its own. */
const MOST_CORRELATED = 0.95;

/**
 * What a fitted log says of its own noise.
 * `sigmaK`: one standard deviation of a reading. `correlation`: of neighbouring readings of a bead; logger and bead alone
 * leave none, a model that is wrong for a while leaves much. `effectiveK`: the deviation that independent readings would
 * need to tell as little.
 */
export type LogNoise = { sigmaK: number; correlation: number; effectiveK: number };

/**
 * Noise from what is left of a fit, so that nobody has to know it: a poor log or a poor model widens its own bands.
 * @param left reading minus fitted model, K, in the order of `readings` (by bead, then time)
 * @param fitted how many unknowns the readings settled (trace of the hat matrix)
 */
export function noiseOf(readings: readonly LogReading[], left: Float64Array, fitted: number): LogNoise {
  let squares = 0;
  let products = 0;
  let pairs = 0;
  left.forEach((one, row) => {
    squares += one * one;
    if (row === 0 || readings[row]!.point !== readings[row - 1]!.point || readings[row]!.atS === null) return;
    products += one * left[row - 1]!;
    pairs++;
  });
  const free = Math.max(0, left.length - fitted);
  const sigmaK = Math.sqrt((GUESS_WEIGHT * USUAL_NOISE_K ** 2 + squares) / (GUESS_WEIGHT + free));
  const raw = squares > 0 && pairs > 0 ? ((products / squares) * left.length) / pairs : 0;
  const correlation = Math.min(MOST_CORRELATED, Math.max(0, raw));
  // Variance of the mean of a chain of first order (handbook value, from memory).
  return { sigmaK, correlation, effectiveK: sigmaK * Math.sqrt((1 + correlation) / (1 - correlation)) };
}
