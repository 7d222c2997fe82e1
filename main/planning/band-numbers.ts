import type { Board } from '../../shared-types/board.ts';
import type { Assessment, Evaluation, RunNumbers } from '../../shared-types/evaluation.ts';
import type { Plan } from '../../shared-types/plan.ts';
import type { Result } from '../../shared-types/problem.ts';
import { succeed } from '../../shared-types/problem.ts';
import type { ThermocouplePlace } from '../../shared-types/uncertainty.ts';
import { type BandOptions, type BandRuns, bandRuns } from '../heat/uncertainty/band-runs.ts';
import { beliefOf } from '../heat/uncertainty/calibrated.ts';
import { figureName } from '../heat/uncertainty/figures.ts';
import { bandFor, withBands } from '../heat/uncertainty/with-bands.ts';
import { actionsFor } from './actions.ts';
import { assess } from './assess.ts';
import { planningContext } from './context.ts';
import { withoutOrdinaryDoubt } from './ordinary.ts';
import { runNumbersFor } from './run-numbers.ts';
import { candidatesOf, thermocouplePlaces, withCandidates } from './thermocouples.ts';

/** Numbers to act on that get a band, with the field that holds it. */
const BANDED = {
  startGasAtC: 'startGasBandK',
  moltenAtS: 'moltenBandS',
  abortAtC: 'abortBandK',
  secondsToSpare: 'spareBandS',
} as const;
type Banded = keyof typeof BANDED;
const FIGURES = Object.keys(BANDED) as Banded[];

const nameOf = (numbers: RunNumbers, figure: Banded): string =>
  `numbers/${numbers.runId}/${numbers.siteId}/${figure}/${figure.endsWith('C') ? 'celsius' : 'seconds'}`;

/** Numbers to act on of each evaluation, under the advice of the first: a band is about figures, not about advice. */
function numbersTeller(board: Board, plan: Plan) {
  let advice: ReturnType<typeof actionsFor> | null = null;
  return (evaluation: Evaluation): Map<string, number> => {
    const context = planningContext(board, plan, evaluation);
    advice ??= actionsFor(context);
    const figures = new Map<string, number>();
    for (const numbers of runNumbersFor(context, advice)) {
      for (const figure of FIGURES) {
        const value = numbers[figure];
        if (value !== undefined) figures.set(nameOf(numbers, figure), value);
      }
    }
    return figures;
  };
}

/** The runs that bands are made of, for everything that an assessment tells. Problems: as `bandRuns`. */
export function bandRunsOf(board: Board, plan: Plan, options: BandOptions = {}): Result<PlannedBands> {
  const candidates = candidatesOf(board, plan);
  const watched = withCandidates(plan, candidates);
  const made = bandRuns(board, watched, beliefOf(board, plan), { ...options, moreFigures: numbersTeller(board, plan) });
  if (!made.ok) return made;
  const places = thermocouplePlaces(withBands(made.value.base, made.value), made.value, candidates);
  return succeed({ ...made.value, places });
}

/** Band runs of a plan, and where thermocouples would make its figures surest. */
export type PlannedBands = BandRuns & { places: ThermocouplePlace[] };

/** When the target melts is told with the target; the other numbers are their own. */
const bandName = (numbers: RunNumbers, figure: Banded): string =>
  figure === 'moltenAtS' ? figureName.target(numbers.runId, numbers.siteId, 'molten') : nameOf(numbers, figure);

function numbersWithBands(numbers: RunNumbers, runs: BandRuns): RunNumbers {
  const bands: Partial<Record<(typeof BANDED)[Banded], number>> = {};
  for (const figure of FIGURES) {
    const band = numbers[figure] === undefined ? null : bandFor(runs, bandName(numbers, figure));
    if (band !== null) bands[BANDED[figure]] = band;
  }
  return { ...numbers, ...bands };
}

/** What an evaluation means for the work, its bands told. */
export function assessWithBands(board: Board, plan: Plan, evaluation: Evaluation, runs: PlannedBands): Assessment {
  const assessment = assess(board, plan, withoutOrdinaryDoubt(board, withBands(evaluation, runs)));
  const runNumbers = assessment.runNumbers.map((numbers) => numbersWithBands(numbers, runs));
  return { ...assessment, runNumbers, thermocouples: runs.places };
}

/** Evaluates the bands of an evaluated ticket at once; the command line's way. */
export function assessFully(
  board: Board,
  plan: Plan,
  evaluation: Evaluation,
  options: BandOptions = {},
): Result<Assessment> {
  const runs = bandRunsOf(board, plan, options);
  return runs.ok ? succeed(assessWithBands(board, plan, evaluation, runs.value)) : runs;
}
