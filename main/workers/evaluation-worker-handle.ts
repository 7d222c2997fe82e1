import { basename } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { Board } from '../../shared-types/board.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { fail, type Problem, type Result } from '../../shared-types/problem.ts';
import type { FitProgress } from '../../shared-types/study.ts';
import { reasons } from '../../shared-types/words/shell.ts';
import {
  type AskMessage,
  CANCELLED_UP_TO,
  type JobPhase,
  type PlaybackAnswer,
  type PlaybackQuestion,
  type RunMessage,
  SECOND_CORE_FREE,
  SIGNALS_BYTES,
  type StudyOrder,
  type WorkerData,
  type WorkerMessage,
} from './worker-messages.ts';

export type WorkerJob = { revision: number; phase: JobPhase; document: TicketDocument; study?: StudyOrder };
export type JobEnd = Extract<WorkerMessage, { kind: 'result' | 'bands' | 'study' | 'failed' }>;

/** The worker seen from main: one job at a time, born when first needed, born again when it died. */
export type EvaluationWorker = {
  /** Runs a job; the number names it. */
  run(job: WorkerJob): number;
  cancel(job: number): void;
  /** Whether jobs of the band runs may use a second core, from their next run on: true while no map is made there. */
  letShare(isFree: boolean): void;
  /** Asks something of the last fine evaluation; answered when no job runs. A worker that is not alive knows nothing. */
  ask<Q extends PlaybackQuestion>(question: Q): Promise<Result<PlaybackAnswer[Q['about']]>>;
  close(): Promise<void>;
};

export type WorkerListener = {
  progress(job: number, share: number, fit?: FitProgress): void;
  ended(end: JobEnd): void;
};

const START_WITHIN_MS = 20_000;

type Living = { worker: Worker; ready: boolean; board: Board | null; startTimer: NodeJS.Timeout };

/** `file`: path of the built worker. A worker that dies ends its job with a problem that names the file. */
export function createEvaluationWorker(file: string, listener: WorkerListener): EvaluationWorker {
  const shared = new SharedArrayBuffer(SIGNALS_BYTES);
  const signals = new Int32Array(shared);
  let living: Living | null = null;
  let runningJob: number | null = null;
  let lastJob = 0;
  const questions = openQuestions();

  const died = (worker: Worker) => {
    if (living?.worker !== worker) return;
    const reason = living.ready ? reasons.workerFailed(basename(file)) : reasons.workerMissing(basename(file));
    clearTimeout(living.startTimer);
    living = null;
    questions.lose();
    const job = runningJob;
    runningJob = null;
    const problem: Problem = { code: 'evaluation-failed', detail: { reason } };
    if (job !== null) listener.ended({ kind: 'failed', job, problem });
  };
  const heard = (message: WorkerMessage) => {
    if (message.kind === 'ready') {
      if (living) clearTimeout(living.startTimer);
      if (living) living.ready = true;
    } else if (message.kind === 'progress') {
      listener.progress(message.job, message.share, message.fit);
    } else if (message.kind === 'answer') {
      questions.answered(message.serial, message.result);
    } else {
      runningJob = null;
      listener.ended(message);
    }
  };
  const birth = (): Living => {
    const worker = new Worker(file, { workerData: { signals: shared } satisfies WorkerData });
    worker.on('message', heard);
    worker.on('error', () => died(worker));
    worker.on('exit', () => died(worker));
    const startTimer = setTimeout(() => void worker.terminate(), START_WITHIN_MS);
    return { worker, ready: false, board: null, startTimer };
  };

  return {
    run({ revision, phase, document, study }) {
      living ??= birth();
      lastJob += 1;
      runningJob = lastJob;
      const board = living.board === document.board ? null : document.board;
      living.board = document.board;
      const message: RunMessage = { kind: 'run', job: lastJob, revision, phase, board, plan: document.plan, study };
      living.worker.postMessage(message);
      return lastJob;
    },
    cancel: (job) => void Atomics.store(signals, CANCELLED_UP_TO, job),
    letShare: (isFree) => void Atomics.store(signals, SECOND_CORE_FREE, isFree ? 1 : 0),
    ask<Q extends PlaybackQuestion>(question: Q) {
      const worker = living?.worker;
      if (!worker) return Promise.resolve(fail('stale-evaluation'));
      return questions.put<Q>((serial) => worker.postMessage({ kind: 'ask', serial, question } satisfies AskMessage));
    },
    async close() {
      const last = living;
      living = null;
      questions.lose();
      if (last) clearTimeout(last.startTimer);
      await last?.worker.terminate();
    },
  };
}

type Answer = Extract<WorkerMessage, { kind: 'answer' }>['result'];

/** Questions on their way, by their serial number. */
function openQuestions() {
  const open = new Map<number, (result: Answer) => void>();
  let last = 0;
  const answered = (serial: number, result: Answer) => {
    open.get(serial)?.(result);
    open.delete(serial);
  };
  return {
    put<Q extends PlaybackQuestion>(send: (serial: number) => void): Promise<Result<PlaybackAnswer[Q['about']]>> {
      last += 1;
      const serial = last;
      return new Promise((resolve) => {
        open.set(serial, resolve as (result: Answer) => void);
        send(serial);
      });
    },
    answered,
    /** The worker is gone, and with it what was asked about. */
    lose() {
      for (const serial of [...open.keys()]) answered(serial, fail('stale-evaluation'));
    },
  };
}
