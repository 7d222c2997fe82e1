import type { Migration } from './migrate.ts';

/** Version 4 of the plan: stations as a technician knows them, fences at sites. Earlier plans measured and fenced nothing. */
export const planStationStep: Migration = {
  from: 3,
  migrate: (plan) => ({
    ...plan,
    station:
      typeof plan.station === 'object' && plan.station !== null
        ? { ...plan.station, flowLevels: [], outletReadings: [], boardReadings: null }
        : plan.station,
    sites: Array.isArray(plan.sites) ? plan.sites.map((site) => ({ ...site, fence: null })) : plan.sites,
  }),
};
