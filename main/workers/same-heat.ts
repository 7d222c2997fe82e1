import type { TicketDocument } from '../../shared-types/plan.ts';

/** True when nothing that the heat depends on differs; documents share what was not edited. */
export function sameHeat(a: TicketDocument, b: TicketDocument): boolean {
  const keys = ['station', 'sites', 'heatRuns', 'tags'] as const;
  return a.board === b.board && keys.every((key) => a.plan[key] === b.plan[key]);
}
