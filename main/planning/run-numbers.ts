import type { PartAction, PartExposure, RunNumbers, RunResult, TargetResult } from '../../shared-types/evaluation.ts';
import type { HeatRun } from '../../shared-types/plan.ts';
import type { PlanningContext } from './context.ts';
import { bodyJudgement, jointJudgement } from './judgement.ts';
import { firstGasSegment, gasAt } from './segments.ts';

type Abort = Pick<RunNumbers, 'abortAtC' | 'abortOn' | 'abortFor'>;
type FirstOver = { refdes: string; atS: number };

/**
 * When a part first passes the limit that its action is about, s. Without that figure: its peak less the time spent
 * over it, which is never later than the truth, as part of that time may lie after the peak. Null: never over, or the
 * evaluation tells the time of another limit (joints pass the preset for neighbours long before a body is over).
 */
function overAt(action: PartAction, exposure: PartExposure): number | null {
  const judgedOn = action.figures.judgedOn ?? 'joint';
  if (judgedOn !== exposure.governedBy) return null;
  if (exposure.overAtS !== undefined) return exposure.overAtS;
  return exposure.secondsOver > 0 ? Math.max(0, exposure.peakAtS - exposure.secondsOver) : null;
}

const OVER: ReadonlySet<PartAction['action']> = new Set(['remove-first', 'shield', 'cannot-be-saved']);

/** The first neighbour that passes its limit in this run and that the plan does nothing about yet. */
function firstOver(context: PlanningContext, runId: string, actions: readonly PartAction[]): FirstOver | null {
  let first: FirstOver | null = null;
  for (const action of actions) {
    const exposure = context.exposures.get(action.refdes);
    if (!exposure || action.done || !OVER.has(action.action) || exposure.worstRunId !== runId) continue;
    const atS = overAt(action, exposure);
    if (atS !== null && (!first || atS < first.atS)) first = { refdes: action.refdes, atS };
  }
  return first;
}

/** Board temperature at the site at a time, C: from the series, else along straight lines between the segments' ends. */
export function siteReadingAt(result: RunResult, roomC: number, atS: number): number {
  const { siteSeries, segments } = result;
  if (siteSeries && siteSeries.celsius.length > 0) {
    const index = Math.min(siteSeries.celsius.length - 1, Math.max(0, Math.round(atS / siteSeries.stepS)));
    return siteSeries.celsius[index];
  }
  let before = { endsAtS: 0, siteC: roomC };
  for (const segment of segments) {
    if (atS <= segment.endsAtS) {
      const share = (atS - before.endsAtS) / (segment.endsAtS - before.endsAtS);
      return before.siteC + share * (segment.siteC - before.siteC);
    }
    before = segment;
  }
  return before.siteC;
}

type WatchLimit = { celsius: number; roomK: number };

/**
 * What a thermocouple on a neighbour may not pass: body and skin limits, and the joints' where they are to stay solid.
 * Joints that the plan lets pass the preset for neighbours are held to their solidus instead.
 */
function limitsOnPart(context: PlanningContext, refdes: string, action: PartAction | undefined): WatchLimit[] {
  const exposure = context.exposures.get(refdes);
  if (!exposure || context.siteOfTarget.has(refdes)) return [];
  const heat = bodyJudgement(exposure);
  const limits = heat ? [{ celsius: heat.limit.celsius, roomK: heat.marginK }] : [];
  const joint = jointJudgement(exposure);
  const mayMelt = action?.action === 'leave-will-reflow' || action?.action === 'secure';
  if (!joint || mayMelt) return limits;
  const passes = joint.marginK < 0 && exposure.reflow === 'none';
  const celsius = passes ? exposure.solidusC : joint.limit.celsius;
  return [...limits, { celsius, roomK: celsius - exposure.joint.maxC }];
}

/**
 * 'Off if W3 reads N'. Where a neighbour goes over: its own watch point, else the site's reading at that time. Where
 * none does: the watched neighbour with the least margin.
 */
function abortOf(
  context: PlanningContext,
  result: RunResult,
  actions: ReadonlyMap<string, PartAction>,
  over: FirstOver | null,
): Abort {
  const watched = result.watch.flatMap((reading) => {
    const tag = context.plan.tags.find((candidate) => candidate.id === reading.tagId);
    if (tag?.kind !== 'watchPoint' || tag.refdes === null) return [];
    const { refdes } = tag;
    return limitsOnPart(context, refdes, actions.get(refdes)).map((limit) => ({ name: reading.name, refdes, limit }));
  });
  const telling = over ? watched.filter((entry) => entry.refdes === over.refdes) : watched;
  if (telling.length > 0) {
    const tightest = telling.reduce((a, b) => (b.limit.roomK < a.limit.roomK ? b : a));
    return { abortAtC: tightest.limit.celsius, abortOn: tightest.name, abortFor: tightest.refdes };
  }
  if (!over) return {};
  const abortAtC = siteReadingAt(result, context.plan.station.roomC, over.atS);
  return { abortAtC, abortOn: 'site', abortFor: over.refdes };
}

/**
 * When the gas starts at a site, and what the board reads then: at the run's first site the reading there, at a later
 * one the board under its target. Gas from the very start has nothing to wait for.
 */
function startOf(run: HeatRun, target: TargetResult, result: RunResult): Pick<RunNumbers, 'startGasAtC' | 'gasFromS'> {
  const gas = gasAt(run, target.siteId);
  if (!gas) return {};
  const { firstSegment, fromS } = gas;
  if (firstSegment === 0) return { gasFromS: fromS };
  const first = firstSegment === firstGasSegment(run) && target.siteId === run.siteIds[0];
  const startGasAtC = first ? result.segments[firstSegment - 1]?.siteC : target.boardAtGasC;
  return { gasFromS: fromS, ...(startGasAtC !== undefined && { startGasAtC }) };
}

/** Numbers to act on, one entry for each target of each run (heat model page, section 7). */
export function runNumbersFor(context: PlanningContext, actions: readonly PartAction[]): RunNumbers[] {
  const byPart = new Map(actions.map((action) => [action.refdes, action]));
  return context.evaluation.runs.flatMap((result) => {
    const run = context.runs.get(result.runId);
    if (!run) return [];
    const over = firstOver(context, result.runId, actions);
    const abort = abortOf(context, result, byPart, over);
    return result.targets.map((target): RunNumbers => {
      const gas = gasAt(run, target.siteId);
      const moltenAtS = target.verdict === 'melts' ? target.moltenAtS : null;
      return {
        runId: result.runId,
        siteId: target.siteId,
        refdes: target.refdes,
        ...startOf(run, target, result),
        ...(moltenAtS !== null && { moltenAtS }),
        ...(moltenAtS !== null && gas && { notMoltenByS: Math.max(gas.untilS, moltenAtS) }),
        ...abort,
        ...(over && { firstOver: over.refdes }),
        ...(over && moltenAtS !== null && { secondsToSpare: over.atS - moltenAtS }),
      };
    });
  });
}
