import type { Migration } from './migrate.ts';

/** Version 3 of the plan: wanted straps, stock and ticks, and what goes out and in at each site; nothing was decided. */
export const planStrapsStep: Migration = {
  from: 2,
  migrate: (plan) => ({
    ...plan,
    straps: { wanted: [], stock: [], stockFirst: false, ticked: [] },
    exchanges: [],
  }),
};
