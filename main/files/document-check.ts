import type { z } from 'zod';
import { boardSchema } from '../../shared-types/board.ts';
import { documentSchema } from '../../shared-types/contract.ts';
import { planSchema, type TicketDocument } from '../../shared-types/plan.ts';
import type { Problem } from '../../shared-types/problem.ts';
import { boardFault } from '../../shared-types/rules/board-faults.ts';
import { planFault } from '../../shared-types/rules/plan-faults.ts';
import { fieldProblem } from '../document/open-document.ts';

/**
 * What makes a changed document unfit to be kept, or null. It holds a ticket to the same rules as reading its file does, so that
 * nothing can be saved which would not open again. Halves that are still the same object are not looked at twice.
 */
export function documentProblem(next: TicketDocument, previous: TicketDocument | null): Problem | null {
  const frame = frameProblem(next);
  if (frame) return frame;
  const board =
    next.board === previous?.board ? null : (shapeProblem(boardSchema, next.board) ?? boardFault(next.board));
  if (board) return board;
  return next.plan === previous?.plan ? null : (shapeProblem(planSchema, next.plan) ?? planFault(next.plan));
}

/** A patch may name a place beside board and plan, or replace the whole: then the frame no longer fits. */
function frameProblem(next: TicketDocument): Problem | null {
  const isFrame = typeof next === 'object' && next !== null && Object.keys(next).sort().join() === 'board,plan';
  return isFrame ? null : shapeProblem(documentSchema, next);
}

function shapeProblem(schema: z.ZodType, value: unknown): Problem | null {
  const checked = schema.safeParse(value);
  return checked.success ? null : fieldProblem(checked.error, value);
}
