import type { Board } from '../../shared-types/board.ts';
import type { Assessment, Evaluation } from '../../shared-types/evaluation.ts';
import type { Plan } from '../../shared-types/plan.ts';
import { actionsFor } from './actions.ts';
import { cautionsOf } from './cautions.ts';
import { planningContext } from './context.ts';
import { findingsFor } from './findings/all.ts';
import { runNumbersFor } from './run-numbers.ts';

/**
 * What an evaluation means for the work: an action for every evaluated part, findings (exceptions first), the numbers
 * to act on and the cautions that apply (heat model page, section 7). It estimates and advises; margins and bands
 * stand beside every advice.
 */
export function assess(board: Board, plan: Plan, evaluation: Evaluation): Assessment {
  const context = planningContext(board, plan, evaluation);
  const heater = heaterFigures(plan);
  const actions = actionsFor(context).map((action) => ({ ...action, figures: { ...action.figures, ...heater } }));
  const findings = findingsFor(context, actions).map((one) => ({ ...one, figures: { ...one.figures, ...heater } }));
  return {
    evaluation,
    actions,
    findings,
    runNumbers: runNumbersFor(context, actions),
    cautions: cautionsOf(board, plan, evaluation, actions),
  };
}

/** Says in advice and findings that infrared heats from above: their sentences then speak of no gas. */
const heaterFigures = ({ station }: Plan): { emitter?: 1 } =>
  station.nozzle.kind === 'infrared' ? { emitter: 1 } : {};
