import { type Covariance, narrowed, type Reading, varianceUnder } from '../heat/uncertainty/narrowing.ts';

/** Moves of the figures that are to be surer: those of the targets, and those of the parts within their band. */
export type Wished = { targets: readonly (readonly number[])[]; parts: readonly (readonly number[])[] };

const mean = (values: readonly number[]): number =>
  values.length > 0 ? values.reduce((sum, value) => sum + value, 0) / values.length : 0;

/** What is still not known of them, K2: targets and parts count alike, however many of each there are. */
export function doubtLeft(under: Covariance, { targets, parts }: Wished): number {
  const spread = (moves: readonly number[]) => varianceUnder(under, moves);
  return mean(targets.map(spread)) + mean(parts.map(spread));
}

const TOLERANCE = 1e-9;

/**
 * Which readings to take, `most` of them, in the order in which they tell most: the first `given` always, then greedily the one
 * that leaves the least doubt. Ends earlier where nothing is left. Indices into `readings`.
 */
export function chooseGreedily(
  start: Covariance,
  readings: readonly Reading[],
  wished: Wished,
  given: readonly number[],
  most: number,
): number[] {
  let covariance = start;
  const chosen = [...given];
  for (const index of given) covariance = narrowed(covariance, readings[index]!);
  while (chosen.length < most) {
    let best: { index: number; doubt: number; covariance: Covariance } | null = null;
    for (const [index, reading] of readings.entries()) {
      if (chosen.includes(index)) continue;
      const next = narrowed(covariance, reading);
      const doubt = doubtLeft(next, wished);
      if (!best || doubt < best.doubt - TOLERANCE) best = { index, doubt, covariance: next };
    }
    if (!best) break;
    chosen.push(best.index);
    covariance = best.covariance;
  }
  return chosen;
}
