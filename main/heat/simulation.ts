import type { HeatGrid } from './grid.ts';
import type { HeatState } from './heat-state.ts';
import { createState } from './heat-state.ts';
import { writeScript } from './kernels/kernel-script.ts';
import { initialMoment, setMoment } from './moment.ts';
import { type Footprint, nozzleFootprint } from './nozzle.ts';
import { createProbes, type Probes, type ProbeWish } from './probes.ts';
import type { HeatScene, SceneSegment } from './scene.ts';
import { type Ending, type RunNumbers, restoreSnapshot, type Snapshot, takeSnapshot } from './snapshot.ts';
import { planSteps, stepsUntil } from './step-plan.ts';
import { createStepper } from './stepping.ts';
import { createTracker, createTracking, type Tracking } from './tracking.ts';

/** Footprints by nozzle position. */
export type FootprintCache = Map<string, Footprint>;

/** One heat run under way: the caller decides how many steps to take before looking up again. */
export type Simulation = {
  readonly stepCount: number;
  readonly stepsDone: number;
  /** Takes up to `steps` sub-steps, none once `stop` says so; returns true when the run is over. */
  advance: (steps: number, stop?: () => boolean) => boolean;
  /** Number of sub-steps up to the end of this many segments. */
  stepsUpTo: (segments: number) => number;
  /** Number of sub-steps up to the first that ends at this time or later. */
  stepsUntil: (seconds: number) => number;
  snapshot: () => Snapshot;
  /** Keeps the upper faces after each of the first steps for a snapshot, if they take no more than these bytes. */
  keepFaces: (steps: number, mostBytes: number) => void;
  /**
   * Takes over the steps of a run that began in the same way; nothing may have been stepped yet. A probe of the upper
   * faces may have moved if the snapshot holds faces: it is named.
   */
  restore: (snapshot: Snapshot, movedProbe?: number) => void;
  /** Of a run that is over: what was reckoned from its end, maybe by a run that ended alike. */
  readonly ending: Ending;
  /** Gives its memory to later runs: nothing but series and probes may be read, and nothing stepped, after it. */
  release: () => void;
  state: HeatState;
  tracking: Tracking;
  probes: Probes;
};

/** The nozzle's footprint in a segment, remembered from an earlier one or made now. */
function footprintOf(
  { nozzle }: HeatScene,
  { nozzleXM: xM, nozzleYM: yM, fence, gas }: SceneSegment,
  grid: HeatGrid,
  footprints: FootprintCache,
): Footprint | null {
  if (!gas || !nozzle) return null;
  const key = `${xM},${yM}${fence ? JSON.stringify(fence) : ''}`;
  const known = footprints.get(key) ?? nozzleFootprint(nozzle, [xM, yM], grid, fence ?? null);
  // Put in anew: the order of the keys says which was used last.
  footprints.delete(key);
  footprints.set(key, known);
  return known;
}

/**
 * Prepares a heat run on a grid of `cellM` with steps of at most `stepS`.
 * The run starts with everything at room temperature.
 * @param wishes places whose temperature is kept for every sub-step
 * @param footprints may be shared by runs of one board, nozzle and cell
 * @param plain true: stepped in JavaScript, whatever there is; the numbers are the same to the last bit
 */
export function createSimulation(
  scene: HeatScene,
  cellM: number,
  stepS: number,
  wishes: readonly ProbeWish[] = [],
  footprints: FootprintCache = new Map(),
  plain = false,
): Simulation {
  const steps = planSteps(scene, stepS);
  const state = createState(scene, cellM, steps.length, plain);
  const stepper = createStepper(state);
  const script = writeScript(scene, state, steps);
  const tracking = createTracking(state, steps);
  const track = createTracker(state, tracking);
  const probes = createProbes(state, wishes, steps.length);
  const moment = initialMoment(scene);
  const numbers: RunNumbers = { state, tracking, probes, moment, ending: { peaks: null, rises: null } };
  let done = 0;
  let released = false;
  const cells = state.grid.cellCount;
  const upperFaces = state.temperature.subarray(0, cells);
  let faces: Float64Array | null = null;

  function takeStep(): void {
    if (released) throw new Error('the memory of this heat run was given back');
    const sub = steps[done]!;
    const segment = scene.segments[sub.segment]!;
    if (sub.fresh) moment.footprint = footprintOf(scene, segment, state.grid, footprints);
    if (script) {
      script.begin(done);
      stepper.stepBegun(moment, sub);
    } else {
      setMoment(moment, scene, state, segment, sub.middleS, sub.dt);
      stepper.step(moment, sub);
    }
    track(moment, sub);
    probes.read(done);
    if (faces && done * cells < faces.length) faces.set(upperFaces, done * cells);
    done++;
  }

  return {
    stepCount: steps.length,
    get stepsDone() {
      return done;
    },
    advance(count, stop) {
      for (let step = 0; step < count && done < steps.length && !stop?.(); step++) takeStep();
      return done >= steps.length;
    },
    stepsUpTo: (segments) => steps.filter((step) => step.segment < segments).length,
    stepsUntil: (seconds) => stepsUntil(steps, seconds),
    snapshot() {
      if (script) moment.sourceC = script.sourceC();
      return takeSnapshot(numbers, done, faces && faces.length === done * cells ? faces : null);
    },
    keepFaces(count, mostBytes) {
      const numbersKept = count * cells;
      faces = numbersKept > 0 && numbersKept * 8 <= mostBytes ? new Float64Array(numbersKept) : null;
    },
    restore(snapshot, movedProbe = -1) {
      restoreSnapshot(numbers, snapshot, movedProbe);
      script?.setSourceC(moment.sourceC);
      done = snapshot.stepsDone;
    },
    get ending() {
      return numbers.ending;
    },
    release() {
      released = true;
      state.room.release();
    },
    state,
    tracking,
    probes,
  };
}
