import type { Assessment } from '../../shared-types/evaluation.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { planSteps } from '../../shared-types/rules/steps/plan-steps.ts';
import type { Step, StepPlan } from '../../shared-types/rules/steps/types.ts';
import type { AppState } from './app-state.ts';

let last: { document: TicketDocument; assessment: Assessment | null; plan: StepPlan } | null = null;

/** The steps of a document with the figures there are; worked out once for each. */
export function stepPlanOf(document: TicketDocument, assessment: Assessment | null): StepPlan {
  if (last?.document !== document || last.assessment !== assessment)
    last = { document, assessment, plan: planSteps(document.board, document.plan, assessment) };
  return last.plan;
}

/** Steps that are not ticked. While a gesture is on its way the number stays: no frame of a drag waits for it. */
export function openOfSteps({ ticket, evaluation, gesture }: AppState): number {
  if (!ticket) return 0;
  const plan = gesture && last ? last.plan : stepPlanOf(ticket.document, evaluation.assessment);
  return plan.steps.filter(({ done }) => !done).length;
}

/** The first step that is open; null: all are ticked. */
export function nextStep({ ticket, evaluation }: AppState): Step | null {
  if (!ticket) return null;
  return stepPlanOf(ticket.document, evaluation.assessment).steps.find(({ done }) => !done) ?? null;
}

/** The window's clock as it is entered: local date and minute. */
export function minuteNow(now: Date = new Date()): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())} ${two(now.getHours())}:${two(now.getMinutes())}`;
}
