import { fitLog } from '../../../main/heat/calibration/fit-log.ts';
import {
  ATTACHMENT_BIAS_K,
  type Attachment,
  type LoggedPoint,
  logModel,
} from '../../../main/heat/calibration/log-model.ts';
import { evaluate } from '../../../main/heat/evaluate.ts';
import { bandRuns } from '../../../main/heat/uncertainty/band-runs.ts';
import { beliefOf } from '../../../main/heat/uncertainty/calibrated.ts';
import { figureName, figuresOf } from '../../../main/heat/uncertainty/figures.ts';
import { HAND_REPEAT_SIGMA_K, priorBelief } from '../../../main/heat/uncertainty/priors.ts';
import { varianceOf } from '../../../main/heat/uncertainty/sensitivities.ts';
import type { Board } from '../../../shared-types/board.ts';
import type { Plan } from '../../../shared-types/plan.ts';
import type { TagOf } from '../../../shared-types/tags.ts';
import { BAND_90, TERM_IDS, type TermSteps } from '../../../shared-types/uncertainty.ts';
import { normals } from './random.ts';

const ATTACHED: Attachment[] = ['epoxy', 'soldered', 'epoxy', 'taped', 'epoxy'];
const NOISE_K = 0.7;

/** Five thermocouples of a scrap board: a corner of the target, neighbours, the underside. */
export function loggedPlan(plan: Plan): Plan {
  const places = [
    { x: 24, y: 16, side: 'top', refdes: null },
    { x: 30, y: 22, side: 'bottom', refdes: null },
    { x: 44, y: 22, side: 'top', refdes: 'U2' },
    { x: 38, y: 30, side: 'top', refdes: null },
    { x: 12, y: 10, side: 'top', refdes: null },
  ] as const;
  const tags = places.map(
    (place, index): TagOf<'watchPoint'> => ({
      ...{ id: `w${index}`, kind: 'watchPoint', name: `W${index + 1}`, order: null, note: '' },
      ...place,
    }),
  );
  return { ...plan, tags };
}

/** A log made by the 1 mm model with terms, hand, biases and noise drawn from their priors. */
export function drawnLog(board: Board, plan: Plan, seed: number): { truth: TermSteps; points: LoggedPoint[] } {
  const draw = normals(seed);
  const { sigma } = priorBelief(board, plan);
  const truth: TermSteps = Object.fromEntries(TERM_IDS.map((term, index) => [term, sigma[index]! * draw()]));
  const hand = (HAND_REPEAT_SIGMA_K / 0.5) * draw();
  const run = plan.heatRuns[0]!;
  const seconds = run.segments.reduce((sum, segment) => sum + segment.seconds, 0);
  const times = Array.from({ length: Math.floor(seconds / 2) }, (_, index) => (index + 1) * 2);
  const blank = ATTACHED.map(
    (attachment, index): LoggedPoint => ({
      ...{ tagId: `w${index}`, attachment, samples: [], peakC: null },
    }),
  );
  const asked = blank.flatMap((_, point) => times.map((atS) => ({ point, atS, celsius: 0 })));
  const model = logModel(board, plan, run.id, blank, asked, { cellM: 0.001, stepS: 0.5 });
  const said = model({ ...truth, outlet: truth.outlet! + hand });
  if (!said.ok) throw new Error(said.problem.code);
  const points = blank.map((point, index) => {
    const bias = ATTACHMENT_BIAS_K[point.attachment] * draw();
    const samples = times.map((atS, at) => ({
      atS,
      celsius: said.value[index * times.length + at]! + bias + NOISE_K * draw(),
    }));
    return { ...point, samples };
  });
  return { truth, points };
}

type Covered = { covered: boolean; missed: number; band: number };
const coveredBy = (missed: number, band: number): Covered => ({ covered: Math.abs(missed) <= band, missed, band });

/** Whether each 90 % band of one seed's fit covers its truth: the terms, then figures of the next run. */
export function coverage(board: Board, plan: Plan, seed: number): Record<string, Covered> {
  const { truth, points } = drawnLog(board, plan, seed);
  const fit = fitLog(board, plan, plan.heatRuns[0]!.id, points);
  if (!fit.ok) throw new Error(JSON.stringify(fit.problem));
  const found: Record<string, Covered> = {};
  for (const { id, step, sigma } of fit.value.terms) {
    found[id] = coveredBy(step - truth[id]!, BAND_90 * sigma);
  }
  const calibrated: Plan = { ...plan, station: { ...plan.station, calibration: fit.value.calibration } };
  const runs = bandRuns(board, calibrated, beliefOf(board, calibrated));
  const real = evaluate(board, plan, { phase: 'fine', steps: truth });
  const predicted = evaluate(board, calibrated, { phase: 'fine' });
  if (!runs.ok || !real.ok || !predicted.ok) throw new Error('not evaluated');
  const target = plan.heatRuns[0]!;
  const names: [string, string][] = [
    ['target, coldest joint', figureName.target(target.id, 'site-1', 'coldest')],
    ['U2, body', figureName.part('U2', 'body')],
    ['C1, joint', figureName.part('C1', 'joint')],
    ['C9 underside, joint', figureName.part('C9', 'joint')],
    ['E1, skin', figureName.part('E1', 'skin')],
    ['C2, far, joint', figureName.part('C2', 'joint')],
  ];
  const trueFigures = figuresOf(real.value);
  const toldFigures = figuresOf(predicted.value);
  for (const [label, name] of names) {
    const moves = runs.value.sensitivities.get(name)!;
    const bandK = BAND_90 * Math.sqrt(varianceOf(moves, runs.value.belief.correlation));
    found[label] = coveredBy(trueFigures.get(name)! - toldFigures.get(name)!, bandK);
  }
  return found;
}
