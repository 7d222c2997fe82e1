import type { Finding } from '../../../shared-types/evaluation.ts';
import type { Figures } from '../../../shared-types/words/figures.ts';
import { type Exposed, exposedNeighbours, type PlanningContext } from '../context.ts';
import { CERAMIC_JUMP_K, LARGEST_RAMP_K_PER_S } from '../published.ts';
import { firstGasSegment } from '../segments.ts';
import { finding, grouped, onSite } from './make.ts';

type Rated = Exposed & { refdes: string };

/**
 * Parts that rise faster than the standard's ramp. Over any 5 s, so a short flicker does not count. The standard is one
 * of packages; for chips it is a note, and the ceramic ones are judged by their jump below.
 */
function rampFindings(parts: readonly Rated[]): Finding[] {
  const limit = LARGEST_RAMP_K_PER_S;
  const fast = parts.filter((entry) => entry.exposure.riseKPerS > limit.value);
  const rise = (entry: Rated): number => entry.exposure.riseKPerS;
  const figures = (worst: Rated): Figures => ({ riseKPerS: rise(worst), limitKPerS: limit.value });
  const small = fast.filter((entry) => entry.partClass.smallPart);
  const packages = fast.filter((entry) => !entry.partClass.smallPart);
  return [
    ...grouped('rises-too-fast', 'warn', packages, rise, figures, limit.source),
    ...grouped('small-parts-rise-fast', 'note', small, rise, figures, limit.source),
  ];
}

/** The target's own ramp; it matters most where a new part goes on. */
function targetRampFindings(context: PlanningContext): Finding[] {
  const limit = LARGEST_RAMP_K_PER_S;
  return context.plan.sites.flatMap((site) => {
    const riseKPerS = context.exposures.get(site.target)?.riseKPerS ?? 0;
    if (riseKPerS <= limit.value) return [];
    const goesOn = context.plan.heatRuns.some((run) => run.kind === 'installation' && run.siteIds.includes(site.id));
    const figures = { refdes: site.target, riseKPerS, limitKPerS: limit.value };
    return [finding('target-rises-fast', goesOn ? 'warn' : 'note', onSite(site.id), figures, limit.source)];
  });
}

/**
 * What a ceramic chip jumps by: from the board as preheated at the site (the room without preheat) to its own peak. A run
 * without gas warms it slowly.
 */
function jumpOf(context: PlanningContext, { exposure }: Exposed): number {
  const run = context.runs.get(exposure.worstRunId);
  const result = context.evaluation.runs.find((candidate) => candidate.runId === exposure.worstRunId);
  const first = run ? firstGasSegment(run) : null;
  if (first === null) return 0;
  const preheated = first === 0 ? undefined : result?.segments[first - 1]?.siteC;
  return exposure.body.maxC - (preheated ?? context.plan.station.roomC);
}

function ceramicFindings(context: PlanningContext, parts: readonly Rated[]): Finding[] {
  return (['small', 'large'] as const).flatMap((size) => {
    const id = size === 'small' ? 'chip-capacitor' : 'chip-capacitor-large';
    const { warn, limit } = CERAMIC_JUMP_K[size];
    const jumping = parts
      .filter((entry) => entry.partClass.id === id)
      .map((entry) => ({ refdes: entry.refdes, jumpK: jumpOf(context, entry) }))
      .filter((entry) => entry.jumpK > warn);
    const worstK = Math.max(0, ...jumping.map((entry) => entry.jumpK));
    const figures = (worst: { jumpK: number }): Figures => ({ jumpK: worst.jumpK, warnK: warn, limitK: limit });
    const code = worstK > limit ? 'ceramic-jump-over' : 'ceramic-jump';
    return grouped(code, 'warn', jumping, (entry) => entry.jumpK, figures, CERAMIC_JUMP_K.source);
  });
}

/** How fast parts heat. */
export function rateFindings(context: PlanningContext): Finding[] {
  const parts = exposedNeighbours(context).map((exposed) => ({ ...exposed, refdes: exposed.part.refdes }));
  return [...rampFindings(parts), ...targetRampFindings(context), ...ceramicFindings(context, parts)];
}
