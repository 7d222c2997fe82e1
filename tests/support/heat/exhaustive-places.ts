import { type Covariance, narrowed, type Reading } from '../../../main/heat/uncertainty/narrowing.ts';
import { chooseGreedily, doubtLeft, type Wished } from '../../../main/planning/choose-places.ts';

/** Least doubt that `more` further readings can leave, every set of them tried. */
function leastDoubt(
  under: Covariance,
  readings: readonly Reading[],
  wished: Wished,
  from: number,
  more: number,
): number {
  if (more === 0) return doubtLeft(under, wished);
  let least = Number.POSITIVE_INFINITY;
  for (let index = from; index <= readings.length - more; index++) {
    least = Math.min(least, leastDoubt(narrowed(under, readings[index]!), readings, wished, index + 1, more - 1));
  }
  return least;
}

type Choice = { start: Covariance; readings: readonly Reading[]; wish: Wished; given: readonly number[] };

/**
 * What greedy choice loses of what could be learnt by `count` readings beside those given: share of the best set's
 * narrowing, 0 to 1.
 */
export function lossOfGreed({ start, readings, wish, given }: Choice, count: number): number {
  const before = given.reduce((under, index) => narrowed(under, readings[index]!), start);
  const others = readings.filter((_, index) => !given.includes(index));
  const chosen = chooseGreedily(start, readings, wish, given, given.length + count);
  const greedy = doubtLeft(
    chosen.reduce((under, index) => narrowed(under, readings[index]!), start),
    wish,
  );
  const best = leastDoubt(before, others, wish, 0, Math.min(count, others.length));
  const nothing = doubtLeft(start, wish);
  return nothing > best ? (greedy - best) / (nothing - best) : 0;
}
