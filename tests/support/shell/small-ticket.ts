import { type Board, emptyBoard, type Part } from '../../../shared-types/board.ts';
import type { TicketDocument } from '../../../shared-types/plan.ts';
import { emptyPlan, planForTargets } from '../../../shared-types/rules/new-plan.ts';

/** A part of an invented board. */
export function smallPart(refdes: string, x: number, y: number, lengthMm: number, widthMm: number): Part {
  return {
    ...{ refdes, side: 'top', x, y, turn: 0, class: 'bga', classGuessed: false, value: '', fitted: true },
    package: { name: 'invented', shape: 'rectangle', lengthMm, widthMm, heightMm: 1.2 },
    ...{ alloy: 'sac305', edgeBonded: false, underfilled: false, coated: false },
  };
}

export function smallBoard(name = 'Invented test board'): Board {
  const board = emptyBoard(name, 40, 30);
  const parts = [smallPart('U1', 20, 15, 10, 10), smallPart('U2', 33, 15, 4, 6), smallPart('U3', 6, 6, 3, 3)];
  return { ...board, parts, source: { ...board.source, invented: true } };
}

/** A ticket with one site and three heat runs, each cut to a few seconds so that a test can evaluate it. */
export function smallTicket(number = 'T-1'): TicketDocument {
  const board = smallBoard();
  const plan = planForTargets(board, number, ['U1']);
  const heatRuns = plan.heatRuns.map((run) => ({
    ...run,
    segments: run.segments.map((segment) => ({ ...segment, seconds: 5 })),
  }));
  return { board, plan: { ...plan, heatRuns } };
}

/** A ticket with nothing to evaluate. */
export const bareTicket = (number = 'T-1'): TicketDocument => ({ board: smallBoard(), plan: emptyPlan(number) });

/** A patch of the ticket's notes: the smallest edit. */
export const notePatch = (notes: string) => ({
  op: 'replace' as const,
  path: ['plan', 'ticket', 'notes'],
  value: notes,
});
