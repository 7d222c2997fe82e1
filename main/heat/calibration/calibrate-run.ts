import type { Board } from '../../../shared-types/board.ts';
import type { Plan } from '../../../shared-types/plan.ts';
import { type Result, succeed } from '../../../shared-types/problem.ts';
import type { CalibrationAnswer, CalibrationOrder, FitProgress } from '../../../shared-types/study.ts';
import { fitLog, type LogFit } from './fit-log.ts';
import { type LoggedPoint, type LogReading, logModel } from './log-model.ts';

export type CalibrateOptions = { isCancelled?: () => boolean; onProgress?: (share: number, fit?: FitProgress) => void };

/** The curves shown are those of the coarse map. */
const CURVE_GRID = { cellM: 0.002, stepS: 1 };
/** Samples of a bead that its curve shows at most. */
const MOST_SHOWN = 240;
/** Looks between two stretches of steps after which a usual fit is about two thirds through. */
const USUAL_LOOKS = 900;

/**
 * Fits the terms to a logged run and says what the model reads at each bead without and with what was found.
 * How many runs a fit takes is not known before: the share told slows down and never claims the end; with it goes where
 * the fit stands.
 * Problems: those of `fitLog`, 'cancelled' among them.
 */
export function calibrateRun(
  board: Board,
  plan: Plan,
  { runId, logName, points }: CalibrationOrder,
  { isCancelled, onProgress }: CalibrateOptions = {},
): Result<CalibrationAnswer> {
  let looks = 0;
  let latest: FitProgress | undefined;
  const look = () => {
    looks += 1;
    onProgress?.(1 - Math.exp(-looks / USUAL_LOOKS), latest);
    return isCancelled?.() ?? false;
  };
  const logged = points.map(loggedPoint);
  const fit = fitLog(board, plan, runId, logged, {
    ...{ isCancelled: look, logName },
    onRound(progress) {
      latest = progress;
    },
  });
  if (!fit.ok) return fit;
  const shown = shownReadings(logged);
  const model = logModel(board, plan, runId, logged, shown, CURVE_GRID, look);
  const before = model({});
  if (!before.ok) return before;
  const after = model(Object.fromEntries(fit.value.terms.map(({ id, step }) => [id, step])));
  if (!after.ok) return after;
  return succeed({ ...fit.value, ...curvesOf(fit.value, logged, shown, before.value, after.value) });
}

const loggedPoint = ({ tagId, attachment, samples, peakC }: CalibrationOrder['points'][number]): LoggedPoint => ({
  ...{ tagId, attachment, peakC },
  samples: samples ? Array.from(samples.atS, (atS, index) => ({ atS, celsius: samples.celsius[index]! })) : [],
});

function shownReadings(points: readonly LoggedPoint[]): LogReading[] {
  return points.flatMap(({ samples, peakC }, point) => {
    const every = Math.max(1, Math.ceil(samples.length / MOST_SHOWN));
    const shown: LogReading[] = samples
      .filter((_, index) => index % every === 0)
      .map(({ atS, celsius }) => ({ point, atS, celsius }));
    return peakC === null ? shown : [...shown, { point, atS: null, celsius: peakC }];
  });
}

/** The model's readings by bead. After the fit a bead reads what the model says there plus the bias found for it. */
function curvesOf(
  { residuals }: LogFit,
  points: readonly LoggedPoint[],
  shown: readonly LogReading[],
  before: Float64Array,
  after: Float64Array,
): Pick<CalibrationAnswer, 'curves' | 'peaks'> {
  const rowsOf = (point: number, isPeak: boolean) =>
    shown.flatMap((one, row) => (one.point === point && (one.atS === null) === isPeak ? [row] : []));
  const bias = (point: number) => residuals[point]!.biasK;
  return {
    curves: points.flatMap(({ tagId, samples }, point) => {
      if (samples.length === 0) return [];
      const rows = rowsOf(point, false);
      const take = (value: (row: number) => number) => Float32Array.from(rows, value);
      return {
        ...{ tagId, atS: take((row) => shown[row]!.atS!), read: take((row) => shown[row]!.celsius) },
        ...{ before: take((row) => before[row]!), after: take((row) => after[row]! + bias(point)) },
      };
    }),
    peaks: points.flatMap(({ tagId }, point) =>
      rowsOf(point, true).map((row) => ({
        ...{ tagId, read: shown[row]!.celsius, before: before[row]!, after: after[row]! + bias(point) },
      })),
    ),
  };
}
