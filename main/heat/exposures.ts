import type { Board, Part } from '../../shared-types/board.ts';
import { bodyOf } from '../../shared-types/board.ts';
import type { Evaluation, PartExposure } from '../../shared-types/evaluation.ts';
import { distanceToPolygon, gapBetween, insidePolygon, rectangleCorners } from '../../shared-types/geometry.ts';
import type { Plan } from '../../shared-types/plan.ts';
import type { TicketRun } from './heat-run.ts';
import { appliedLimits, type Judgement, judge, judgedSolidus, type Limits, type Role } from './judging.ts';
import type { BodyPeaks } from './part-peaks.ts';
import { isRemovedFirst } from './presence.ts';
import { firstAbove, secondsAbove } from './series.ts';
import { siteAlloy } from './target-results.ts';
import { bodySeries, energyShares, type SeriesChannel } from './tracking.ts';

/** A rise counts over this window (heat-model.md, section 6). */
export const RISE_WINDOW_S = 5;

/** Joints warmer than this in a run that melts none of them: a warm cycle. */
const WARM_CYCLE_C = 150;

/** What one part goes through in one run: plain data, so that runs may be made on other threads. */
export type RunExposure = {
  runId: string;
  peaks: BodyPeaks;
  limits: Limits;
  judgement: Judgement;
  solidusC: number;
  peakAtS: number;
  secondsOver: number;
  overAtS: number | null;
  riseKPerS: number;
  shares: PartExposure['shares'];
};

/** Judges a part's peaks in a finished run, by its role there. */
export function runExposure(
  run: TicketRun,
  part: Part,
  order: number,
  peaks: BodyPeaks,
  riseKPerS: number,
): RunExposure {
  const site = run.presence.sites.find((candidate) => candidate.target === part.refdes);
  const role: Role = site ? 'target' : 'neighbour';
  const alloy = site ? siteAlloy(site, run.presence.run.kind) : part.alloy;
  const limits = appliedLimits(part, role);
  const judgement = judge(peaks, limits);
  const { tracking } = run.simulation;
  return {
    runId: run.presence.run.id,
    peaks,
    limits,
    judgement,
    solidusC: judgedSolidus(part, role, alloy),
    peakAtS: tracking.meanPeakS[order]!,
    ...timeOver(run, order, limits, judgement.governedBy),
    riseKPerS,
    shares: energyShares(tracking, order),
  };
}

/** Gap from a part's body to the nearest rework area, mm; 0 inside, infinite without a site. */
export function clearanceMm(part: Part, plan: Plan): number {
  const gaps = plan.sites.map((site) => {
    const area = rectangleCorners(site.area);
    if (part.package.shape !== 'round') return gapBetween(rectangleCorners(bodyOf(part)), area);
    if (insidePolygon(part, area)) return 0;
    return Math.max(0, distanceToPolygon(part, area) - part.package.lengthMm / 2);
  });
  return Math.min(Number.POSITIVE_INFINITY, ...gaps);
}

const CHANNEL: Record<Judgement['governedBy'], SeriesChannel> = { body: 'body', skin: 'skin', joint: 'jointMax' };

/** A series in Float32 is off by less than this, °C. */
const SERIES_ROUNDING_K = 1e-3;

/** The highest value of a channel's series, from the peaks of the body's cells. */
function highestSeen({ simulation }: TicketRun, order: number, channel: SeriesChannel): number {
  const { entries, body, peak } = simulation.state;
  const end = entries.bodyStart[order + 1]!;
  let highest = Number.NEGATIVE_INFINITY;
  for (let entry = entries.bodyStart[order]!; entry < end; entry++) {
    const faceOrBody = channel === 'jointMax' ? peak[entries.face[entry]!]! : body.peak[entry]!;
    highest = Math.max(highest, channel === 'skin' ? body.peakSkin[entry]! : faceOrBody);
  }
  return highest;
}

