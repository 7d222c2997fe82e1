import type { MessagePort } from 'node:worker_threads';
import type { Board } from '../../shared-types/board.ts';
import type { Result } from '../../shared-types/problem.ts';
import type { FinishedRun } from '../heat/finished-run.ts';
import type { SharedTask } from '../heat/share-runs.ts';

/** To the helper. `board` is null when it is the one of the task before; `job`: what a cancel names. */
export type TaskMessage = { serial: number; job: number; task: Omit<SharedTask, 'board'>; board: Board | null };

/** From the helper. */
export type RunsMessage = { serial: number; runs: Result<FinishedRun[]> };

/** Places in the shared signals: they go up with every sign of life, and with every answer. */
export const SIGN_OF_LIFE = 0;
export const ANSWERS = 1;

/** What a helper is born with: its way to and fro, signals, and shared memory that holds the highest cancelled job. */
export type HelperData = { port: MessagePort; signals: SharedArrayBuffer; cancelledUpTo: SharedArrayBuffer };
