import type { Board } from '../../shared-types/board.ts';
import { fail, type Result } from '../../shared-types/problem.ts';
import { evaluateRuns } from '../heat/evaluate.ts';
import type { FinishedRun } from '../heat/finished-run.ts';
import { createRunMemory } from '../heat/run-memory.ts';
import { ANSWERS, type HelperData, type RunsMessage, SIGN_OF_LIFE, type TaskMessage } from './run-helper-messages.ts';
import { buffersIn } from './transferable.ts';

/** The work of a helper: it makes the heat runs that it is told, one task after the other. */
export function helpWithRuns({ port, signals: shared, cancelledUpTo }: HelperData): void {
  const signals = new Int32Array(shared);
  const cancelled = new Int32Array(cancelledUpTo);
  const memory = createRunMemory();
  let board: Board | null = null;

  const live = () => void Atomics.add(signals, SIGN_OF_LIFE, 1);
  const work = ({ job, task }: TaskMessage, present: Board): Result<FinishedRun[]> => {
    const { plan, phase, steps, places } = task;
    const options = {
      ...{ phase, steps, memory: phase === 'coarse' ? memory : undefined, onProgress: live },
      isCancelled: () => Atomics.load(cancelled, 0) >= job,
    };
    try {
      return evaluateRuns(present, plan, options, places);
    } catch (error) {
      console.error('heat runs:', error);
      return fail('evaluation-failed', { detail: { reason: (error as Error).name } });
    }
  };

  port.on('message', (message: TaskMessage) => {
    live();
    board = message.board ?? board;
    if (!board) return;
    const answer: RunsMessage = { serial: message.serial, runs: work(message, board) };
    port.postMessage(answer, [...buffersIn(answer)]);
    Atomics.add(signals, ANSWERS, 1);
    Atomics.notify(signals, ANSWERS);
  });
}
