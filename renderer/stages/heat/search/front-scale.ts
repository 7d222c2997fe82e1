export type Span = { from: number; to: number };

/** Steps that ticks may have. */
const STEPS = [1, 2, 5, 10, 20, 50, 100, 200, 500];
const MOST_TICKS = 6;

const stepFor = (length: number): number => STEPS.find((step) => length / step <= MOST_TICKS) ?? 1000;

/** From a round figure below the least to a round one above the largest; never without length. */
export function spanOf(values: readonly number[]): Span {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const step = stepFor(Math.max(1, most - least));
  const from = Math.floor(least / step - 0.15) * step;
  return { from, to: Math.max(from + step, Math.ceil(most / step + 0.15) * step) };
}

/** Round figures in a span. */
export function ticksIn({ from, to }: Span): number[] {
  const step = stepFor(to - from);
  const first = Math.ceil(from / step);
  return Array.from({ length: Math.floor(to / step) - first + 1 }, (_, index) => (first + index) * step);
}
