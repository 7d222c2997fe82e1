import type { Board } from '../../../shared-types/board.ts';
import type { Plan } from '../../../shared-types/plan.ts';
import { fail, type Result, succeed } from '../../../shared-types/problem.ts';
import type { SearchAnswer, SearchOrder, SearchPoint } from '../../../shared-types/profile-search.ts';
import { shapeOf } from '../../../shared-types/rules/profile-shape.ts';
import { searchWords as words } from '../../../shared-types/words/profile-search.ts';
import { createRunMemory } from '../../heat/run-memory.ts';
import { bandRuns } from '../../heat/uncertainty/band-runs.ts';
import { beliefOf } from '../../heat/uncertainty/calibrated.ts';
import { withBands } from '../../heat/uncertainty/with-bands.ts';
import { LARGEST_RAMP_K_PER_S } from '../published.ts';
import { bestOnFine } from './confirm.ts';
import { explore, frontOf } from './explore.ts';
import { neighboursOf, weighedMiss, withBandsOf } from './judge-profile.ts';
import { onlyRun } from './only-run.ts';
import { type SearchSetting, tryPoint } from './try-profile.ts';

export type SearchOptions = { isCancelled?: () => boolean; onProgress?: (share: number) => void };

/** Room for the snapshots of a few hundred profiles that share their preheat. */
const MEMORY_BYTES = 192e6;
/** Evaluations that a usual search takes; its progress is told by them. */
const USUAL_TRIES = 150;

/**
 * The profile of a run, in given bounds, whose targets are in their windows with the largest worst margin of a
 * neighbour; and what less time would cost. Deterministic. Nothing is changed.
 * Problems: no-heat-run, invalid-field (a run without gas after a preheat), those of `evaluate`, cancelled.
 */
export function searchProfile(
  board: Board,
  plan: Plan,
  { runId, bounds }: SearchOrder,
  { isCancelled = () => false, onProgress }: SearchOptions = {},
): Result<SearchAnswer> {
  const run = plan.heatRuns.find((one) => one.id === runId);
  if (!run) return fail('no-heat-run', { where: runId });
  const shape = shapeOf(run);
  if (!shape) return fail('invalid-field', { where: run.name, detail: { reason: words.noShape, todo: words.addGas } });
  let tries = 0;
  const onTry = () => {
    tries += 1;
    onProgress?.(1 - Math.exp((-1.5 * tries) / USUAL_TRIES));
  };
  const setting: SearchSetting = {
    ...{ ...onlyRun(board, plan, run), run, shape, bounds, isCancelled, onTry, memory: createRunMemory(MEMORY_BYTES) },
    limits: { toPeakS: bounds.toPeakS, riseKPerS: LARGEST_RAMP_K_PER_S.value, offSkinC: Number.POSITIVE_INFINITY },
    neighbours: neighboursOf(board, run, plan),
  };
  const banded = plan.station.calibration !== null;
  if (banded) {
    const bands = bandsFor(setting);
    if (!bands.ok) return bands;
    setting.neighbours = bands.value;
  }
  const first = tryPoint(setting, shape.present, 'coarse');
  if (!first.ok) return first;
  // The present profile is no reason to find nothing: what it does already, another may do as well.
  setting.limits.riseKPerS = Math.max(setting.limits.riseKPerS, Math.ceil(first.value.point.riseKPerS * 10) / 10);
  setting.limits.offSkinC = Math.max(...first.value.point.targets.map(({ skinC }) => Math.ceil(skinC)));
  const present = tryPoint(setting, shape.present, 'fine');
  if (!present.ok) return present;
  const tried = explore(setting);
  if (!tried.ok) return tried;
  const front = frontOf(tried.value);
  const found = bestOnFine(setting, tried.value);
  if (!found.ok) return found;
  const best = betterOf(found.value, inBounds(setting) ? present.value.point : null);
  const nearest = tried.value.reduce((a, b) => (weighedMiss(b.slacks) < weighedMiss(a.slacks) ? b : a));
  onProgress?.(1);
  return succeed({
    ...{ runId, present: present.value.point, best, front, tried: tries, banded },
    nearest: front.length > 0 ? null : nearest.point,
    leftOut: setting.neighbours.leftOut,
    riseLimitKPerS: setting.limits.riseKPerS,
  });
}

/** True when the present profile is one of those that the search may offer. */
function inBounds({ bounds, shape: { present } }: SearchSetting): boolean {
  const holds = ({ from, to }: { from: number; to: number }, value: number) => from <= value && value <= to;
  const own = (['belowC', 'leadS', 'gasC'] as const).every((key) => holds(bounds[key], present[key]));
  return own && present.gasS.every((seconds) => holds(bounds.gasS, seconds));
}

/** Nothing is offered that the present profile does as well. */
function betterOf(found: SearchPoint | null, present: SearchPoint | null): SearchPoint | null {
  if (!present || present.misses.length > 0) return found;
  return found && (found.marginK ?? 0) > (present.marginK ?? 0) ? found : present;
}

/** The judged figures with their bands: of the present profile, taken to hold for those near it. */
function bandsFor({ board, plan, neighbours, memory, isCancelled }: SearchSetting) {
  const runs = bandRuns(board, plan, beliefOf(board, plan), {
    ...{ memory, isCancelled },
  });
  return runs.ok ? succeed(withBandsOf(neighbours, withBands(runs.value.base, runs.value))) : runs;
}
