import type { Assessment } from '../../shared-types/evaluation.ts';
import { fail, type Result, succeed } from '../../shared-types/problem.ts';
import type { PlannedBands } from '../planning/band-numbers.ts';
import { assessWithBands } from '../planning/band-numbers.ts';
import { type BandEnd, type BandKeeper, createBandKeeper } from './band-keeper.ts';
import type { EvaluationWorker, WorkerListener } from './evaluation-worker-handle.ts';
import {
  createEvaluator,
  type EvaluatedTicket,
  type EvaluationEvent,
  type Evaluator,
  type WantedEvaluation,
} from './evaluator.ts';

/** Band runs begin this long after the fine map began: a gesture that goes on keeps the second core to itself. */
const BANDS_AFTER_MS = 400;

type Shown = { id: string; revision: number; phase: 'coarse' | 'fine'; assessment: Assessment };
type Waiter = { resolve: (runs: PlannedBands | null) => void };
type Later = (ms: number, act: () => void) => () => void;

type State = {
  tell: (event: EvaluationEvent) => void;
  later: Later;
  keeper: BandKeeper;
  wanted: WantedEvaluation | null;
  /** The last map told of the wanted revision, without bands. */
  shown: Shown | null;
  stopWaiting: () => void;
  waiters: Set<Waiter>;
};

/**
 * The evaluator with bands: beside the fine map, a second worker makes the runs that bands are made of. Whatever map
 * of the same revision is shown then is told again with its bands; a newer revision ends them.
 * @param later acts after so many ms; what it returns stops it
 */
export function createBandedEvaluator(
  startWorker: (listener: WorkerListener) => EvaluationWorker,
  tell: (event: EvaluationEvent) => void,
  later: Later = laterByTimer,
): Evaluator {
  const keeper = createBandKeeper(
    startWorker,
    (one, share) => bandsProgressed(state, one, share),
    (one, end) => bandsEnded(state, one, end),
  );
  const state: State = {
    ...{ tell, later, keeper, wanted: null, shown: null },
    ...{ stopWaiting: nothing, waiters: new Set() },
  };
  const inner = createEvaluator(startWorker, (event) => heard(state, event));
  return {
    want(one, phases, stale) {
      turnTo(state, one);
      inner.want(one, phases, stale);
    },
    cancel(id) {
      const { wanted } = state;
      const alone = wanted?.id === id && isFineShown(state, wanted) && keeper.isRunning(wanted);
      if (wanted?.id === id) dropBands(state);
      inner.cancel(id);
      if (alone) tell({ name: 'evaluation.failed', id, revision: wanted.revision, problem: fail('cancelled').problem });
    },
    forget(id) {
      if (state.wanted?.id === id) {
        state.wanted = null;
        dropBands(state);
      }
      inner.forget(id);
    },
    /** The fine answer with its bands; without them where they could not be made. */
    async fine(one) {
      turnTo(state, one);
      return withItsBands(state, one, await inner.fine(one));
    },
    ask: (id, question) => inner.ask(id, question),
    async close() {
      dropBands(state);
      await keeper.close();
      await inner.close();
    },
  };
}

function nothing(): void {}

function laterByTimer(ms: number, act: () => void): () => void {
  const timer = setTimeout(act, ms);
  return () => clearTimeout(timer);
}

const isNewest = ({ wanted }: State, one: { id: string; revision: number }): boolean =>
  wanted !== null && wanted.id === one.id && wanted.revision === one.revision;

const isFineShown = ({ shown }: State, { id, revision }: WantedEvaluation): boolean =>
  shown?.id === id && shown.revision === revision && shown.phase === 'fine';

const banded = ({ assessment }: Shown, { board, plan }: WantedEvaluation['document'], runs: PlannedBands): Assessment =>
  assessWithBands(board, plan, assessment.evaluation, runs);

function turnTo(state: State, one: WantedEvaluation): void {
  if (isNewest(state, one)) return;
  dropBands(state);
  state.keeper.letShare(false);
  state.wanted = one;
}

/** Whoever waits for bands goes on without them. */
function dropBands(state: State): void {
  state.stopWaiting();
  state.keeper.drop();
  for (const { resolve } of state.waiters) resolve(null);
  state.waiters.clear();
}

function begin(state: State, one: WantedEvaluation): void {
  state.stopWaiting();
  const { keeper } = state;
  if (isNewest(state, one) && !keeper.isRunning(one) && !keeper.known(one.document)) keeper.start(one);
}

/** What the evaluator of maps tells. A map of an older revision, in the middle of a drag, is passed on as it is. */
function heard(state: State, event: EvaluationEvent): void {
  const { wanted, tell, keeper } = state;
  if (!wanted || !isNewest(state, event)) {
    tell(event);
    return;
  }
  if (event.name === 'evaluation.progress' && event.phase === 'fine' && event.share === 0) {
    state.stopWaiting();
    state.stopWaiting = state.later(BANDS_AFTER_MS, () => begin(state, wanted));
  }
  if (event.name !== 'evaluation.result') {
    tell(event);
    return;
  }
  const { id, revision, phase, assessment } = event;
  state.shown = { id, revision, phase, assessment };
  const runs = keeper.known(wanted.document);
  tell(runs ? { ...event, assessment: banded(state.shown, wanted.document, runs) } : event);
  if (phase !== 'fine') return;
  keeper.letShare(true);
  begin(state, wanted);
}

/** The fine map's progress is told first; two at once would jump. */
function bandsProgressed(state: State, one: WantedEvaluation, share: number): void {
  const { id, revision } = one;
  if (isFineShown(state, one)) state.tell({ name: 'evaluation.progress', id, revision, phase: 'bands', share });
}

function bandsEnded(state: State, one: WantedEvaluation, end: BandEnd): void {
  if (!isNewest(state, one)) return;
  const { id, revision } = one;
  for (const { resolve } of state.waiters) resolve(end.kind === 'done' ? end.runs : null);
  state.waiters.clear();
  if (end.kind === 'failed') state.tell({ name: 'evaluation.failed', id, revision, problem: end.problem });
  const { shown } = state;
  if (end.kind !== 'done' || !shown || !isNewest(state, shown)) return;
  const assessment = banded(shown, one.document, end.runs);
  state.tell({ name: 'evaluation.result', id, revision, phase: shown.phase, assessment });
}

async function withItsBands(
  state: State,
  one: WantedEvaluation,
  answer: Result<EvaluatedTicket>,
): Promise<Result<EvaluatedTicket>> {
  if (!answer.ok) return answer;
  const { document, assessment } = answer.value;
  const known = state.keeper.known(document);
  const runs = known ?? (await new Promise<PlannedBands | null>((resolve) => wait(state, one, resolve)));
  if (!runs) return answer;
  return succeed({
    document,
    assessment: assessWithBands(document.board, document.plan, assessment.evaluation, runs),
  });
}

function wait(state: State, one: WantedEvaluation, resolve: Waiter['resolve']): void {
  if (!isNewest(state, one)) {
    resolve(null);
    return;
  }
  state.waiters.add({ resolve });
  begin(state, one);
}
