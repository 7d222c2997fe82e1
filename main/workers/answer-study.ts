import type { Board } from '../../shared-types/board.ts';
import type { Plan } from '../../shared-types/plan.ts';
import type { Result } from '../../shared-types/problem.ts';
import type { FitProgress } from '../../shared-types/study.ts';
import { calibrateRun } from '../heat/calibration/calibrate-run.ts';
import { searchProfile } from '../planning/search/search-profile.ts';
import type { StudyAnswer, StudyOrder } from './worker-messages.ts';

type Options = { isCancelled: () => boolean; onProgress: (share: number, fit?: FitProgress) => void };

/** Does the long work that was ordered, in the worker. */
export function answerStudy(
  board: Board,
  plan: Plan,
  study: StudyOrder,
  options: Options,
): Result<StudyAnswer[StudyOrder['about']]> {
  if (study.about === 'search') return searchProfile(board, plan, study.order, options);
  return calibrateRun(board, plan, study.order, options);
}
