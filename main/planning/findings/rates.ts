import type { Finding } from '../../../shared-types/evaluation.ts';
import type { Figures } from '../../../shared-types/words/figures.ts';
import { type Exposed, exposedNeighbours, type PlanningContext } from '../context.ts';
import { CERAMIC_JUMP_K, LARGEST_RAMP_K_PER_S } from '../published.ts';
import { firstGasSegment } from '../segments.ts';
import { grouped } from './make.ts';

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

/** What a ceramic chip jumps by: from the board as preheated at the site (the room without preheat) to its own peak. */
function jumpOf(context: PlanningContext, { exposure }: Exposed): number {
  const run = context.runs.get(exposure.worstRunId);
  const result = context.evaluation.runs.find((candidate) => candidate.runId === exposure.worstRunId);
  const first = run ? firstGasSegment(run) : null;
  const preheated = first === null || first === 0 ? undefined : result?.segments[first - 1]?.siteC;
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
  return [...rampFindings(parts), ...ceramicFindings(context, parts)];
}
