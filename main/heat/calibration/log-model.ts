import type { Board } from '../../../shared-types/board.ts';
import type { Plan } from '../../../shared-types/plan.ts';
import { fail, type Result, succeed } from '../../../shared-types/problem.ts';
import type { TermSteps } from '../../../shared-types/uncertainty.ts';
import { prepareRun, probeSeries } from '../heat-run.ts';
import { presences } from '../presence.ts';
import { peakOf, valueAt } from '../series.ts';
import type { FootprintCache } from '../simulation.ts';

/** How a bead was fastened: its reading's bias, one standard deviation, K (heat-model.md, section 8; assumption). */
export const ATTACHMENT_BIAS_K = { soldered: 2, epoxy: 4, taped: 10 } as const;
export type Attachment = keyof typeof ATTACHMENT_BIAS_K;

/** A logged watch point: samples in s from the run's start and C; `peakC` alone where only the peak was written down. */
export type LoggedPoint = {
  tagId: string;
  attachment: Attachment;
  samples: readonly { atS: number; celsius: number }[];
  peakC: number | null;
};

/** Grids and steps of the two phases (heat-model.md, sections 2 and 6); `even`: the fine grid in whole steps. */
export const LOG_GRIDS = {
  coarse: { cellM: 0.002, stepS: 1 },
  fine: { cellM: 0.001, stepS: 0.5 },
  even: { cellM: 0.001, stepS: 1 },
} as const;

/** One reading that the model is held against. */
export type LogReading = { point: number; atS: number | null; celsius: number };

/** Samples of a point that are used at most: more of one bead tell little more, its bias stays the same. */
const MOST_SAMPLES = 24;

/** The readings of a log: samples spread evenly over its time, and typed peaks. */
export function readingsOf(points: readonly LoggedPoint[]): LogReading[] {
  return points.flatMap(({ samples, peakC }, point) => {
    const every = Math.max(1, Math.ceil(samples.length / MOST_SAMPLES));
    const spread = samples.filter((_, index) => index % every === 0);
    const all: LogReading[] = spread.map(({ atS, celsius }) => ({ point, atS, celsius }));
    return peakC === null ? all : [...all, { point, atS: null, celsius: peakC }];
  });
}

/** What the model says for the readings of a log; problems: no-heat-run, invalid-field, cancelled. */
export type LogModel = (steps: TermSteps) => Result<Float64Array>;

/**
 * The model of one logged heat run. The board is as in the plan's run; the station's own calibration is left out.
 * @param isCancelled asked between steps
 */
export function logModel(
  board: Board,
  plan: Plan,
  runId: string,
  points: readonly LoggedPoint[],
  readings: readonly LogReading[],
  { cellM, stepS }: { cellM: number; stepS: number },
  isCancelled: () => boolean = () => false,
): LogModel {
  const bare: Plan = { ...plan, station: { ...plan.station, calibration: null } };
  let footprints: FootprintCache = new Map();
  let dilution = 0;
  return (steps) => {
    const presence = presences(board, bare).find(({ run }) => run.id === runId);
    if (!presence) return fail('no-heat-run', { where: runId });
    if ((steps.dilution ?? 0) !== dilution) footprints = new Map();
    dilution = steps.dilution ?? 0;
    const prepared = prepareRun(board, bare, presence, cellM, stepS, footprints, steps);
    if (!prepared.ok) return prepared;
    const run = prepared.value;
    const places = points.map(({ tagId }) => {
      const index = run.watchPoints.findIndex((tag) => tag.id === tagId);
      return index < 0 ? -1 : run.places.watch[index]!;
    });
    const lost = points.find((_, index) => places[index]! < 0 || !run.simulation.probes.valid[places[index]!]);
    if (lost) {
      const detail = { reason: 'is no watch point on the board', todo: 'Assign the column to one that is.' };
      return fail('invalid-field', { where: lost.tagId, detail });
    }
    while (!run.simulation.advance(STEPS_A_LOOK)) if (isCancelled()) return fail('cancelled');
    const { roomC } = run.scene;
    const said = readings.map(({ point, atS }) => {
      const series = probeSeries(run, places[point]!, 'high');
      return atS === null ? peakOf(series, roomC).celsius : valueAt(series, atS, roomC);
    });
    run.simulation.release();
    return succeed(Float64Array.from(said));
  };
}

const STEPS_A_LOOK = 16;
