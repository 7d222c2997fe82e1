import type { Plan } from '../../../shared-types/plan.ts';
import type { Settings } from '../../../shared-types/settings.ts';

/** A new plan with who makes it and today's date. */
export function startingPlan(plan: Plan, settings: Settings, today: Date = new Date()): Plan {
  const date = [today.getFullYear(), today.getMonth() + 1, today.getDate()]
    .map((part) => String(part).padStart(2, '0'))
    .join('-');
  return { ...plan, ticket: { ...plan.ticket, technician: settings.technician, date } };
}
