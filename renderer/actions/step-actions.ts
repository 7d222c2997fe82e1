import { stepActions as labels, stepEdits } from '../../shared-types/words/window/steps.ts';
import { tickStep } from '../editing/steps.ts';
import { showStep } from '../state/show-step.ts';
import { minuteNow, nextStep } from '../state/step-plan.ts';
import type { Action } from './action.ts';

/** What the stage Steps offers, from everywhere. */
export const stepActionList: readonly Action[] = [
  {
    id: 'tick-next-step',
    group: 'edit',
    label: labels.tickNext,
    keys: [],
    enabled: (state) => nextStep(state) !== null,
    run(app) {
      const step = nextStep(app.store.get());
      const by = app.store.get().ticket?.document.plan.ticket.technician ?? '';
      if (step) app.bench.apply(stepEdits.tick, (document) => tickStep(document, step, { by, at: minuteNow() }));
    },
  },
  {
    id: 'show-next-step',
    group: 'view',
    label: labels.showNext,
    keys: [],
    enabled: (state) => nextStep(state) !== null,
    run(app) {
      const step = nextStep(app.store.get());
      app.setView({ stage: 'steps', panelOpen: true });
      if (step) showStep(app, step);
    },
  },
];
