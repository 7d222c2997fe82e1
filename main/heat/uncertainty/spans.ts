import type { Figures, Hanging } from './figures.ts';

/**
 * Bands of figures that count seconds. Such a figure stands still at 0, jumps when a plateau passes a limit, and adds up
 * evenly with nothing; the temperature behind it does. So: how the seconds follow that temperature, as the runs tell it, under
 * the temperature's own band.
 */

/** One run: the temperature behind a count, C, and the count, s. */
export type SpanPoint = { celsius: number; seconds: number };

/** Normal distribution in steps of 0.05 deviations out to 4, both sides (density, not normalised). */
const STEP = 0.05;
const DRAWS = Array.from({ length: 161 }, (_, index) => {
  const z = (index - 80) * STEP;
  return { z, weight: Math.exp((-z * z) / 2) };
});
const SHARE = 0.9;

type Block = { celsius: number; seconds: number; count: number };

/** Means of neighbours that run against the rise or fall, until none does (pool adjacent violators; from memory). */
function pooled(points: readonly SpanPoint[], rises: boolean): Block[] {
  const blocks: Block[] = [];
  for (const point of [...points].sort((a, b) => a.celsius - b.celsius)) {
    blocks.push({ ...point, count: 1 });
    while (blocks.length > 1) {
      const [before, last] = blocks.slice(-2) as [Block, Block];
      const step = rises ? last.seconds - before.seconds : before.seconds - last.seconds;
      if (step >= 0 && last.celsius > before.celsius) break;
      const count = before.count + last.count;
      const mean = (a: number, b: number) => (a * before.count + b * last.count) / count;
      blocks.splice(-2, 2, {
        ...{ celsius: mean(before.celsius, last.celsius), seconds: mean(before.seconds, last.seconds), count },
      });
    }
  }
  return blocks;
}

/** The line through two blocks at a temperature. */
const along = (a: Block, b: Block, celsius: number): number =>
  a.seconds + ((b.seconds - a.seconds) * (celsius - a.celsius)) / (b.celsius - a.celsius);

/** Seconds at a temperature: along the blocks, beyond them along the line through the outer third. */
function follow(blocks: readonly Block[], celsius: number): number {
  const last = blocks.length - 1;
  if (last === 0) return blocks[0]!.seconds;
  const reach = Math.max(1, Math.floor(blocks.length / 3));
  if (celsius <= blocks[0]!.celsius) return along(blocks[0]!, blocks[reach]!, celsius);
  if (celsius >= blocks[last]!.celsius) return along(blocks[last - reach]!, blocks[last]!, celsius);
  const above = blocks.findIndex((block) => block.celsius > celsius);
  return along(blocks[above - 1]!, blocks[above]!, celsius);
}

/**
 * What terms do to the count beside what they do to the temperature, one deviation of all of them together, s: a stronger
 * preheater keeps a joint hot for longer than hotter gas that takes it to the same peak. Each term's two runs are held against the line
 * that the others tell, where those reach.
 */
function scatterOf(points: readonly SpanPoint[], rises: boolean): number {
  let variance = 0;
  for (let first = 1; first + 1 < points.length; first += 2) {
    const others = points.filter((_, index) => index !== first && index !== first + 1);
    const blocks = pooled(others, rises);
    const [low, high] = [blocks[0]!.celsius, blocks.at(-1)!.celsius];
    const [down, up] = [points[first]!, points[first + 1]!].map(({ celsius, seconds }) =>
      celsius < low || celsius > high ? 0 : seconds - follow(blocks, celsius),
    ) as [number, number];
    variance += Math.max(down * down, up * up);
  }
  return Math.sqrt(variance);
}

/**
 * Half width that 90 of 100 draws of the temperature keep the count within. `points`: the run as it is first, then two for each
 * of the terms; `sigmaK`: the temperature's deviation. Counts that fall with the temperature: `rises` false.
 */
export function spanBand(points: readonly SpanPoint[], sigmaK: number, rises = true): number {
  const [base] = points;
  if (!base) return 0;
  const blocks = pooled(points, rises);
  const scatter = scatterOf(points, rises);
  const beside = scatter > 0 ? DRAWS.filter((_, index) => index % 8 === 0) : [{ z: 0, weight: 1 }];
  const misses = DRAWS.flatMap(({ z, weight }) => {
    const seconds = follow(blocks, base.celsius + sigmaK * z);
    return beside.map((other) => ({
      missed: Math.abs(Math.max(0, seconds + scatter * other.z) - base.seconds),
      weight: weight * other.weight,
    }));
  }).sort((a, b) => a.missed - b.missed);
  const whole = misses.reduce((sum, { weight }) => sum + weight, 0);
  let within = 0;
  for (const { missed, weight } of misses) {
    within += weight;
    if (within >= SHARE * whole) return missed;
  }
  return misses.at(-1)!.missed;
}

/**
 * Bands of the figures in seconds. `runs`: figures of the run as it is, then of those of the terms; `sigmaOf`: deviation
 * of a temperature, K. A figure that some run does not tell (the target never melts) has none.
 */
export function spansOf(
  hanging: readonly Hanging[],
  runs: readonly Figures[],
  sigmaOf: (name: string) => number | null,
): Map<string, number> {
  const spans = new Map<string, number>();
  for (const { count, temperature, rises } of hanging) {
    const points = runs.flatMap((figures): SpanPoint[] => {
      const celsius = figures.get(temperature);
      const seconds = figures.get(count);
      return celsius === undefined || seconds === undefined ? [] : [{ celsius, seconds }];
    });
    const sigmaK = sigmaOf(temperature);
    if (points.length < runs.length || sigmaK === null) continue;
    spans.set(count, spanBand(points, sigmaK, rises));
  }
  return spans;
}
