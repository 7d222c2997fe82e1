import type { Board, Part } from '../../../shared-types/board.ts';
import type { Evaluation, JudgedOn, PartExposure, TargetResult } from '../../../shared-types/evaluation.ts';
import { classById } from '../../../shared-types/library/classes.ts';
import type { HeatRun, Plan } from '../../../shared-types/plan.ts';
import type { MissCode, SearchPoint } from '../../../shared-types/profile-search.ts';
import { isLarge } from '../judgement.ts';
import { ABOVE_LIQUIDUS_S, LIFTING_S, LONGEST_ABOVE_LIQUIDUS_S, UNDERFILL_BELOW_SOLIDUS_K } from '../published.ts';

/** One figure of a neighbour that a profile is judged by; `lessK`: what is taken off its limit. */
export type JudgedFigure = { refdes: string; judgedOn: JudgedOn; lessK: number; bandK: number };

/** The figures judged, and the parts that are not: they come off before any heat. */
export type Neighbours = { figures: JudgedFigure[]; packages: ReadonlySet<string>; leftOut: string[] };

/** Joints that melt and are left so: small reflow-rated parts. All others are to stay solid. */
function mayMelt(part: Part): boolean {
  const partClass = classById(part.class);
  return partClass.reflowRated && !partClass.oneReflow && !part.underfilled && !isLarge(part, partClass);
}

/** What is judged on a board: body and skin of every neighbour, joints where they are to stay solid. */
export function neighboursOf(board: Board, run: HeatRun, plan: Plan): Neighbours {
  const targets = new Set(plan.sites.flatMap((site) => (run.siteIds.includes(site.id) ? [site.target] : [])));
  const figures: JudgedFigure[] = [];
  const leftOut: string[] = [];
  const packages = new Set<string>();
  for (const part of board.parts) {
    const { refdes } = part;
    if (!part.fitted || targets.has(refdes)) continue;
    const partClass = classById(part.class);
    if (partClass.alwaysRemove || plan.tags.some((tag) => tag.kind === 'remove' && tag.refdes === refdes)) {
      leftOut.push(refdes);
      continue;
    }
    if (!partClass.smallPart) packages.add(refdes);
    figures.push({ refdes, judgedOn: 'body', lessK: 0, bandK: 0 }, { refdes, judgedOn: 'skin', lessK: 0, bandK: 0 });
    const lessK = part.underfilled ? UNDERFILL_BELOW_SOLIDUS_K.value : 0;
    if (!mayMelt(part)) figures.push({ refdes, judgedOn: 'joint', lessK, bandK: 0 });
  }
  return { figures, packages, leftOut };
}

/** The figures with the bands that an evaluation carries. */
export function withBandsOf({ figures, ...rest }: Neighbours, evaluation: Evaluation): Neighbours {
  const bands = new Map(evaluation.parts.map((part) => [part.refdes, part.bands]));
  return {
    ...rest,
    figures: figures.map((figure) => ({ ...figure, bandK: bands.get(figure.refdes)?.[`${figure.judgedOn}K`] ?? 0 })),
  };
}

/** How far one wish of a profile is missed; nought or less: it is met. In K, s or K/s. */
export type Slack = { code: MissCode; by: number; refdes: string };

type Told = Pick<SearchPoint, 'marginK' | 'worst' | 'targets' | 'riseKPerS' | 'misses'>;
/** What is told of a profile, with every margin and every wish behind it. */
export type Judgement = { told: Told; margins: Float64Array; slacks: Slack[] };

/** Margin of each judged figure after its band, K; infinite without a limit. */
function marginsOf({ figures }: Neighbours, parts: ReadonlyMap<string, PartExposure>): Float64Array {
  return Float64Array.from(figures, ({ refdes, judgedOn, lessK, bandK }) => {
    const exposure = parts.get(refdes);
    const limit = exposure?.limits[judgedOn];
    return exposure && limit ? limit.celsius - lessK - exposure[judgedOn].maxC - bandK : Number.POSITIVE_INFINITY;
  });
}

function tightest(
  { figures }: Neighbours,
  parts: ReadonlyMap<string, PartExposure>,
  margins: Float64Array,
): Pick<Told, 'marginK' | 'worst'> {
  const index = margins.reduce((best, margin, at) => (margin < (margins[best] ?? margin) ? at : best), 0);
  const figure = figures[index];
  const exposure = figure && parts.get(figure.refdes);
  const marginK = margins[index] ?? Number.POSITIVE_INFINITY;
  if (!figure || !exposure || !Number.isFinite(marginK)) return { marginK: null, worst: null };
  const { refdes, judgedOn, bandK } = figure;
  const peakC = exposure[judgedOn].maxC;
  return { marginK, worst: { refdes, judgedOn, peakC, bandK, limitC: marginK + peakC + bandK } };
}

