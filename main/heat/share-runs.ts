import type { Board } from '../../shared-types/board.ts';
import type { HeatRun, Plan } from '../../shared-types/plan.ts';
import type { Result } from '../../shared-types/problem.ts';
import type { TermSteps } from '../../shared-types/uncertainty.ts';
import type { FinishedRun } from './finished-run.ts';

/** Heat runs of a ticket, by their places in the plan, that another thread is to make. */
export type SharedTask = {
  board: Board;
  plan: Plan;
  phase: 'coarse' | 'fine';
  steps: TermSteps | undefined;
  places: number[];
};

/** Begins a task elsewhere. What it returns waits for the runs; null: they went lost and are to be made here. */
export type ShareRuns = (task: SharedTask) => () => Result<FinishedRun[]> | null;

/** What is stepped before the gas is often remembered: it counts for so little of its time. */
const BEFORE_GAS_SHARE = 0.1;

function costOf({ segments }: HeatRun): number {
  const blows = segments.findIndex((segment) => segment.gas);
  const from = blows < 0 ? segments.length : blows;
  return segments.reduce((sum, { seconds }, index) => sum + seconds * (index < from ? BEFORE_GAS_SHARE : 1), 0);
}

/**
 * The heat runs to give away so that two threads end at about the same time: the longest first, each to the thread that
 * has less. The same plan is always cut alike, so that each thread finds what it remembers.
 */
export function placesToShare({ heatRuns }: Plan): number[] {
  const costs = heatRuns.map((run, place) => ({ place, cost: costOf(run) })).sort((a, b) => b.cost - a.cost);
  const away: number[] = [];
  let here = 0;
  let there = 0;
  for (const { place, cost } of costs) {
    if (here <= there) here += cost;
    else {
      there += cost;
      away.push(place);
    }
  }
  return away.sort((a, b) => a - b);
}
