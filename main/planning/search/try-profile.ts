import type { Board } from '../../../shared-types/board.ts';
import type { HeatRun, Plan } from '../../../shared-types/plan.ts';
import { type Result, succeed } from '../../../shared-types/problem.ts';
import type { SearchBounds, SearchKey, SearchPoint } from '../../../shared-types/profile-search.ts';
import {
  type ProfilePoint,
  type ProfileShape,
  segmentsAt,
  toPeakS,
} from '../../../shared-types/rules/profile-shape.ts';
import { evaluate } from '../../heat/evaluate.ts';
import type { RunMemory } from '../../heat/run-memory.ts';
import { type Judgement, judgeProfile, type Neighbours, type ProfileLimits } from './judge-profile.ts';

/** Everything that the profiles of one search have in common. */
export type SearchSetting = {
  /** Board and plan with this run alone. */
  board: Board;
  plan: Plan;
  run: HeatRun;
  shape: ProfileShape;
  bounds: SearchBounds;
  limits: ProfileLimits;
  neighbours: Neighbours;
  memory: RunMemory;
  isCancelled: () => boolean;
  /** Called once for each evaluation. */
  onTry: () => void;
};

/** A profile as it is told, with every margin and wish behind it. */
export type Tried = Omit<Judgement, 'told'> & { point: SearchPoint };

/** Evaluates one profile of the run and judges it. Problems: as `evaluate`. */
export function tryPoint(setting: SearchSetting, point: ProfilePoint, grid: SearchPoint['grid']): Result<Tried> {
  const { board, plan, run, shape, memory, isCancelled, onTry, neighbours, limits } = setting;
  onTry();
  const segments = segmentsAt(run, shape, point, plan.station);
  const candidate: HeatRun = { ...run, segments };
  const evaluation = evaluate(
    board,
    { ...plan, heatRuns: [candidate] },
    {
      ...{ phase: grid, isCancelled },
      memory: grid === 'coarse' ? memory : undefined,
    },
  );
  if (!evaluation.ok) return evaluation;
  const peakS = toPeakS(segments);
  const { told, margins, slacks } = judgeProfile(candidate, evaluation.value, neighbours, peakS, limits);
  const figures = { belowC: point.belowC, leadS: point.leadS, gasC: point.gasC, gasS: [...point.gasS] };
  const where = { segments, toPeakS: peakS, grid, atBounds: boundsAt(setting, point) };
  return succeed({ point: { ...figures, ...where, ...told }, margins, slacks });
}

function boundsAt({ bounds }: SearchSetting, point: ProfilePoint): SearchKey[] {
  const at = (key: 'belowC' | 'leadS' | 'gasC') => point[key] <= bounds[key].from || point[key] >= bounds[key].to;
  const keys = (['belowC', 'leadS', 'gasC'] as const).filter(at);
  const gasAt = point.gasS.some((seconds) => seconds <= bounds.gasS.from || seconds >= bounds.gasS.to);
  return gasAt ? [...keys, 'gasS'] : keys;
}