const isOn = (run: HeatRun): boolean => run.kind === 'installation';
const leastAboveS = (run: HeatRun): number => (isOn(run) ? ABOVE_LIQUIDUS_S.from : LIFTING_S.value);
const mostAboveS = (run: HeatRun): number => (isOn(run) ? ABOVE_LIQUIDUS_S.to : LONGEST_ABOVE_LIQUIDUS_S.value);
const windowOf = ({ windowC, liquidusC }: TargetResult) => windowC ?? { from: liquidusC, to: Number.MAX_VALUE };

/** A package that goes on keeps its limit; one that comes off may get as hot as the present profile makes it, if that is more. */
function skinSlack(run: HeatRun, { skinMaxC, skinLimitC }: TargetResult, { offSkinC }: ProfileLimits): number[] {
  const limitC = isOn(run) ? skinLimitC : Math.max(skinLimitC, offSkinC);
  return Number.isFinite(limitC) ? [skinMaxC - limitC] : [];
}

/** What the targets want: their window, seconds above liquidus, the package. */
function targetSlacks(run: HeatRun, { runs }: Evaluation, limits: ProfileLimits): Slack[] {
  return (runs[0]?.targets ?? []).flatMap((target) => {
    const window = windowOf(target);
    const slack = (code: MissCode, by: number): Slack => ({ code, by, refdes: target.refdes });
    return [
      slack('cold', window.from - target.coldestJointC),
      slack('hot', target.coldestJointC - window.to),
      slack('short', leastAboveS(run) - target.secondsAllAbove),
      slack('long', target.secondsAnyAbove - mostAboveS(run)),
      ...skinSlack(run, target, limits).map((by) => slack('skin', by)),
    ];
  });
}

/** `offSkinC`: what a package that comes off may reach whatever its own limit, C. */
export type ProfileLimits = { toPeakS: number; riseKPerS: number; offSkinC: number };

/** The package that rises fastest; small parts are judged by no ramp (J-STD-020 is one of packages). */
function fastestOf({ packages }: Neighbours, { parts }: Evaluation): { refdes: string; riseKPerS: number } {
  return parts.reduce(
    (fastest, part) => (packages.has(part.refdes) && part.riseKPerS > fastest.riseKPerS ? part : fastest),
    {
      ...{ refdes: '', riseKPerS: 0 },
    },
  );
}

/** What one evaluation of a run says about its profile. */
export function judgeProfile(
  run: HeatRun,
  evaluation: Evaluation,
  neighbours: Neighbours,
  peakS: number,
  limits: ProfileLimits,
): Judgement {
  const parts = new Map(evaluation.parts.map((part) => [part.refdes, part]));
  const { refdes, riseKPerS } = fastestOf(neighbours, evaluation);
  const slacks: Slack[] = [
    ...targetSlacks(run, evaluation, limits),
    { code: 'rise', by: riseKPerS - limits.riseKPerS, refdes },
    { code: 'late', by: peakS - limits.toPeakS, refdes: '' },
  ];
  const margins = marginsOf(neighbours, parts);
  const told: Told = {
    ...tightest(neighbours, parts, margins),
    ...{ riseKPerS, misses: slacks.filter(({ by }) => by > 0) },
    targets: (evaluation.runs[0]?.targets ?? []).map((target) => ({
      ...{ siteId: target.siteId, refdes: target.refdes, skinC: target.skinMaxC },
      ...{ coldestC: target.coldestJointC, hottestC: target.hottestJointC },
      ...{ allAboveS: target.secondsAllAbove, anyAboveS: target.secondsAnyAbove },
      ...{ leastC: windowOf(target).from, leastAboveS: leastAboveS(run) },
    })),
  };
  return { told, margins, slacks };
}

/** How much one miss of each kind weighs against another: about what a technician would bear, K, s or K/s for 1. */
const BEARABLE: Record<MissCode, number> = { cold: 5, hot: 5, short: 10, long: 20, skin: 5, rise: 0.5, late: 60 };

/** How far a profile is from doing its work; 0: it does. */
export const weighedMiss = (slacks: readonly Pick<Slack, 'code' | 'by'>[]): number =>
  slacks.reduce((sum, { code, by }) => sum + Math.max(0, by) / BEARABLE[code], 0);
