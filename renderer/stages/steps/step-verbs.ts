import { earlier, later, mayMove } from '../../../shared-types/rules/steps/order.ts';
import type { Step, StepPlan } from '../../../shared-types/rules/steps/types.ts';
import { measuresIn } from '../../../shared-types/words/measures.ts';
import { refusedWords } from '../../../shared-types/words/steps/step-words.ts';
import { stepEdits } from '../../../shared-types/words/window/steps.ts';
import { moveStep, tickStep, untickStep, type Who } from '../../editing/steps.ts';
import type { App } from '../../state/app.ts';

/** Ticks a step, or takes the tick off. */
export const tick = (app: App, step: Step, on: boolean, who: () => Who): void =>
  app.bench.apply(on ? stepEdits.tick : stepEdits.untick, (document) =>
    on ? tickStep(document, step, who()) : untickStep(document, step),
  );

/** Moves a step one place; what must come first forbids it, and says why. */
export function shift(app: App, plan: StepPlan, stepId: string, way: 'earlier' | 'later'): void {
  const move = (way === 'earlier' ? earlier : later)(plan.steps, stepId);
  if (!move) return;
  const phases = plan.phases.map(({ id }) => id);
  const wait = mayMove(plan.steps, plan.waits, move, phases);
  const { temperatureUnit, lengthUnit } = app.store.get().settings;
  if (wait) app.notify('warn', refusedWords(plan.steps, wait, measuresIn(temperatureUnit, lengthUnit)));
  else app.bench.apply(stepEdits.move, (document) => moveStep(document, move));
}
