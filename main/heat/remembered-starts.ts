import type { TicketRun } from './heat-run.ts';
import type { RunMemory } from './run-memory.ts';
import type { HeatScene, SceneSegment } from './scene.ts';
import type { SharedStarts } from './shared-starts.ts';

/** A place in a run where its numbers are kept: after so many steps, under this key. */
type Stop = { steps: number; key: string };

/** Without gas the nozzle's place acts on nothing. */
const acting = (segment: SceneSegment) =>
  segment.gas ? segment : { ...segment, nozzleXM: 0, nozzleYM: 0, fence: null };

/** Segments before the first that blows. */
function segmentsBeforeGas({ segments }: HeatScene): number {
  const first = segments.findIndex((segment) => segment.gas);
  return first < 0 ? segments.length : first;
}

/**
 * Where a run's numbers are worth keeping: before each segment that blows (a moved site changes nothing until then)
 * and at its end. The key is the whole text of what the numbers come from: the scene but for later segments, grid,
 * step and probes. Before the gas the site's own probe is left out: it is read again from the faces kept.
 * Scenes are plain data of finite numbers made by the same code: equal text means equal numbers.
 */
function stopsOf({ scene, simulation, wishes, places, cellM, stepS }: TicketRun): Stop[] {
  const { segments, bodies, ...rest } = scene;
  // Of 3,000 bodies the text takes its time: it is made once.
  const bodiesText = JSON.stringify(bodies);
  const base = JSON.stringify([cellM, stepS, rest]) + bodiesText;
  // Nothing blows yet: the nozzle and the air that it draws in act on nothing.
  const quietBase = JSON.stringify([cellM, stepS, { ...rest, nozzle: null, entrainedC: rest.roomC }]) + bodiesText;
  const probes = JSON.stringify(wishes);
  const otherProbes = JSON.stringify(wishes.map((wish, place) => (place === places.site ? null : wish)));
  const quiet = segmentsBeforeGas(scene);
  const stops: Stop[] = [];
  for (let end = 1; end <= segments.length; end++) {
    if (end < segments.length && !segments[end]!.gas) continue;
    const until = JSON.stringify(segments.slice(0, end).map(acting));
    const key = end <= quiet ? `${quietBase}${otherProbes}${until}` : `${base}${probes}${until}`;
    stops.push({ steps: simulation.stepsUpTo(end), key });
  }
  return stops;
}

/**
 * Starts each run from the furthest numbers that the memory holds for it, of this evaluation or an earlier one;
 * the results are the same to the last bit.
 */
export function rememberedStarts(runs: readonly TicketRun[], memory: RunMemory): SharedStarts {
  const stops = runs.map(stopsOf);
  return {
    begin(index) {
      const { simulation, scene, places } = runs[index]!;
      const known = stops[index]!.findLast((stop) => memory.has(stop.key));
      const snapshot = known && memory.find(known.key);
      if (snapshot) simulation.restore(snapshot, places.site);
      else simulation.keepFaces(simulation.stepsUpTo(segmentsBeforeGas(scene)), memory.mostBytes / 2);
    },
    origin: () => null,
    stepsToTake(index, wanted) {
      const done = runs[index]!.simulation.stepsDone;
      const next = stops[index]!.find((stop) => stop.steps > done);
      return next ? Math.min(wanted, next.steps - done) : wanted;
    },
    keep(index) {
      const { simulation, scene } = runs[index]!;
      const stop = stops[index]!.find((candidate) => candidate.steps === simulation.stepsDone);
      if (!stop || memory.has(stop.key)) return;
      const snapshot = simulation.snapshot();
      const quiet = simulation.stepsUpTo(segmentsBeforeGas(scene));
      if (stop.steps > quiet || snapshot.faces) memory.keep(stop.key, snapshot);
    },
  };
}
