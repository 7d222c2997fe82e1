import type { Board } from '../../shared-types/board.ts';
import type { Assessment } from '../../shared-types/evaluation.ts';
import type { Plan } from '../../shared-types/plan.ts';
import type { Problem } from '../../shared-types/problem.ts';

export type Phase = 'coarse' | 'fine';

/** To the worker. `board` is null when it is the one of the job before. */
export type RunMessage = {
  kind: 'run';
  job: number;
  revision: number;
  phase: Phase;
  board: Board | null;
  plan: Plan;
};

/** From the worker. `ready` is the ping it starts with. */
export type WorkerMessage =
  | { kind: 'ready' }
  | { kind: 'progress'; job: number; share: number }
  | { kind: 'result'; job: number; assessment: Assessment }
  | { kind: 'failed'; job: number; problem: Problem };

/** What the worker is born with: shared memory that holds the highest job that was cancelled. */
export type WorkerData = { cancelledUpTo: SharedArrayBuffer };
