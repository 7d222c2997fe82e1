import { BOARD_FORMAT, BOARD_VERSION, PLAN_FORMAT, PLAN_VERSION } from '../../../shared-types/format-version.ts';
import { boardPhotosStep } from './board-2-photos.ts';
import { boardStrapsStep } from './board-3-straps.ts';
import { boardPackagesStep } from './board-4-packages.ts';
import type { Format } from './migrate.ts';
import { planHandlingStep } from './plan-2-handling.ts';
import { planStrapsStep } from './plan-3-straps.ts';
import { planStationStep } from './plan-4-stations.ts';
import { planCalibrationStep } from './plan-5-calibration.ts';
import { planStepsStep } from './plan-6-steps.ts';

/**
 * The formats with the steps that bring older files up. A version step raises the number in `format-version.ts`, adds one file here, and
 * keeps a real document of the version before it in `tests/documents/past-versions/`.
 */
export const BOARD: Format = {
  name: BOARD_FORMAT,
  version: BOARD_VERSION,
  migrations: [boardPhotosStep, boardStrapsStep, boardPackagesStep],
};
export const PLAN: Format = {
  name: PLAN_FORMAT,
  version: PLAN_VERSION,
  migrations: [planHandlingStep, planStrapsStep, planStationStep, planCalibrationStep, planStepsStep],
};
