import type { Migration } from './migrate.ts';

/** Version 2 of the plan: how often each place was exchanged, and the moisture of what goes on; nobody had told. */
export const planHandlingStep: Migration = {
  from: 1,
  migrate: (plan) => ({
    ...plan,
    sites: Array.isArray(plan.sites)
      ? plan.sites.map((site) => ({
          ...site,
          exchangedBefore: null,
          incoming: { moistureLevel: 'unknown', openH: null, thicknessMm: null },
        }))
      : plan.sites,
  }),
};
