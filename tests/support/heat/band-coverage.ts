import { evaluate } from '../../../main/heat/evaluate.ts';
import { createRunMemory } from '../../../main/heat/run-memory.ts';
import { type BandRuns, bandRuns } from '../../../main/heat/uncertainty/band-runs.ts';
import { beliefOf } from '../../../main/heat/uncertainty/calibrated.ts';
import { type Figures, figuresOf, isCount } from '../../../main/heat/uncertainty/figures.ts';
import { bandFor } from '../../../main/heat/uncertainty/with-bands.ts';
import type { Board } from '../../../shared-types/board.ts';
import type { Plan } from '../../../shared-types/plan.ts';
import { BAND_90, TERM_IDS, type TermSteps } from '../../../shared-types/uncertainty.ts';
import { normals } from './random.ts';

/** Lower triangle of a correlation matrix, row after row (Cholesky). */
function lowerTriangle(correlation: readonly number[], count: number): number[] {
  const lower = new Array<number>(count * count).fill(0);
  for (let row = 0; row < count; row++) {
    for (let column = 0; column <= row; column++) {
      let sum = correlation[row * count + column]!;
      for (let term = 0; term < column; term++) sum -= lower[row * count + term]! * lower[column * count + term]!;
      lower[row * count + column] =
        row === column ? Math.sqrt(Math.max(0, sum)) : sum / lower[column * count + column]!;
    }
  }
  return lower;
}

/** All terms at once, drawn from what is believed of them, the hand's repeat with them. */
export function drawnTerms({ belief, repeat }: BandRuns, draw: () => number): TermSteps {
  const count = TERM_IDS.length;
  const lower = lowerTriangle(belief.correlation, count);
  const free = TERM_IDS.map(() => draw());
  const steps = TERM_IDS.map((_, row) => {
    let sum = 0;
    for (let term = 0; term <= row; term++) sum += lower[row * count + term]! * free[term]!;
    return sum;
  });
  const outlet = TERM_IDS.indexOf('outlet');
  steps[outlet]! += repeat * draw();
  return Object.fromEntries(TERM_IDS.map((term, index) => [term, steps[index]! * belief.sigma[index]!]));
}

/** What kind of figure a name is of: those of a kind are counted together. */
export function kindOf(name: string, targets: ReadonlySet<string>): string {
  const [sort, who, ...rest] = name.split('/');
  const figure = rest.at(-1) ?? '';
  if (sort === 'part') return `${targets.has(who!) ? 'target part' : 'neighbours'}, ${figure}`;
  if (sort === 'target') return `target, ${figure}`;
  return sort === 'watch' ? 'thermocouples' : 'board at the site';
}

/** One kind of figure over all draws: shares of its figures covered, below and above their bands. */
export type Coverage = {
  figures: number;
  told: number;
  covered: number;
  below: number;
  above: number;
  square: number;
  band: number;
};

const none = (): Coverage => ({ figures: 0, told: 0, covered: 0, below: 0, above: 0, square: 0, band: 0 });

/** A band of less than this says 'certain': such a figure is not counted (K or s). */
const CERTAIN = 0.5;

function count(row: Coverage, missed: number, band: number): void {
  row.told++;
  if (Math.abs(missed) <= band) row.covered++;
  else if (missed < 0) row.below++;
  else row.above++;
  row.square += ((BAND_90 * missed) / band) ** 2;
}

export type CoverageTable = { kinds: Map<string, Coverage>; parts: Map<string, Coverage>; draws: number };

/**
 * How often the bands of a ticket cover what the model says under terms drawn all at once: nothing linear, nothing one by
 * one. On the bands' own 2 mm grid, so that the grid's error is not counted as theirs.
 */
export function bandCoverage(board: Board, plan: Plan, draws: number, firstSeed = 1): CoverageTable {
  const memory = createRunMemory();
  const runs = bandRuns(board, plan, beliefOf(board, plan), { memory });
  if (!runs.ok) throw new Error(JSON.stringify(runs.problem));
  const targets = new Set(plan.sites.map((site) => site.target));
  const base: Figures = figuresOf(runs.value.base);
  const bands = new Map<string, number>();
  for (const name of runs.value.sensitivities.keys()) {
    const band = bandFor(runs.value, name);
    if (band !== null && band >= CERTAIN) bands.set(name, band);
  }
  const kinds = new Map<string, Coverage>();
  const parts = new Map<string, Coverage>();
  const rowOf = (map: Map<string, Coverage>, key: string) => map.get(key) ?? map.set(key, none()).get(key)!;
  for (const [name, band] of bands) {
    const row = rowOf(kinds, kindOf(name, targets));
    row.figures++;
    row.band += band;
  }
  for (let seed = firstSeed; seed < firstSeed + draws; seed++) {
    const steps = drawnTerms(runs.value, normals(seed));
    const real = evaluate(board, plan, { phase: 'coarse', steps, memory });
    if (!real.ok) throw new Error(JSON.stringify(real.problem));
    const figures = figuresOf(real.value);
    for (const [name, band] of bands) {
      const truth = figures.get(name);
      if (truth === undefined) continue;
      const missed = truth - base.get(name)!;
      count(rowOf(kinds, kindOf(name, targets)), missed, band);
      if (!isCount(name)) count(rowOf(parts, name), missed, band);
    }
  }
  return { kinds, parts, draws };
}
