import { fitLog, handInOutlet } from '../../../main/heat/calibration/fit-log.ts';
import { ATTACHMENT_BIAS_K, LOG_GRIDS, type LoggedPoint, logModel } from '../../../main/heat/calibration/log-model.ts';
import { evaluate } from '../../../main/heat/evaluate.ts';
import { bandRuns } from '../../../main/heat/uncertainty/band-runs.ts';
import { beliefOf } from '../../../main/heat/uncertainty/calibrated.ts';
import { figuresOf } from '../../../main/heat/uncertainty/figures.ts';
import { priorBelief } from '../../../main/heat/uncertainty/priors.ts';
import { bandOf } from '../../../main/heat/uncertainty/sensitivities.ts';
import type { Plan } from '../../../shared-types/plan.ts';
import { BAND_90, TERM_IDS, type TermSteps } from '../../../shared-types/uncertainty.ts';
import type { CalibrationCase } from './calibration-cases.ts';
import { normals } from './random.ts';

/** Noise of logger and bead, one standard deviation, K. */
const NOISE_K = 0.7;

/** A log made by the 1 mm model with terms, hand, biases and noise drawn from their priors. */
export function drawnLog(
  { board, plan, attached }: CalibrationCase,
  seed: number,
): { truth: TermSteps; points: LoggedPoint[] } {
  const draw = normals(seed);
  const { sigma } = priorBelief(board, plan);
  const truth: TermSteps = Object.fromEntries(TERM_IDS.map((term, index) => [term, sigma[index]! * draw()]));
  const hand = handInOutlet(plan) * draw();
  const run = plan.heatRuns[0]!;
  const seconds = run.segments.reduce((sum, segment) => sum + segment.seconds, 0);
  const times = Array.from({ length: Math.floor(seconds / 2) }, (_, index) => (index + 1) * 2);
  const blank = attached.map(
    (attachment, index): LoggedPoint => ({
      ...{ tagId: `w${index}`, attachment, samples: [], peakC: null },
    }),
  );
  const asked = blank.flatMap((_, point) => times.map((atS) => ({ point, atS, celsius: 0 })));
  const model = logModel(board, plan, run.id, blank, asked, LOG_GRIDS.fine);
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

/** One figure of one seed: what the fit missed it by, and the half width of its 90 % band. */
export type Miss = { missed: number; band: number };

/** What one seed's fit missed its truth by: the terms, then figures of the next run. */
export function missesOf(given: CalibrationCase, seed: number): Record<string, Miss> {
  const { board, plan, figures } = given;
  const { truth, points } = drawnLog(given, seed);
  const fit = fitLog(board, plan, plan.heatRuns[0]!.id, points);
  if (!fit.ok) throw new Error(JSON.stringify(fit.problem));
  const found: Record<string, Miss> = {};
  for (const { id, step, sigma } of fit.value.terms) found[id] = { missed: step - truth[id]!, band: BAND_90 * sigma };
  const calibrated: Plan = { ...plan, station: { ...plan.station, calibration: fit.value.calibration } };
  const runs = bandRuns(board, calibrated, beliefOf(board, calibrated));
  const real = evaluate(board, plan, { phase: 'fine', steps: truth });
  const predicted = evaluate(board, calibrated, { phase: 'fine' });
  if (!runs.ok || !real.ok || !predicted.ok) throw new Error('not evaluated');
  const trueFigures = figuresOf(real.value);
  const toldFigures = figuresOf(predicted.value);
  for (const [label, name] of figures) {
    const band = bandOf(runs.value.sensitivities.get(name)!, runs.value.belief, 0);
    found[label] = { missed: trueFigures.get(name)! - toldFigures.get(name)!, band };
  }
  return found;
}

/** How often bands covered, and the mean square of what was missed in the band's standard deviations: 90 % and 1 are right. */
export type Honesty = { seeds: number; covered: number; meanBand: number; meanSquare: number };

/** The misses of many seeds, by figure. */
export function honestyOf(seeds: readonly Record<string, Miss>[]): Map<string, Honesty> {
  const all = new Map<string, Honesty>();
  for (const one of seeds) {
    for (const [name, { missed, band }] of Object.entries(one)) {
      const row = all.get(name) ?? { seeds: 0, covered: 0, meanBand: 0, meanSquare: 0 };
      row.seeds++;
      if (Math.abs(missed) <= band) row.covered++;
      row.meanBand += (band - row.meanBand) / row.seeds;
      row.meanSquare += (((BAND_90 * missed) / band) ** 2 - row.meanSquare) / row.seeds;
      all.set(name, row);
    }
  }
  return all;
}
