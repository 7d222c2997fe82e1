import type { Board } from '../../shared-types/board.ts';
import type { Assessment, CurveSet, HeatMoment } from '../../shared-types/evaluation.ts';
import type { Plan } from '../../shared-types/plan.ts';
import type { Problem, Result } from '../../shared-types/problem.ts';
import type { SearchAnswer, SearchOrder } from '../../shared-types/profile-search.ts';
import type { CalibrationAnswer, CalibrationOrder, FitProgress } from '../../shared-types/study.ts';
import type { PlannedBands } from '../planning/band-numbers.ts';

export type Phase = 'coarse' | 'fine';

/** Long work that a user asks for beside the maps. */
export type StudyOrder = { about: 'calibration'; order: CalibrationOrder } | { about: 'search'; order: SearchOrder };
export type StudyAnswer = { calibration: CalibrationAnswer; search: SearchAnswer };

/** What a job is asked for: one of the two maps, the runs that bands are made of, or long work on the ticket. */
export type JobPhase = Phase | 'bands' | 'study';

/** To the worker. `board` is null when it is the one of the job before. */
export type RunMessage = {
  kind: 'run';
  job: number;
  revision: number;
  phase: JobPhase;
  board: Board | null;
  plan: Plan;
  study?: StudyOrder;
};

/** What may be asked of the last fine evaluation while no job runs. */
export type PlaybackQuestion =
  | { about: 'moment'; revision: number; runId: string; atS: number }
  | { about: 'curves'; revision: number; runId: string; refdes: string[]; tagIds: string[] };
export type PlaybackAnswer = { moment: HeatMoment; curves: CurveSet };
export type AskMessage = { kind: 'ask'; serial: number; question: PlaybackQuestion };

/** From the worker. `ready` is the ping it starts with. */
export type WorkerMessage =
  | { kind: 'ready' }
  | { kind: 'progress'; job: number; share: number; fit?: FitProgress }
  | { kind: 'result'; job: number; assessment: Assessment }
  | { kind: 'answer'; serial: number; result: Result<PlaybackAnswer[PlaybackQuestion['about']]> }
  | { kind: 'bands'; job: number; runs: PlannedBands }
  | { kind: 'study'; job: number; answer: StudyAnswer[StudyOrder['about']] }
  | { kind: 'failed'; job: number; problem: Problem };

/** Places in the memory that a worker shares with main: the highest job that was cancelled; 1 while a second core is free. */
export const CANCELLED_UP_TO = 0;
export const SECOND_CORE_FREE = 1;
export const SIGNALS_BYTES = 8;

/** What the worker is born with: that memory. */
export type WorkerData = { signals: SharedArrayBuffer };
