import type { Board, Part } from '../../shared-types/board.ts';
import { bodyOf } from '../../shared-types/board.ts';
import type { Evaluation, PartExposure } from '../../shared-types/evaluation.ts';
import { distanceToPolygon, gapBetween, insidePolygon, rectangleCorners } from '../../shared-types/geometry.ts';
import type { Plan } from '../../shared-types/plan.ts';
import type { TicketRun } from './heat-run.ts';
import { appliedLimits, type Judgement, judge, judgedSolidus, type Limits, type Role } from './judging.ts';
import type { BodyPeaks } from './part-peaks.ts';
import { isRemovedFirst } from './presence.ts';
import { firstAbove, largestRise, secondsAbove } from './series.ts';
import { siteAlloy } from './target-results.ts';
import { bodySeries, energyShares, type SeriesChannel } from './tracking.ts';

/** A rise counts over this window (heat-model.md, section 6). */
const RISE_WINDOW_S = 5;

/** Joints warmer than this in a run that melts none of them: a warm cycle. */
const WARM_CYCLE_C = 150;

/** What one part goes through in one run. */
export type RunExposure = {
  run: TicketRun;
  order: number;
  peaks: BodyPeaks;
  limits: Limits;
  judgement: Judgement;
  solidusC: number;
};

/** Judges a part's peaks in a finished run, by its role there. */
export function runExposure(run: TicketRun, part: Part, order: number, peaks: BodyPeaks): RunExposure {
  const site = run.presence.sites.find((candidate) => candidate.target === part.refdes);
  const role: Role = site ? 'target' : 'neighbour';
  const alloy = site ? siteAlloy(site, run.presence.run.kind) : part.alloy;
  const limits = appliedLimits(part, role);
  const solidusC = judgedSolidus(part, role, alloy);
  return { run, order, peaks, limits, judgement: judge(peaks, limits), solidusC };
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

/** When and how long the part is over the limit that governs in this run. */
function timeOver({ run, order, limits, judgement }: RunExposure): { secondsOver: number; overAtS: number | null } {
  const limit = limits[judgement.governedBy];
  if (!limit) return { secondsOver: 0, overAtS: null };
  const series = bodySeries(run.simulation.tracking, order, CHANNEL[judgement.governedBy]);
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
  const { tracking } = worst.run.simulation;
  const melted = runs.filter((one) => one.peaks.joint.maxC >= one.solidusC);
  const body = highest(runs, (one) => one.peaks.body.maxC).peaks.body;
  const joint = highest(runs, (one) => one.peaks.joint.maxC).peaks.joint;
  return {
    refdes: part.refdes,
    side: part.side,
    worstRunId: worst.run.presence.run.id,
    body,
    skin: highest(runs, (one) => one.peaks.skin.maxC).peaks.skin,
    joint,
    clearanceMm: clearanceMm(part, plan),
    peakAtS: tracking.meanPeakS[worst.order]!,
    ...timeOver(worst),
    riseKPerS: Math.max(...runs.map(riseOf)),
    acrossK: worst.peaks.body.maxC - worst.peaks.body.minC,
    shares: energyShares(tracking, worst.order),
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

function riseOf({ run, order }: RunExposure): number {
  return largestRise(bodySeries(run.simulation.tracking, order, 'body'), RISE_WINDOW_S, run.scene.roomC);
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
