import type { Finding, PartAction } from '../../../shared-types/evaluation.ts';
import type { PlanningContext } from '../context.ts';
import { LIFTS_AFTER_S } from '../published.ts';
import { runNumbersFor } from '../run-numbers.ts';
import { finding, onSite } from './make.ts';

/**
 * A part is heated until it lifts, and that takes as long as it takes: a removal with a neighbour that goes over its limit before
 * the longest usual time has passed. When the target melts after that neighbour is over, the numbers to act on say so.
 */
export function liftingFindings(context: PlanningContext, actions: readonly PartAction[]): Finding[] {
  const told = runNumbersFor(context, actions).filter(({ runId }) => context.runs.get(runId)?.kind === 'removal');
  return told.flatMap(({ siteId, refdes, runId, firstOver, secondsToSpare: spareS }) => {
    if (firstOver === undefined || spareS === undefined || spareS < 0 || spareS >= LIFTS_AFTER_S.worst) return [];
    const figures = {
      ...{ refdes, neighbour: firstOver, spareS, runName: context.runs.get(runId)?.name ?? runId },
      ...{ usualS: LIFTS_AFTER_S.usual, worstS: LIFTS_AFTER_S.worst },
    };
    const weight = spareS < LIFTS_AFTER_S.usual ? 'warn' : 'note';
    return [finding('lifting-may-take-longer', weight, onSite(siteId), figures, LIFTS_AFTER_S.source)];
  });
}
