import type { MainEvent } from '../../shared-types/contract.ts';
import type { Assessment } from '../../shared-types/evaluation.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { fail, type Problem, type Result, succeed } from '../../shared-types/problem.ts';
import { assess } from '../planning/assess.ts';
import type { EvaluationWorker, JobEnd, WorkerListener } from './evaluation-worker-handle.ts';
import { sameHeat } from './same-heat.ts';
import type { Phase, PlaybackAnswer, PlaybackQuestion } from './worker-messages.ts';

export type EvaluationEvent = Extract<
  MainEvent,
  { name: 'evaluation.progress' | 'evaluation.result' | 'evaluation.failed' }
>;
export type EvaluatedTicket = { document: TicketDocument; assessment: Assessment };
export type WantedEvaluation = { id: string; revision: number; document: TicketDocument };

export type StaleCoarse = 'finish' | 'cancel';

/**
 * Edits so fast that each cancels the map of the one before (a key held down) are shown nothing for so long; then a coarse
 * run finishes though it is stale. With a run of 300 ms there is a map every 500 ms.
 */
const HUNGRY_AFTER_MS = 120;

/**
 * Progressive answers: coarse, then fine, of the newest document. A coarse run that is under way finishes and is shown even if the
 * document moved on (a drag then still sees answers), unless the gesture is over; a fine run is cancelled. Maps that are cancelled
 * one after the other end with one that is not. A user's cancel ends both and is told.
 */
export type Evaluator = {
  /** `stale`: what becomes of a coarse run of an earlier revision; 'cancel' once nothing moves any more. */
  want(wanted: WantedEvaluation, phases: readonly Phase[], stale?: StaleCoarse): void;
  cancel(id: string): void;
  /** Nothing to evaluate any more: the plan lost its runs, or the ticket was closed. Not told. */
  forget(id: string): void;
  /** The newest fine answer about a ticket; it is started when it is not under way. */
  fine(wanted: WantedEvaluation): Promise<Result<EvaluatedTicket>>;
  /** Something of the fine evaluation of a revision, while it is the newest; else 'stale-evaluation'. */
  ask<Q extends PlaybackQuestion>(id: string, question: Q): Promise<Result<PlaybackAnswer[Q['about']]>>;
  close(): Promise<void>;
};

type Running = WantedEvaluation & { job: number; phase: Phase; end: 'show' | 'drop' | 'tell-cancelled' };
type State = {
  tell: (event: EvaluationEvent) => void;
  worker: EvaluationWorker;
  wanted: WantedEvaluation | null;
  todo: Phase[];
  running: Running | null;
  /** The last coarse answer sent: asking for both again needs only the fine one. */
  lastCoarse: { id: string; revision: number } | null;
  /** `madeAt`: the revision that its heat was worked out for; later ones changed nothing that it depends on. */
  lastFine: (EvaluatedTicket & { id: string; revision: number; madeAt: number }) | null;
  waiting: { id: string; resolve: (result: Result<EvaluatedTicket>) => void }[];
  now: () => number;
  reassess: typeof assess;
  /** When the first coarse run was cancelled since a map was shown; null: none was. */
  hungrySince: number | null;
};

export function createEvaluator(
  startWorker: (listener: WorkerListener) => EvaluationWorker,
  tell: (event: EvaluationEvent) => void,
  now: () => number = () => performance.now(),
  reassess = assess,
): Evaluator {
  const listener: WorkerListener = {
    progress: (job, share) => progressed(state, job, share),
    ended: (end) => ended(state, end),
  };
  const state: State = {
    ...{ tell, worker: startWorker(listener), wanted: null, todo: [] },
    ...{ running: null, lastCoarse: null, lastFine: null, waiting: [], now, reassess, hungrySince: null },
  };
  return {
    want: (wanted, phases, stale = 'finish') => want(state, wanted, phases, stale),
    cancel: (id) => cancel(state, id),
    forget: (id) => forget(state, id),
    fine: (wanted) => fine(state, wanted),
    ask: <Q extends PlaybackQuestion>(id: string, question: Q) => ask(state, id, question),
    async close() {
      settle(state, null, fail('cancelled'));
      await state.worker.close();
    },
  };
}

function want(state: State, wanted: WantedEvaluation, phases: readonly Phase[], stale: StaleCoarse): void {
  state.wanted = wanted;
  carryOver(state, wanted);
  const { running, lastFine } = state;
  if (isAbout(lastFine, wanted)) {
    state.todo = [];
    if (running && !isAbout(running, wanted)) drop(state, running);
    const { assessment } = lastFine;
    state.tell({ name: 'evaluation.result', id: wanted.id, revision: wanted.revision, phase: 'fine', assessment });
    return;
  }
  const isComing = (phase: Phase) => isAbout(running, wanted) && running.end === 'show' && running.phase === phase;
  const isKnown = (phase: Phase) => phase === 'coarse' && phases.length > 1 && isAbout(state.lastCoarse, wanted);
  state.todo = phases.filter((phase) => !isComing(phase) && !isKnown(phase));
  if (running && isObsolete(state, running, wanted, stale)) drop(state, running);
  startNext(state);
}

/**
 * An edit that no heat depends on (a tick, a name, a strap's setting): the fine figures are those of before, only what they mean for
 * the work is told anew.
 */
