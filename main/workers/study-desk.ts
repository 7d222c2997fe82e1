import type { MainEvent } from '../../shared-types/contract.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { fail, type Result, succeed } from '../../shared-types/problem.ts';
import type { EvaluationWorker, JobEnd, WorkerListener } from './evaluation-worker-handle.ts';
import type { StudyAnswer, StudyOrder } from './worker-messages.ts';

export type StudyEvent = Extract<MainEvent, { name: 'study.progress' }>;
type Ticket = { id: string; revision: number; document: TicketDocument };
type AnyAnswer = Result<StudyAnswer[StudyOrder['about']]>;

/** Long work that a user asks for, on a worker of its own, so that maps and bands go on. One piece at a time. */
export type StudyDesk = {
  /** The answer, when it is there. Work that was under way ends as 'cancelled'. */
  run<O extends StudyOrder>(ticket: Ticket, order: O): Promise<Result<StudyAnswer[O['about']]>>;
  /** Ends the ticket's work; nothing where there is none. */
  cancel(id: string): void;
  close(): Promise<void>;
};

type Waiting = { ticket: Ticket; order: StudyOrder; job: number; resolve: (answer: AnyAnswer) => void };

export function createStudyDesk(
  startWorker: (listener: WorkerListener) => EvaluationWorker,
  tell: (event: StudyEvent) => void,
): StudyDesk {
  let running: Waiting | null = null;
  let next: Waiting | null = null;
  const begin = (one: Waiting) => {
    const { document, revision } = one.ticket;
    // Set before the job runs: a worker that cannot start ends its job at once.
    running = one;
    one.job = worker.run({ revision, phase: 'study', document, study: one.order });
  };
  const give = (one: Waiting | null, answer: AnyAnswer) => one?.resolve(answer);
  const stop = () => {
    give(running, fail('cancelled'));
    if (running) worker.cancel(running.job);
    give(next, fail('cancelled'));
    next = null;
  };
  const worker = startWorker({
    progress(job, share, fit) {
      if (running?.job === job) tell({ name: 'study.progress', id: running.ticket.id, share, ...(fit && { fit }) });
    },
    ended(end) {
      const ended = running;
      running = null;
      give(ended, answerOf(end));
      const following = next;
      next = null;
      if (following) begin(following);
    },
  });
  return {
    run<O extends StudyOrder>(ticket: Ticket, order: O) {
      return new Promise<Result<StudyAnswer[O['about']]>>((resolve) => {
        const one: Waiting = { ticket, order, job: -1, resolve: resolve as Waiting['resolve'] };
        if (!running) return begin(one);
        stop();
        next = one;
      });
    },
    cancel(id) {
      if (running?.ticket.id === id || next?.ticket.id === id) stop();
    },
    async close() {
      stop();
      await worker.close();
    },
  };
}

function answerOf(end: JobEnd): AnyAnswer {
  if (end.kind === 'study') return succeed(end.answer);
  return end.kind === 'failed' ? { ok: false, problem: end.problem } : fail('cancelled');
}
