import type { Finding } from '../../../shared-types/evaluation.ts';
import { planSteps } from '../../../shared-types/rules/steps/plan-steps.ts';
import type { PlanningContext } from '../context.ts';
import { finding, onBoard, onPart } from './make.ts';

/** Counts, read-outs and codes that were entered at their steps and do not agree. */
export function stepFindings({ board, plan, evaluation }: PlanningContext): Finding[] {
  if (plan.steps.marks.length === 0) return [];
  // The heat decides which memories are read out because they melt where they lie; findings are only being made.
  const heat = { evaluation, actions: [], findings: [], runNumbers: [], cautions: [] };
  return planSteps(board, plan, heat).faults.flatMap((fault): Finding[] => {
    if (fault.code === 'count-differs') {
      const { which, counted, planned } = fault;
      return [finding('tray-count-differs', 'stop', onBoard, { which, counted, planned }, null)];
    }
    if (fault.code === 'read-outs-differ')
      return [finding('read-outs-differ', 'stop', onPart(fault.refdes), { refdes: fault.refdes }, null)];
    if (fault.code !== 'code-differs') return [];
    const { of, read, wanted } = fault;
    return [finding('strap-code-read-differs', 'stop', onBoard, { of, read, wanted }, null)];
  });
}
