import { piecesUntil, takePieces } from './body-series.ts';
import type { HeatState } from './heat-state.ts';
import type { Moment } from './moment.ts';
import type { BodyPeaks } from './part-peaks.ts';
import type { Probes } from './probes.ts';
import type { HeatScene } from './scene.ts';
import type { Tracking } from './tracking.ts';

/** The numbers of a run after some of its steps, for another run that begins in the same way. */
export type Snapshot = {
  stepsDone: number;
  sourceC: number;
  arrays: (Float64Array | Float32Array)[];
  /** The bodies' series until then; pieces of it are shared with the run. */
  series: Float32Array[];
  /** Steps x cells: the upper faces after every step, for a probe that another run has elsewhere; null: not kept. */
  faces: Float64Array | null;
  /** What was reckoned from these numbers if they are those of a run's end. */
  ending: Ending;
};

/**
 * What the bodies' results are made of once a run has ended, in the order of the entries; null: not reckoned yet. It follows from
 * the numbers alone, so runs that end with the same numbers share it.
 */
export type Ending = { peaks: BodyPeaks[] | null; rises: Float64Array | null };

/** What of a run changes as it goes on. */
export type RunNumbers = { state: HeatState; tracking: Tracking; probes: Probes; moment: Moment; ending: Ending };

/** All arrays that a step writes and a later one (or the results) reads; series only as far as they are written. */
function livingArrays({ state, tracking, probes }: RunNumbers, rows: number): (Float64Array | Float32Array)[] {
  const { body, overlays } = state;
  return [
    state.temperature,
    state.before,
    state.peak,
    body.temperature,
    body.before,
    body.peak,
    body.peakSkin,
    body.shadow,
    body.shadowPeak,
    body.shadowPeakSkin,
    overlays.temperature,
    overlays.water,
    overlays.driedAtS,
    overlays.boiled,
    overlays.clock,
    tracking.times.subarray(0, rows),
    tracking.sourceC.subarray(0, rows),
    tracking.meanPeak,
    tracking.meanPeakS,
    tracking.energy,
    tracking.energyAtPeak,
    probes.low.subarray(0, rows * probes.count),
    probes.high.subarray(0, rows * probes.count),
  ];
}

/** Copies a run's numbers; `stepsDone` steps have been taken. `faces` is handed on as it is: nobody writes it again. */
export function takeSnapshot(numbers: RunNumbers, stepsDone: number, faces: Float64Array | null): Snapshot {
  const arrays = livingArrays(numbers, stepsDone).map((array) => array.slice());
  const series = piecesUntil(numbers.tracking.series, stepsDone);
  const isEnd = stepsDone === numbers.tracking.times.length;
  const ending = isEnd ? numbers.ending : { peaks: null, rises: null };
  return { stepsDone, sourceC: numbers.moment.sourceC, arrays, series, faces, ending };
}

/**
 * Puts a snapshot into a run of the same scene and probes that has not begun yet.
 * @param movedProbe a probe of the upper faces that may lie elsewhere than in the snapshot's run, where faces are kept
 */
export function restoreSnapshot(numbers: RunNumbers, snapshot: Snapshot, movedProbe: number): void {
  livingArrays(numbers, snapshot.stepsDone).forEach((array, index) => {
    array.set(snapshot.arrays[index]!);
  });
  takePieces(numbers.tracking.series, snapshot.series);
  const { faces, stepsDone } = snapshot;
  if (faces && movedProbe >= 0) {
    const cells = faces.length / stepsDone;
    for (let row = 0; row < stepsDone; row++) {
      numbers.probes.readOne(movedProbe, row, faces.subarray(row * cells, row * cells + cells));
    }
  }
  numbers.tracking.rows = stepsDone;
  numbers.moment.sourceC = snapshot.sourceC;
  if (stepsDone === numbers.tracking.times.length) numbers.ending = snapshot.ending;
}

/**
 * How many segments two scenes have in common from the start, everything else being the same; 0: they differ.
 * Scenes are plain data made by the same code: equal text means equal scenes.
 */
export function commonSegments(first: HeatScene, second: HeatScene): number {
  const rest = (scene: HeatScene) => JSON.stringify({ ...scene, segments: [] });
  if (rest(first) !== rest(second)) return 0;
  const text = (scene: HeatScene, index: number) => JSON.stringify(scene.segments[index]);
  let common = 0;
  const most = Math.min(first.segments.length, second.segments.length);
  while (common < most && text(first, common) === text(second, common)) common++;
  return common;
}