function carryOver(state: State, wanted: WantedEvaluation): void {
  const { lastFine } = state;
  if (lastFine?.id !== wanted.id || lastFine.revision === wanted.revision) return;
  if (!sameHeat(lastFine.document, wanted.document)) return;
  const { board, plan } = wanted.document;
  const evaluation = { ...lastFine.assessment.evaluation, revision: wanted.revision };
  state.lastFine = { ...wanted, madeAt: lastFine.madeAt, assessment: state.reassess(board, plan, evaluation) };
}

const isAbout = <T extends { id: string; revision: number }>(one: T | null, wanted: WantedEvaluation): one is T =>
  one !== null && one.id === wanted.id && one.revision === wanted.revision;

function isObsolete(
  { hungrySince, now }: State,
  running: Running,
  wanted: WantedEvaluation,
  stale: StaleCoarse,
): boolean {
  if (running.id !== wanted.id) return true;
  if (running.revision === wanted.revision) return false;
  const hungry = hungrySince !== null && now() - hungrySince >= HUNGRY_AFTER_MS;
  return running.phase === 'fine' || (stale === 'cancel' && !hungry);
}

function drop(state: State, running: Running): void {
  if (running.phase === 'coarse') state.hungrySince ??= state.now();
  stop(state, running, 'drop');
}

function stop(state: State, running: Running, end: Running['end']): void {
  running.end = end;
  state.worker.cancel(running.job);
}

function startNext(state: State): void {
  if (state.running || !state.wanted) return;
  const phase = state.todo.shift();
  if (!phase) return;
  const { revision, document } = state.wanted;
  // Set before the job runs: a worker that cannot start ends its job at once.
  const running: Running = { ...state.wanted, phase, job: -1, end: 'show' };
  state.running = running;
  running.job = state.worker.run({ revision, phase, document });
  state.tell({ name: 'evaluation.progress', id: running.id, revision, phase, share: 0 });
}

function progressed(state: State, job: number, share: number): void {
  const { running } = state;
  if (running?.job !== job || running.end !== 'show') return;
  state.tell({
    ...{ name: 'evaluation.progress', id: running.id, revision: running.revision },
    ...{ phase: running.phase, share },
  });
}

function ended(state: State, end: JobEnd): void {
  const { running } = state;
  if (!running) return;
  state.running = null;
  if (running.end === 'tell-cancelled') tellFailed(state, running, { code: 'cancelled' });
  else if (running.end === 'show' && end.kind === 'failed') failed(state, running, end.problem);
  else if (running.end === 'show' && end.kind === 'result') succeeded(state, running, end.assessment);
  startNext(state);
}

function failed(state: State, running: Running, problem: Problem): void {
  if (state.wanted?.id === running.id && state.wanted.revision === running.revision) state.todo = [];
  tellFailed(state, running, problem);
}

function tellFailed(state: State, running: Running, problem: Problem): void {
  const { id, revision } = running;
  state.tell({ name: 'evaluation.failed', id, revision, problem });
  if (state.todo.length === 0) settle(state, id, { ok: false, problem });
}

function succeeded(state: State, running: Running, assessment: Assessment): void {
  const { id, revision, phase, document } = running;
  state.hungrySince = null;
  state.tell({ name: 'evaluation.result', id, revision, phase, assessment });
  if (phase === 'coarse') state.lastCoarse = { id, revision };
  if (phase !== 'fine') return;
  state.lastFine = { id, revision, madeAt: revision, document, assessment };
  settle(state, id, succeed({ document, assessment }));
}

function settle(state: State, id: string | null, result: Result<EvaluatedTicket>): void {
  const due = state.waiting.filter((waiter) => id === null || waiter.id === id);
  state.waiting = state.waiting.filter((waiter) => !due.includes(waiter));
  for (const { resolve } of due) resolve(result);
}

function cancel(state: State, id: string): void {
  if (state.wanted?.id !== id) return;
  state.todo = [];
  if (state.running?.id === id) stop(state, state.running, 'tell-cancelled');
  else settle(state, id, fail('cancelled'));
}

function forget(state: State, id: string): void {
  if (state.wanted?.id !== id) return;
  state.wanted = null;
  state.todo = [];
  if (state.running?.id === id) stop(state, state.running, 'drop');
  settle(state, id, fail('cancelled'));
}

function fine(state: State, wanted: WantedEvaluation): Promise<Result<EvaluatedTicket>> {
  carryOver(state, wanted);
  if (isAbout(state.lastFine, wanted)) return Promise.resolve(succeed(state.lastFine));
  return new Promise((resolve) => {
    state.waiting.push({ id: wanted.id, resolve });
    const comesLater = isAbout(state.wanted, wanted) && state.todo.includes('fine');
    if (!comesLater) want(state, wanted, ['fine'], 'finish');
  });
}

/** A fine run that has begun has let go of what the one before left behind: nothing is asked of it then. */
function ask<Q extends PlaybackQuestion>(
  state: State,
  id: string,
  question: Q,
): Promise<Result<PlaybackAnswer[Q['about']]>> {
  const { lastFine, running } = state;
  const known = lastFine?.id === id && lastFine.revision === question.revision && running?.phase !== 'fine';
  return known
    ? state.worker.ask({ ...question, revision: lastFine.madeAt })
    : Promise.resolve(fail('stale-evaluation'));
}
