import type { HeatRun, Plan } from '../plan.ts';
import type { Profile, Segment } from '../profile.ts';

/**
 * The plan with a shop's profile in its removal and installation runs; site preparation keeps its own, being without gas on a part.
 * Segments that name no site, or one the plan does not have, stand over the run's first site;
 * a run with several sites repeats the stretches with gas once for each.
 */
export function withProfile(plan: Plan, profile: Profile): Plan {
  const known = new Set(plan.sites.map((site) => site.id));
  const clean = profile.segments.map((segment) => ({
    ...segment,
    siteId: segment.siteId && known.has(segment.siteId) ? segment.siteId : null,
  }));
  const heated = (run: HeatRun): boolean => run.kind === 'removal' || run.kind === 'installation';
  return {
    ...plan,
    heatRuns: plan.heatRuns.map((run) => (heated(run) ? { ...run, segments: overSites(clean, run.siteIds) } : run)),
  };
}

function overSites(segments: readonly Segment[], siteIds: readonly string[]): Segment[] {
  if (siteIds.length < 2 || segments.some((segment) => segment.siteId)) return [...segments];
  const first = segments.findIndex((segment) => segment.gas);
  if (first < 0) return [...segments];
  const last = segments.findLastIndex((segment) => segment.gas);
  const heated = segments.slice(first, last + 1);
  const repeated = siteIds.flatMap((siteId) =>
    heated.map((segment) => ({ ...segment, siteId, name: `${segment.name} ${siteId}` })),
  );
  return [...segments.slice(0, first), ...repeated, ...segments.slice(last + 1)];
}
