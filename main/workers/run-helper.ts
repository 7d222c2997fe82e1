import { MessageChannel, receiveMessageOnPort, Worker } from 'node:worker_threads';
import type { Board } from '../../shared-types/board.ts';
import type { Result } from '../../shared-types/problem.ts';
import type { FinishedRun } from '../heat/finished-run.ts';
import type { SharedTask } from '../heat/share-runs.ts';
import { ANSWERS, type HelperData, type RunsMessage, SIGN_OF_LIFE, type TaskMessage } from './run-helper-messages.ts';

/** A helper that gives no sign for so long is given up, and its runs are made by who waits for them. */
const LOST_AFTER_MS = 5000;
const LOOK_EVERY_MS = 100;
/** After so many given up, none is born any more. */
const MOST_LOST = 2;

/** A second thread for heat runs. Who shares waits without returning to its event loop: the heat code is synchronous. */
export type RunHelper = {
  /** Begins a task under a job's number. What it returns waits for the runs; null: the helper went lost. */
  share(job: number, task: SharedTask): () => Result<FinishedRun[]> | null;
  close(): void;
};

type Living = { worker: Worker; port: MessageChannel['port1']; signals: Int32Array; board: Board | null };

/**
 * @param file the built worker, which serves as a helper when it is born with the data of one
 * @param cancelledUpTo shared memory that holds the highest job that was cancelled
 */
export function createRunHelper(
  file: string | URL,
  cancelledUpTo: SharedArrayBuffer,
  lostAfterMs = LOST_AFTER_MS,
): RunHelper {
  let living: Living | null = null;
  let lastSerial = 0;
  let lost = 0;

  const birth = (): Living => {
    const { port1, port2 } = new MessageChannel();
    const signals = new SharedArrayBuffer(8);
    const workerData: HelperData = { port: port2, signals, cancelledUpTo };
    const worker = new Worker(file, { workerData, transferList: [port2] });
    const gone = () => {
      if (living?.worker === worker) living = null;
    };
    worker.on('error', gone);
    worker.on('exit', gone);
    // Neither keeps its program alive: whoever shares waits for the answer itself.
    worker.unref();
    port1.unref();
    return { worker, port: port1, signals: new Int32Array(signals), board: null };
  };
  const giveUp = (given: Living) => {
    if (living === given) living = null;
    void given.worker.terminate();
  };
  const collect = (from: Living, serial: number): Result<FinishedRun[]> | null => {
    let seen = Atomics.load(from.signals, SIGN_OF_LIFE);
    let seenAt = performance.now();
    for (;;) {
      const answers = Atomics.load(from.signals, ANSWERS);
      for (let came = receiveMessageOnPort(from.port); came; came = receiveMessageOnPort(from.port)) {
        const message = came.message as RunsMessage;
        if (message.serial === serial) return message.runs;
      }
      Atomics.wait(from.signals, ANSWERS, answers, LOOK_EVERY_MS);
      const sign = Atomics.load(from.signals, SIGN_OF_LIFE);
      if (sign !== seen) seenAt = performance.now();
      seen = sign;
      if (performance.now() - seenAt < lostAfterMs) continue;
      lost += 1;
      giveUp(from);
      return null;
    }
  };

  return {
    share(job, { board, ...task }) {
      if (lost >= MOST_LOST) return () => null;
      living ??= birth();
      const chosen = living;
      lastSerial += 1;
      const serial = lastSerial;
      chosen.port.postMessage({
        serial,
        job,
        task,
        board: chosen.board === board ? null : board,
      } satisfies TaskMessage);
      chosen.board = board;
      return () => collect(chosen, serial);
    },
    close() {
      if (living) giveUp(living);
    },
  };
}
