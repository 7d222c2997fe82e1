import type { TicketRun } from './heat-run.ts';
import { commonSegments, type Snapshot } from './snapshot.ts';

/**
 * Heat runs of one ticket often begin alike: the same board, the same preheat. A later run then starts from the
 * numbers that an earlier one had at the end of their common segments; the results are the same to the last bit.
 */
export type SharedStarts = {
  /** Call before a run's first step. */
  begin: (index: number) => void;
  /** The run of this evaluation whose numbers a begun run started from; null: none. */
  origin: (index: number) => number | null;
  /** Steps to take at once: `wanted`, or fewer where a later run wants the numbers in between. */
  stepsToTake: (index: number, wanted: number) => number;
  /** Call after each advance: keeps the numbers where a later run wants them. */
  keep: (index: number) => void;
};

type Origin = { run: number; steps: number };

/** The earlier run that shares most steps with this one; null where none does. */
function originOf(runs: readonly TicketRun[], index: number): Origin | null {
  const { scene, wishes } = runs[index]!;
  const own = JSON.stringify(wishes);
  let best: Origin | null = null;
  for (let earlier = 0; earlier < index; earlier++) {
    const candidate = runs[earlier]!;
    if (JSON.stringify(candidate.wishes) !== own) continue;
    const steps = candidate.simulation.stepsUpTo(commonSegments(candidate.scene, scene));
    if (steps > (best?.steps ?? 0)) best = { run: earlier, steps };
  }
  return best;
}

/** Looks which runs begin alike; the runs must be stepped in their order. */
export function sharedStarts(runs: readonly TicketRun[]): SharedStarts {
  const origins = runs.map((_, index) => originOf(runs, index));
  const kept = new Map<string, Snapshot>();
  const keyOf = (run: number, steps: number) => `${run} ${steps}`;
  const wantedOf = (run: number) => origins.flatMap((origin) => (origin?.run === run ? [origin.steps] : []));
  return {
    begin(index) {
      const origin = origins[index];
      const snapshot = origin && kept.get(keyOf(origin.run, origin.steps));
      if (snapshot) runs[index]!.simulation.restore(snapshot);
    },
    origin: (index) => (runs[index]!.simulation.stepsDone > 0 ? (origins[index]?.run ?? null) : null),
    stepsToTake(index, wanted) {
      const done = runs[index]!.simulation.stepsDone;
      const stops = wantedOf(index).filter((steps) => steps > done);
      return Math.min(wanted, ...stops.map((steps) => steps - done));
    },
    keep(index) {
      const { simulation } = runs[index]!;
      if (!wantedOf(index).includes(simulation.stepsDone)) return;
      const key = keyOf(index, simulation.stepsDone);
      if (!kept.has(key)) kept.set(key, simulation.snapshot());
    },
  };
}