/** When and how long the part is over the limit that governs in this run; most never are, and no series is read. */
function timeOver(
  run: TicketRun,
  order: number,
  limits: Limits,
  governedBy: Judgement['governedBy'],
): Pick<RunExposure, 'secondsOver' | 'overAtS'> {
  const limit = limits[governedBy];
  const channel = CHANNEL[governedBy];
  if (!limit || highestSeen(run, order, channel) < limit.celsius - SERIES_ROUNDING_K) {
    return { secondsOver: 0, overAtS: null };
  }
  const series = bodySeries(run.simulation.tracking, order, channel);
  const { roomC } = run.scene;
  return {
    secondsOver: secondsAbove(series, limit.celsius, roomC),
    overAtS: firstAbove(series, limit.celsius, roomC),
  };
}

function reflowOf(runs: readonly RunExposure[]): PartExposure['reflow'] {
  if (runs.some((one) => one.peaks.joint.minC >= one.solidusC)) return 'whole';
  return runs.some((one) => one.peaks.joint.maxC >= one.solidusC) ? 'partly' : 'none';
}

/** The run in which a figure is highest. */
function highest(runs: readonly RunExposure[], figure: (one: RunExposure) => number): RunExposure {
  return runs.reduce((best, next) => (figure(next) > figure(best) ? next : best));
}

/** The worst of a part over its runs; at least one run is needed. */
export function worstExposure(part: Part, plan: Plan, runs: readonly RunExposure[]): PartExposure {
  const worst = runs.reduce((least, next) => (next.judgement.marginK < least.judgement.marginK ? next : least));
  const melted = runs.filter((one) => one.peaks.joint.maxC >= one.solidusC);
  const body = highest(runs, (one) => one.peaks.body.maxC).peaks.body;
  const joint = highest(runs, (one) => one.peaks.joint.maxC).peaks.joint;
  return {
    refdes: part.refdes,
    side: part.side,
    worstRunId: worst.runId,
    body,
    skin: highest(runs, (one) => one.peaks.skin.maxC).peaks.skin,
    joint,
    clearanceMm: clearanceMm(part, plan),
    peakAtS: worst.peakAtS,
    secondsOver: worst.secondsOver,
    overAtS: worst.overAtS,
    riseKPerS: Math.max(...runs.map((one) => one.riseKPerS)),
    acrossK: worst.peaks.body.maxC - worst.peaks.body.minC,
    shares: worst.shares,
    ifShielded: {
      bodyMaxC: Math.max(...runs.map((one) => one.peaks.shieldedBodyC)),
      skinMaxC: Math.max(...runs.map((one) => one.peaks.shieldedSkinC)),
      jointMaxC: joint.maxC,
    },
    limits: worst.limits,
    margins: worst.judgement.margins,
    marginK: worst.judgement.marginK,
    governedBy: worst.judgement.governedBy,
    bandK: null,
    state: worst.judgement.marginK > 0 ? 'clear' : worst.judgement.marginK < 0 ? 'over' : 'unsure',
    reflow: reflowOf(runs),
    reflows: melted.length,
    warmCycles: runs.filter((one) => !melted.includes(one) && one.peaks.joint.maxC >= WARM_CYCLE_C).length,
    solidusC: worst.solidusC,
  };
}

/** Why parts were not evaluated: empty positions, parts taken off first, parts beside the board. */
export function notEvaluated(board: Board, plan: Plan, evaluated: ReadonlySet<string>): Evaluation['notEvaluated'] {
  return board.parts.flatMap((part) => {
    if (evaluated.has(part.refdes)) return [];
    if (!part.fitted) return { refdes: part.refdes, reason: 'not-fitted' as const };
    const target = plan.sites.some((site) => site.target === part.refdes);
    const removed = target || isRemovedFirst(plan, part.refdes);
    return { refdes: part.refdes, reason: removed ? ('removed' as const) : ('off-board' as const) };
  });
}
