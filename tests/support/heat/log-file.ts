import { type LoggedPoint, logModel } from '../../../main/heat/calibration/log-model.ts';
import type { Board } from '../../../shared-types/board.ts';
import type { Plan } from '../../../shared-types/plan.ts';
import type { CalibrationOrder } from '../../../shared-types/study.ts';
import type { TagOf } from '../../../shared-types/tags.ts';
import type { TermSteps } from '../../../shared-types/uncertainty.ts';
import { smallBoard, smallPlan } from '../../unit/main/heat/support.ts';
import { normals } from './random.ts';

/** What the station of the log really does: gas and preheater heat better than the model takes, the board conducts less. */
const TRUTH: TermSteps = { nozzle: 0.3, dilution: 0.1, preheater: 0.12, inPlane: -0.35, idle: -0.2 };
/** What each bead reads off, K. */
const BIAS_K = [2, -1, 3, -6, 1];
const NOISE_K = 0.7;
/** The run begins at this second of the log. */
export const LOG_BEGINS_S = 30;

export const loggedBoard: Board = smallBoard();
/** Five thermocouples of a scrap board: a corner of the target, neighbours, the underside. */
export const loggedPlan: Plan = {
  ...smallPlan(loggedBoard),
  tags: (
    [
      { x: 24, y: 16, side: 'top', refdes: null },
      { x: 30, y: 22, side: 'bottom', refdes: null },
      { x: 44, y: 22, side: 'top', refdes: 'U2' },
      { x: 38, y: 30, side: 'top', refdes: null },
      { x: 12, y: 10, side: 'top', refdes: null },
    ] as const
  ).map(
    (place, index): TagOf<'watchPoint'> => ({
      ...{ id: `w${index}`, kind: 'watchPoint', name: `W${index + 1}`, order: null, note: '' },
      ...place,
    }),
  ),
};
const RUN = loggedPlan.heatRuns[0]!;

/** What the beads read, every two seconds from the run's start, made on the fine grid. */
function loggedPoints(): LoggedPoint[] {
  const draw = normals(3);
  const seconds = RUN.segments.reduce((sum, segment) => sum + segment.seconds, 0);
  const times = Array.from({ length: Math.floor(seconds / 2) }, (_, index) => (index + 1) * 2);
  const blank = BIAS_K.map(
    (_, index): LoggedPoint => ({ tagId: `w${index}`, attachment: 'epoxy', samples: [], peakC: null }),
  );
  const asked = blank.flatMap((_, point) => times.map((atS) => ({ point, atS, celsius: 0 })));
  const said = logModel(loggedBoard, loggedPlan, RUN.id, blank, asked, { cellM: 0.001, stepS: 0.5 })(TRUTH);
  if (!said.ok) throw new Error(said.problem.code);
  return blank.map((point, index) => ({
    ...point,
    samples: times.map((atS, at) => ({
      atS,
      celsius: said.value[index * times.length + at]! + BIAS_K[index]! + NOISE_K * draw(),
    })),
  }));
}

/** The log as an order to fit it. */
export function loggedOrder(): CalibrationOrder {
  return {
    ...{ runId: RUN.id, logName: 'scrap' },
    points: loggedPoints().map(({ tagId, attachment, samples }) => ({
      ...{ tagId, attachment, peakC: null },
      samples: {
        atS: Float32Array.from(samples, ({ atS }) => atS),
        celsius: Float32Array.from(samples, ({ celsius }) => celsius),
      },
    })),
  };
}

/** A log as a logger writes it: semicolons, decimal comma, Fahrenheit in one column, an open bead now and then. */
export function writtenLog(points: readonly LoggedPoint[]): string {
  const comma = (value: number) => value.toFixed(1).replace('.', ',');
  const rows = points[0]!.samples.map(({ atS }, row) => {
    const cells = points.map(({ samples }, point) => {
      const { celsius } = samples[row]!;
      if (row % 17 === point) return '---';
      return comma(point === 2 ? celsius * 1.8 + 32 : celsius);
    });
    return [comma(atS + LOG_BEGINS_S), ...cells].join(';');
  });
  return ['Logger', 'Time (s);TC 1;TC 2;TC 3 (°F);TC 4;TC 5', '0,0;25;25;77;25;25', ...rows].join('\n');
}

/** The log of the logged board as a file. */
export const logText = (): string => writtenLog(loggedPoints());
