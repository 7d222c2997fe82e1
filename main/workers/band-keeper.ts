import type { TicketDocument } from '../../shared-types/plan.ts';
import type { Problem } from '../../shared-types/problem.ts';
import type { PlannedBands } from '../planning/band-numbers.ts';
import type { EvaluationWorker, JobEnd, WorkerListener } from './evaluation-worker-handle.ts';
import type { WantedEvaluation } from './evaluator.ts';
import { sameHeat } from './same-heat.ts';

/** How the newest band runs end: with their numbers, with a problem, or not at all because they were overtaken. */
export type BandEnd = { kind: 'done'; runs: PlannedBands } | { kind: 'failed'; problem: Problem } | { kind: 'dropped' };

/** The band runs of the newest document, on a worker of their own: at most one set at a time, none for a stale one. */
export type BandKeeper = {
  /** The runs of this document, if they are known: those of a document that differs in names alone count. */
  known(document: TicketDocument): PlannedBands | null;
  isRunning(wanted: WantedEvaluation): boolean;
  start(wanted: WantedEvaluation): void;
  /** Whether band runs may use a second core: true while no map is made there. */
  letShare(isFree: boolean): void;
  /** Ends what runs; it is told as dropped. */
  drop(): void;
  close(): Promise<void>;
};

type Running = { wanted: WantedEvaluation; job: number };
type Known = { document: TicketDocument; runs: PlannedBands };

export function createBandKeeper(
  startWorker: (listener: WorkerListener) => EvaluationWorker,
  progressed: (wanted: WantedEvaluation, share: number) => void,
  ended: (wanted: WantedEvaluation, end: BandEnd) => void,
): BandKeeper {
  let running: Running | null = null;
  let next: WantedEvaluation | null = null;
  let dropped = false;
  let latest: Known | null = null;

  const begin = (wanted: WantedEvaluation) => {
    dropped = false;
    // Set before the job runs: a worker that cannot start ends its job at once.
    const started: Running = { wanted, job: -1 };
    running = started;
    const { revision, document } = wanted;
    started.job = worker.run({ revision, phase: 'bands', document });
  };
  const endOf = (wanted: WantedEvaluation, end: JobEnd): BandEnd => {
    if (dropped || end.kind === 'result' || end.kind === 'study') return { kind: 'dropped' };
    if (end.kind === 'failed') return { kind: 'failed', problem: end.problem };
    latest = { document: wanted.document, runs: end.runs };
    return { kind: 'done', runs: end.runs };
  };
  const worker = startWorker({
    progress(job, share) {
      if (running?.job === job && !dropped) progressed(running.wanted, share);
    },
    ended(end) {
      if (!running) return;
      const { wanted } = running;
      const told = endOf(wanted, end);
      running = null;
      const following = next;
      next = null;
      if (following) begin(following);
      ended(wanted, told);
    },
  });

  return {
    known: (document) => (latest && sameHeat(latest.document, document) ? latest.runs : null),
    isRunning({ id, revision }) {
      const one = running && !dropped ? running.wanted : next;
      return one?.id === id && one.revision === revision;
    },
    start(wanted) {
      if (!running) begin(wanted);
      else {
        dropped = true;
        worker.cancel(running.job);
        next = wanted;
      }
    },
    letShare: (isFree) => worker.letShare(isFree),
    drop() {
      next = null;
      if (!running || dropped) return;
      dropped = true;
      worker.cancel(running.job);
    },
    close: () => worker.close(),
  };
}
