import type { CurveSet, FaceFields, HeatMoment } from '../../shared-types/evaluation.ts';
import { fail, type Result, succeed } from '../../shared-types/problem.ts';
import { probeSeries, type TicketRun } from './heat-run.ts';
import { type FrameGrid, type FramePlan, planFrames, type RunFrames } from './playback-frames.ts';
import { evenRows, type Series, sampled } from './series.ts';
import { bodySeries, SERIES_CHANNELS, type SeriesChannel } from './tracking.ts';

/** Seconds between the values of a curve that is handed out. */
const CURVE_STEP_S = 1;

/** Room for the frames of one evaluation (heat-model.md, section 6). */
export const MOST_FRAME_BYTES = 64e6;

type RunRecord = {
  frames: RunFrames;
  topIsUpper: boolean;
  startC: number;
  bodyOf: ReadonlyMap<string, (channel: SeriesChannel) => Series>;
  watch: { tagId: string; name: string; series: Series }[];
  source: Series;
  site: Series | null;
};

/** What one evaluation leaves for those who want to see it go by: maps of moments, curves of parts. */
export type Playback = {
  readonly revision: number;
  readonly grid: FrameGrid;
  /** Seconds between frames, and the bytes they take. */
  readonly everyS: number;
  readonly frameBytes: number;
  readonly runs: ReadonlyMap<string, RunRecord>;
};

/** Keeps frames while runs are stepped. */
export type PlaybackRecorder = {
  /** Call after a run's start: `origin` is the run whose numbers it began from, null for none. */
  begin: (index: number, origin: number | null) => void;
  /** Steps to take at once: no further than the next frame. */
  stepsToTake: (index: number, wanted: number) => number;
  /** Call after each advance. */
  keep: (index: number) => void;
  finish: (revision: number) => Playback;
};

export function recordPlayback(runs: readonly TicketRun[], mostBytes = MOST_FRAME_BYTES): PlaybackRecorder {
  const plan = planFrames(runs, mostBytes);
  return {
    begin: (index, origin) => plan.begin(index, origin),
    stepsToTake(index, wanted) {
      const { simulation } = runs[index]!;
      const due = simulation.stepsUntil(plan.nextS(index)) - simulation.stepsDone;
      return Math.max(1, Math.min(wanted, due));
    },
    keep(index) {
      const { simulation } = runs[index]!;
      const { times, rows } = simulation.tracking;
      const atS = times[rows - 1]!;
      const last = simulation.stepsDone >= simulation.stepCount;
      if (last || atS >= plan.nextS(index) - 1e-9) plan.keep(index, atS);
    },
    finish: (revision) => ({
      revision,
      grid: plan.grid,
      everyS: plan.everyS,
      frameBytes: plan.bytes(),
      runs: new Map(runs.map((run, index) => [run.presence.run.id, recordOf(run, plan, index)])),
    }),
  };
}

function recordOf(run: TicketRun, plan: FramePlan, index: number): RunRecord {
  const { tracking, probes, state } = run.simulation;
  const { bodyOfScene } = state.entries;
  const { times, rows, series, sourceC } = tracking;
  // Not the whole tracking: the rest of it lies in the run's memory, which is given to later runs.
  const lasting = { times, rows, series };
  const bodyOf = new Map<string, (channel: SeriesChannel) => Series>();
  bodyOfScene.forEach((sceneIndex, order) => {
    const part = run.presence.parts[sceneIndex];
    if (part) bodyOf.set(part.refdes, (channel) => bodySeries(lasting, order, channel));
  });
  const valid = (place: number) => place >= 0 && probes.valid[place];
  return {
    frames: plan.frames[index]!,
    topIsUpper: run.scene.workedSide === 'top',
    startC: run.scene.roomC,
    bodyOf,
    watch: run.watchPoints.flatMap((tag, at) => {
      const place = run.places.watch[at]!;
      return valid(place) ? { tagId: tag.id, name: tag.name, series: probeSeries(run, place, 'high') } : [];
    }),
    source: { times, rows, at: evenRows(sourceC) },
    site: valid(run.places.site) ? probeSeries(run, run.places.site, 'high') : null,
  };
}

const stale = () => fail('stale-evaluation');

/** The map of one moment of a run: frames before and after, blended by time. Times beyond the run are held at its ends. */
export function momentOf(playback: Playback | null, revision: number, runId: string, atS: number): Result<HeatMoment> {
  const run = playback?.revision === revision && playback.runs.get(runId);
  if (!playback || !run) return stale();
  const { times, faces } = run.frames;
  let after = times.findIndex((time) => time >= atS);
  if (after < 0) after = times.length - 1;
  const before = Math.max(0, after - 1);
  const span = times[after]! - times[before]!;
  const share = span > 0 ? Math.min(1, Math.max(0, (atS - times[before]!) / span)) : 1;
  const { columns, rows, cellMm, originX, originY } = playback.grid;
  const cells = columns * rows;
  const blended = (from: number) => {
    const field = new Float32Array(cells);
    const [early, late] = [faces[before]!, faces[after]!];
    for (let cell = 0; cell < cells; cell++) {
      field[cell] = early[from + cell]! + share * (late[from + cell]! - early[from + cell]!);
    }
    return field;
  };
  const [upper, lower] = [blended(0), blended(cells)];
  const fields: FaceFields = run.topIsUpper ? { top: upper, bottom: lower } : { top: lower, bottom: upper };
  const grid = { columns, rows, cellMm, originX, originY, grownFromMm: null };
  return succeed({ atS: Math.min(times.at(-1)!, Math.max(0, atS)), grid, ...fields });
}

/** Curves of some parts and watch points of a run; what was not on the board in it is left out. */
export function curvesOf(
  playback: Playback | null,
  revision: number,
  runId: string,
  refdes: readonly string[],
  tagIds: readonly string[],
): Result<CurveSet> {
  const run = playback?.revision === revision && playback.runs.get(runId);
  if (!run) return stale();
  const read = (series: Series) => sampled(series, CURVE_STEP_S, run.startC);
  return succeed({
    stepS: CURVE_STEP_S,
    parts: refdes.flatMap((name) => {
      const seriesOf = run.bodyOf.get(name);
      if (!seriesOf) return [];
      const [body, skin, jointMax, jointMin] = SERIES_CHANNELS.map((channel) => read(seriesOf(channel)));
      return { refdes: name, body: body!, skin: skin!, jointMax: jointMax!, jointMin: jointMin! };
    }),
    points: run.watch.flatMap(({ tagId, name, series }) =>
      tagIds.includes(tagId) ? { tagId, name, celsius: read(series) } : [],
    ),
    preheater: read(run.source),
    site: run.site && read(run.site),
  });
}
