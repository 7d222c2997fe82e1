import type { Board } from '../../../shared-types/board.ts';
import type { HeatRun, Plan, TicketDocument } from '../../../shared-types/plan.ts';
import { presences } from '../../heat/presence.ts';

/** One heat run alone, on the board as it is when the plan comes to it: what was lifted before is not fitted. */
export function onlyRun(board: Board, plan: Plan, run: HeatRun): TicketDocument {
  const there = presences(board, plan).find((one) => one.run.id === run.id);
  if (!there) return { board, plan };
  const parts = new Set(there.parts);
  return {
    board: {
      ...board,
      parts: board.parts.map((part) => (part.fitted && !parts.has(part) ? { ...part, fitted: false } : part)),
      covers: there.covers,
    },
    plan: { ...plan, heatRuns: [run] },
  };
}
