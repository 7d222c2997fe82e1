import type { Plan } from '../plan.ts';
import type { Problem } from '../problem.ts';

const fault = (where: string, reason: string): Problem => ({
  code: 'invalid-field',
  where,
  detail: { reason, todo: 'Correct it or take the entry out.' },
});

/** What makes a plan unusable though every field fits: ids used twice, runs or segments at sites that do not exist. */
export function planFault(plan: Plan): Problem | null {
  return (
    twice(plan.sites, 'sites') ??
    twice(plan.heatRuns, 'heatRuns') ??
    twice(plan.tags, 'tags') ??
    danglingSite(plan) ??
    null
  );
}

function twice(entries: readonly { id: string }[], list: string): Problem | null {
  const ids = new Set<string>();
  for (const [index, { id }] of entries.entries()) {
    if (ids.has(id)) return fault(`${list}[${index}] of ${id}`, 'has an id that is used twice');
    ids.add(id);
  }
  return null;
}

function danglingSite(plan: Plan): Problem | null {
  const known = new Set(plan.sites.map((site) => site.id));
  for (const [index, run] of plan.heatRuns.entries()) {
    const named = [...run.siteIds, ...run.segments.flatMap((segment) => segment.siteId ?? [])];
    const lost = named.find((id) => !known.has(id));
    if (lost !== undefined)
      return fault(`heatRuns[${index}] of ${run.id}`, `names the site ${lost}, which the plan does not have`);
  }
  return null;
}
