import type { Migration } from './migrate.ts';

/** Version 6 of the plan: what is ticked, added and moved in the steps; nothing was before. */
export const planStepsStep: Migration = {
  from: 5,
  migrate: (plan) => ({ ...plan, steps: { own: [], moves: [], marks: [] } }),
};
