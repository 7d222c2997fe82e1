import { basename } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { Board } from '../../shared-types/board.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import type { Problem } from '../../shared-types/problem.ts';
import { reasons } from '../../shared-types/words/shell.ts';
import type { Phase, RunMessage, WorkerData, WorkerMessage } from './worker-messages.ts';

export type WorkerJob = { revision: number; phase: Phase; document: TicketDocument };
export type JobEnd = Extract<WorkerMessage, { kind: 'result' | 'failed' }>;

/** The worker seen from main: one job at a time, born when first needed, born again when it died. */
export type EvaluationWorker = {
  /** Runs a job; the number names it. */
  run(job: WorkerJob): number;
  cancel(job: number): void;
  close(): Promise<void>;
};

export type WorkerListener = {
  progress(job: number, share: number): void;
  ended(end: JobEnd): void;
};

const START_WITHIN_MS = 20_000;

type Living = { worker: Worker; ready: boolean; board: Board | null; startTimer: NodeJS.Timeout };

/** `file`: path of the built worker. A worker that dies ends its job with a problem that names the file. */
export function createEvaluationWorker(file: string, listener: WorkerListener): EvaluationWorker {
  const shared = new SharedArrayBuffer(4);
  const cancelledUpTo = new Int32Array(shared);
  let living: Living | null = null;
  let runningJob: number | null = null;
  let lastJob = 0;

  const died = (worker: Worker) => {
    if (living?.worker !== worker) return;
    const reason = living.ready ? reasons.workerFailed(basename(file)) : reasons.workerMissing(basename(file));
    clearTimeout(living.startTimer);
    living = null;
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
      listener.progress(message.job, message.share);
    } else {
      runningJob = null;
      listener.ended(message);
    }
  };
  const birth = (): Living => {
    const worker = new Worker(file, { workerData: { cancelledUpTo: shared } satisfies WorkerData });
    worker.on('message', heard);
    worker.on('error', () => died(worker));
    worker.on('exit', () => died(worker));
    const startTimer = setTimeout(() => void worker.terminate(), START_WITHIN_MS);
    return { worker, ready: false, board: null, startTimer };
  };

  return {
    run({ revision, phase, document }) {
      living ??= birth();
      lastJob += 1;
      runningJob = lastJob;
      const board = living.board === document.board ? null : document.board;
      living.board = document.board;
      const message: RunMessage = { kind: 'run', job: lastJob, revision, phase, board, plan: document.plan };
      living.worker.postMessage(message);
      return lastJob;
    },
    cancel: (job) => void Atomics.store(cancelledUpTo, 0, job),
    async close() {
      const last = living;
      living = null;
      if (last) clearTimeout(last.startTimer);
      await last?.worker.terminate();
    },
  };
}
