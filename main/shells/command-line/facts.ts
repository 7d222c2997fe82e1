import type { Board } from '../../../shared-types/board.ts';
import { boxOf, flattenContour } from '../../../shared-types/geometry.ts';
import type { Plan } from '../../../shared-types/plan.ts';
import { boardFacts, planFacts } from '../../../shared-types/words/command-line.ts';

/** A board in one line: size and counts. */
export function factsOfBoard(board: Board): string {
  const box = boxOf(flattenContour(board.outline));
  return boardFacts({
    top: board.parts.filter((part) => part.side === 'top').length,
    bottom: board.parts.filter((part) => part.side === 'bottom').length,
    empty: board.parts.filter((part) => !part.fitted).length,
    cutouts: board.cutouts.length,
    length: box.maxX - box.minX,
    width: box.maxY - box.minY,
  });
}

/** A plan in one line. */
export const factsOfPlan = (plan: Plan): string =>
  planFacts({
    number: plan.ticket.number,
    sites: plan.sites.length,
    runs: plan.heatRuns.length,
    tags: plan.tags.length,
  });
