import type { Board } from '../../../shared-types/board.ts';
import type { BandFields, Evaluation } from '../../../shared-types/evaluation.ts';
import type { Plan } from '../../../shared-types/plan.ts';
import { type Result, succeed } from '../../../shared-types/problem.ts';
import { BAND_90, TERM_IDS } from '../../../shared-types/uncertainty.ts';
import { type EvaluateOptions, evaluate, evaluateElsewhere } from '../evaluate.ts';
import { createRunMemory } from '../run-memory.ts';
import { bandFieldsOf, type Maps, mapsOf } from './band-fields.ts';
import { type Figures, figureName, figuresOf, hangingFigures } from './figures.ts';
import { type Belief, HAND_REPEAT_SIGMA_K, isHandHeld } from './priors.ts';
import { bandOf, repeatInOutlets, type Sensitivities, sensitivitiesOf, type TermPair } from './sensitivities.ts';
import { spansOf } from './spans.ts';

/** Everything that bands are made of; plain data. */
export type BandRuns = {
  belief: Belief;
  base: Evaluation;
  sensitivities: Sensitivities;
  /** The hand's repeat as a number of the outlet's standard deviations. */
  repeat: number;
  repeatK: number;
  /** Half widths of the bands of figures in seconds, by name. */
  spans: Map<string, number>;
  fields: BandFields;
};

export type BandOptions = Pick<EvaluateOptions, 'revision' | 'onProgress' | 'isCancelled' | 'memory' | 'share'> & {
  /** Further figures of one evaluation that want a band, told from the evaluation alone; `base` comes first. */
  moreFigures?: (evaluation: Evaluation) => Figures;
};

/** Of all targets, the coldest joint that the outlet moves most: there the hand's repeat is told. */
function targetMoves(base: Evaluation, sensitivities: Sensitivities): readonly number[] | undefined {
  const outlet = TERM_IDS.indexOf('outlet');
  const moves = base.runs.flatMap((run) =>
    run.targets.flatMap((target) => {
      const found = sensitivities.get(figureName.target(run.runId, target.siteId, 'coldest'));
      return found ? [found] : [];
    }),
  );
  return moves.sort((a, b) => Math.abs(b[outlet]!) - Math.abs(a[outlet]!))[0];
}

/**
 * Runs the ticket on the 2 mm grid as it is and with each term one standard deviation down and up; with another thread to
 * share with, the runs of a pair are made side by side.
 * Problems: as `evaluate`, 'cancelled' between two steps.
 */
export function bandRuns(board: Board, plan: Plan, belief: Belief, options: BandOptions = {}): Result<BandRuns> {
  const { revision, isCancelled, moreFigures, share } = options;
  const memory = options.memory ?? createRunMemory();
  const count = 1 + 2 * TERM_IDS.length;
  let done = 0;
  const runWith = (steps: EvaluateOptions['steps'], shareRuns?: EvaluateOptions['share']) => {
    const onProgress = (share: number) => options.onProgress?.((done + share) / count);
    const result = evaluate(board, plan, {
      phase: 'coarse',
      revision,
      memory,
      isCancelled,
      onProgress,
      steps,
      share: shareRuns,
    });
    done++;
    return result;
  };
  const tell = (evaluation: Evaluation): Figures =>
    new Map([...figuresOf(evaluation), ...(moreFigures?.(evaluation) ?? [])]);
  const base = runWith({}, share);
  if (!base.ok) return base;
  const baseFigures = tell(base.value);
  const pairs: TermPair[] = [];
  const maps: { down: Maps; up: Maps }[] = [];
  for (const [index, term] of TERM_IDS.entries()) {
    const sigma = belief.sigma[index]!;
    const lower = { [term]: -sigma };
    const meanwhile =
      share && evaluateElsewhere(board, plan, { phase: 'coarse', revision, memory, isCancelled, steps: lower, share });
    const up = runWith({ [term]: sigma });
    if (!up.ok) return up;
    const down = meanwhile ? meanwhile() : runWith(lower);
    if (meanwhile) done++;
    if (!down.ok) return down;
    pairs.push({ down: tell(down.value), up: tell(up.value) });
    maps.push({ down: mapsOf(down.value), up: mapsOf(up.value) });
  }
  const sensitivities = sensitivitiesOf(baseFigures, pairs);
  const repeatK = isHandHeld(plan) ? HAND_REPEAT_SIGMA_K : 0;
  const repeat = repeatInOutlets(targetMoves(base.value, sensitivities), repeatK);
  const spans = spansOf(
    hangingFigures(base.value),
    [baseFigures, ...pairs.flatMap(({ down, up }) => [down, up])],
    (name) => {
      const moves = sensitivities.get(name);
      return moves ? bandOf(moves, belief, repeat) / BAND_90 : null;
    },
  );
  const fields = bandFieldsOf(base.value, maps, belief, repeat);
  return succeed({ belief, base: base.value, sensitivities, repeat, repeatK, spans, fields });
}
