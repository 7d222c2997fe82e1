import type {
  Assessment,
  RunNumbers,
  RunResult,
  TargetResult,
  WatchReading,
} from '../../../shared-types/evaluation.ts';
import type { HeatRun, Plan } from '../../../shared-types/plan.ts';
import type { TagOf } from '../../../shared-types/tags.ts';

/** A thermocouple and the figure it is expected to read. */
export type Reading = { watch: string; celsius: number; bandK?: number };

/** What the box of one heat run says: the numbers planning found, and the predicted readings that go with them. Times in s from the run's start. */
export type ActNumbers = {
  run: HeatRun;
  result: RunResult | null;
  seconds: number;
  gasOnAtS: number | null;
  gasOffAtS: number | null;
  /** Expected reading of the thermocouple nearest to the first site when the gas starts and when it ends. */
  readsAtGasOn: Reading | null;
  readsAtGasOff: Reading | null;
  /** Numbers to act on, one entry for each target of the run. */
  numbers: RunNumbers[];
  /** Targets that do not melt whole in a run that has to melt them. */
  unmelted: TargetResult[];
  /** Parts beyond their limit whose worst run this is; not those that are left to reflow, which are past it by intent. */
  overParts: { refdes: string; marginK: number }[];
};

/** Runs in which the target's joints have to melt. */
export const mustMelt = (run: HeatRun): boolean => run.kind === 'removal' || run.kind === 'installation';

/** When the planned gas at a site ends, s; null: none blows there. A segment without a site of its own serves the run's first. */
export function gasEndsAt(run: HeatRun, siteId: string): number | null {
  const ends = segmentEnds(run);
  const last = run.segments.findLastIndex(
    (segment) => segment.gas !== null && (segment.siteId ?? run.siteIds[0]) === siteId,
  );
  return last < 0 ? null : ends[last];
}

/** End of each segment, s from the start of the run. */
export function segmentEnds(run: HeatRun): number[] {
  let at = 0;
  return run.segments.map((segment) => {
    at += segment.seconds;
    return at;
  });
}

/** The figures to act on for every heat run of the plan, in the plan's order. */
export const actNumbersOf = (plan: Plan, assessment: Assessment): ActNumbers[] =>
  plan.heatRuns.map((run) => actNumbers(plan, assessment, run));

function actNumbers(plan: Plan, assessment: Assessment, run: HeatRun): ActNumbers {
  const result = assessment.evaluation.runs.find((one) => one.runId === run.id) ?? null;
  const ends = segmentEnds(run);
  const first = run.segments.findIndex((segment) => segment.gas !== null);
  const last = run.segments.findLastIndex((segment) => segment.gas !== null);
  const targets = result?.targets ?? [];
  const ordinary = new Set(
    assessment.actions.filter(({ action }) => action.startsWith('leave')).map(({ refdes }) => refdes),
  );
  const reading = nearestReading(plan, run, result);
  return {
    run,
    result,
    seconds: ends.at(-1) ?? 0,
    gasOnAtS: first < 0 ? null : first === 0 ? 0 : ends[first - 1],
    gasOffAtS: last < 0 ? null : ends[last],
    readsAtGasOn: first <= 0 ? null : readingAt(reading, first - 1),
    readsAtGasOff: last < 0 ? null : readingAt(reading, last),
    numbers: assessment.runNumbers.filter((numbers) => numbers.runId === run.id),
    unmelted: mustMelt(run) ? targets.filter((target) => target.verdict !== 'melts') : [],
    overParts: assessment.evaluation.parts
      .filter((part) => part.state === 'over' && part.worstRunId === run.id && !ordinary.has(part.refdes))
      .map(({ refdes, marginK }) => ({ refdes, marginK }))
      .sort((a, b) => a.marginK - b.marginK),
  };
}

function readingAt(reading: WatchReading | null, segment: number): Reading | null {
  const celsius = reading?.atSegmentEndC[segment];
  if (!reading || celsius === undefined) return null;
  return { watch: reading.name, celsius, bandK: reading.atSegmentEndBandK?.[segment] };
}

/** The thermocouple nearest to the run's first site; one on the worked side goes before one on the other. */
function nearestReading(plan: Plan, run: HeatRun, result: RunResult | null): WatchReading | null {
  const site = plan.sites.find((one) => one.id === run.siteIds[0]);
  if (!site || !result) return null;
  const byDistance = plan.tags
    .filter((tag): tag is TagOf<'watchPoint'> => tag.kind === 'watchPoint')
    .map((tag) => ({
      tag,
      distance: Math.hypot(tag.x - site.area.x, tag.y - site.area.y) + (tag.side === site.side ? 0 : 1000),
    }))
    .sort((a, b) => a.distance - b.distance);
  for (const { tag } of byDistance) {
    const reading = result.watch.find((one) => one.tagId === tag.id);
    if (reading) return reading;
  }
  return null;
}
