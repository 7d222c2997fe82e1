import { alloyById } from '../library/alloys.ts';
import type { HeatRun, Plan, Station } from '../plan.ts';
import type { Segment } from '../profile.ts';
import type { SearchBounds } from '../profile-search.ts';

/** The figures of a profile that a search moves. */
export type ProfilePoint = { belowC: number; leadS: number; gasC: number; gasS: readonly number[] };

/** A run's segments by their task; null: it has no gas, or begins with it. */
export type ProfileShape = {
  lead: readonly number[];
  /** Blowing segments by site, in the order in which the sites are blown at first. */
  gas: readonly { siteId: string; segments: readonly number[] }[];
  present: ProfilePoint;
};

const secondsIn = (run: HeatRun, indices: readonly number[]): number =>
  indices.reduce((sum, index) => sum + run.segments[index]!.seconds, 0);

export function shapeOf(run: HeatRun): ProfileShape | null {
  if (run.kind !== 'removal' && run.kind !== 'installation') return null;
  const first = run.segments.findIndex((segment) => segment.gas);
  if (first < 1) return null;
  const lead = Array.from({ length: first }, (_, index) => index);
  const bySite = new Map<string, number[]>();
  run.segments.forEach((segment, index) => {
    const siteId = segment.siteId ?? run.siteIds[0];
    if (segment.gas && siteId) bySite.set(siteId, [...(bySite.get(siteId) ?? []), index]);
  });
  const gas = [...bySite].map(([siteId, segments]) => ({ siteId, segments }));
  const last = gas[0]?.segments.at(-1);
  if (last === undefined) return null;
  return {
    ...{ lead, gas },
    present: {
      belowC: run.segments[first - 1]!.preheater.endC,
      leadS: secondsIn(run, lead),
      gasC: run.segments[last]!.gas!.endC,
      gasS: gas.map(({ segments }) => secondsIn(run, segments)),
    },
  };
}

/** Seconds shared out in the proportion of the present ones, whole, each at least 1. */
function sharedOut(present: readonly number[], total: number): number[] {
  const sum = present.reduce((all, one) => all + one, 0);
  const each = present.map((seconds) => Math.max(1, Math.round((seconds / sum) * total)));
  const others = each.slice(0, -1).reduce((all, one) => all + one, 0);
  return [...each.slice(0, -1), Math.max(1, total - others)];
}

/** The last stretch takes what the ones before it leave; they shrink only where the whole is shorter than they are. */
function gasSeconds(present: readonly number[], total: number): number[] {
  const before = present.slice(0, -1).reduce((all, one) => all + one, 0);
  return total > before ? [...present.slice(0, -1), total - before] : sharedOut(present, total);
}

/** Figures this little above the room are a preheater that is off, K. */
const OFF_K = 30;

/** The run's segments with the figures of a point; the preheater stays within what its station can. */
export function segmentsAt(run: HeatRun, shape: ProfileShape, point: ProfilePoint, station: Station): Segment[] {
  const { present, lead, gas } = shape;
  const heated = new Set([...lead, ...gas.flatMap(({ segments }) => segments)]);
  const most = Math.max(station.preheater.largestC, present.belowC);
  const below = (celsius: number) =>
    celsius <= station.roomC + OFF_K
      ? celsius
      : Math.min(most, Math.max(station.roomC, celsius + point.belowC - present.belowC));
  const seconds = new Map<number, number>();
  const put = (indices: readonly number[], values: readonly number[]) => {
    indices.forEach((index, place) => {
      seconds.set(index, values[place]!);
    });
  };
  const presentOf = (indices: readonly number[]) => indices.map((index) => run.segments[index]!.seconds);
  if (point.leadS !== present.leadS) put(lead, sharedOut(presentOf(lead), point.leadS));
  gas.forEach(({ segments }, place) => {
    put(segments, gasSeconds(presentOf(segments), point.gasS[place]!));
  });
  const shiftC = point.gasC - present.gasC;
  return run.segments.map((segment, index) => {
    if (!heated.has(index)) return segment;
    const { startC, endC } = segment.preheater;
    return {
      ...segment,
      seconds: seconds.get(index) ?? segment.seconds,
      preheater: { startC: below(startC), endC: below(endC) },
      gas: segment.gas && {
        startC: Math.max(station.roomC, segment.gas.startC + shiftC),
        endC: Math.max(station.roomC, segment.gas.endC + shiftC),
      },
    };
  });
}

/** From the start of the run to the end of its last gas, s. */
export function toPeakS(segments: readonly Segment[]): number {
  const last = segments.findLastIndex((segment) => segment.gas);
  return segments.slice(0, last + 1).reduce((sum, segment) => sum + segment.seconds, 0);
}

const tens = (value: number): number => Math.round(value / 10) * 10;

/** J-STD-020 Table 5-2: 25 C to peak in at most 8 min (lead-free) or 6 min (tin-lead), s. */
function longestToPeakS({ sites }: Plan, run: HeatRun): number {
  const own = sites.filter(({ id }) => run.siteIds.includes(id));
  const alloys = own.map((site) => alloyById(run.kind === 'installation' ? site.alloyOn : site.alloyOff));
  return alloys.some((alloy) => alloy && !alloy.leadFree) ? 360 : 480;
}

/** Bounds to begin from: round about the present profile, and no longer than the standard's time to the peak or the present one. */
export function usualBounds(run: HeatRun, shape: ProfileShape, plan: Plan): SearchBounds {
  const { station } = plan;
  const { belowC, leadS, gasC, gasS } = shape.present;
  const most = Math.max(station.preheater.largestC, belowC);
  return {
    belowC: { from: Math.min(belowC, tens(belowC - 60)), to: Math.max(belowC, Math.min(most, tens(belowC + 60))) },
    leadS: { from: Math.min(leadS, tens(leadS * 0.7)), to: Math.max(leadS, tens(leadS * 1.4)) },
    gasC: { from: Math.min(gasC, tens(gasC - 60)), to: Math.max(gasC, tens(gasC + 60)) },
    gasS: { from: Math.min(10, ...gasS), to: Math.max(150, tens(Math.max(...gasS) * 1.5)) },
    toPeakS: Math.max(longestToPeakS(plan, run), Math.ceil(toPeakS(run.segments) / 10) * 10),
  };
}
