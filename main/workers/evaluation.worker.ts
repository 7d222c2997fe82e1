import { availableParallelism } from 'node:os';
import { parentPort, workerData } from 'node:worker_threads';
import type { Board } from '../../shared-types/board.ts';
import { fail, type Problem, type Result, succeed } from '../../shared-types/problem.ts';
import type { FitProgress } from '../../shared-types/study.ts';
import { evaluate } from '../heat/evaluate.ts';
import { curvesOf, momentOf, type Playback } from '../heat/playback.ts';
import { createRunMemory } from '../heat/run-memory.ts';
import type { SharedTask, ShareRuns } from '../heat/share-runs.ts';
import { assess } from '../planning/assess.ts';
import { bandRunsOf } from '../planning/band-numbers.ts';
import { answerStudy } from './answer-study.ts';
import { helpWithRuns } from './help-with-runs.ts';
import { createRunHelper, type RunHelper } from './run-helper.ts';
import type { HelperData } from './run-helper-messages.ts';
import { buffersIn } from './transferable.ts';
import {
  type AskMessage,
  CANCELLED_UP_TO,
  type PlaybackQuestion,
  type RunMessage,
  SECOND_CORE_FREE,
  type WorkerData,
  type WorkerMessage,
} from './worker-messages.ts';

/** Least time between two messages about progress. */
const PROGRESS_EVERY_MS = 50;

const born = workerData as WorkerData | HelperData;
const shared = 'port' in born ? born.cancelledUpTo : born.signals;
const signals = new Int32Array(shared);
/**
 * A helper born of this same file: for the maps of a gesture, when the second worker's band runs are stopped, and for band runs
 * while no map is made.
 */
const helper = availableParallelism() > 1 ? createRunHelper(new URL(import.meta.url), shared) : null;
/** For runs on the coarse grid, which follow a gesture or repeat it: the fine one would need many times the room. */
const memory = createRunMemory();
let board: Board | null = null;
/** Of the last fine evaluation; its memory is free before the next one begins. */
let playback: Playback | null = null;

const send = (message: WorkerMessage, transfer: ArrayBuffer[] = []) => parentPort?.postMessage(message, transfer);

type Answer = Extract<WorkerMessage, { kind: 'result' | 'bands' | 'study' }>;

function work(message: RunMessage, present: Board): Result<Answer> {
  const { job, phase, plan, revision, study } = message;
  let nextProgress = 0;
  const options = {
    revision,
    memory: phase === 'fine' ? undefined : memory,
    isCancelled: () => Atomics.load(signals, CANCELLED_UP_TO) >= job,
    onProgress(share: number, fit?: FitProgress) {
      if (performance.now() < nextProgress) return;
      nextProgress = performance.now() + PROGRESS_EVERY_MS;
      send({ kind: 'progress', job, share, fit });
    },
  };
  if (phase === 'bands') {
    const runs = bandRunsOf(present, plan, { ...options, share: helper ? shareWhileFree(helper, job) : undefined });
    return runs.ok ? succeed({ kind: 'bands', job, runs: runs.value }) : runs;
  }
  if (phase === 'study') {
    if (!study) return fail('internal');
    const answer = answerStudy(present, plan, study, options);
    return answer.ok ? succeed({ kind: 'study', job, answer: answer.value }) : answer;
  }
  const fine = phase === 'fine';
  if (fine) playback = null;
  const onPlayback = (recorded: Playback) => {
    playback = recorded;
  };
  const share = fine || !helper ? undefined : (task: SharedTask) => helper.share(job, task);
  const evaluation = evaluate(present, plan, { ...options, phase, share, onPlayback: fine ? onPlayback : undefined });
  if (!evaluation.ok) return evaluation;
  return succeed({ kind: 'result', job, assessment: assess(present, plan, evaluation.value) });
}

/** Gives band runs away while the second core is free; those that come while it is not are made here. */
const shareWhileFree =
  (to: RunHelper, job: number): ShareRuns =>
  (task) =>
    Atomics.load(signals, SECOND_CORE_FREE) === 1 ? to.share(job, task) : () => null;

/** What the heat code did not foresee ends one job, not the worker. */
function safely(message: RunMessage, present: Board): Result<Answer> {
  try {
    return work(message, present);
  } catch (error) {
    const problem: Problem = { code: 'evaluation-failed', detail: { reason: (error as Error).name } };
    console.error('evaluation:', error);
    return { ok: false, problem };
  }
}

const answer = (question: PlaybackQuestion) =>
  question.about === 'moment'
    ? momentOf(playback, question.revision, question.runId, question.atS)
    : curvesOf(playback, question.revision, question.runId, question.refdes, question.tagIds);

function serve(): void {
  parentPort?.on('message', (message: RunMessage | AskMessage) => {
    if (message.kind === 'ask') {
      const result = answer(message.question);
      send({ kind: 'answer', serial: message.serial, result }, [...buffersIn(result)]);
      return;
    }
    board = message.board ?? board;
    if (!board) return;
    const result = safely(message, board);
    if (!result.ok) send({ kind: 'failed', job: message.job, problem: result.problem });
    else send(result.value, [...buffersIn(result.value)]);
  });
  send({ kind: 'ready' });
}

if ('port' in born) helpWithRuns(born);
else serve();
