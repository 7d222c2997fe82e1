import type { Migration } from './migrate.ts';

/** Version 5 of the plan: what a logged run told of its station; nothing was logged before. */
export const planCalibrationStep: Migration = {
  from: 4,
  migrate: (plan) => ({
    ...plan,
    station: typeof plan.station === 'object' && plan.station ? { ...plan.station, calibration: null } : plan.station,
  }),
};
