import type { Station } from '../plan.ts';

/** Dial levels where nobody measured the flow: common practice, no source. */
export const USUAL_LEVELS: Station['flowLevels'] = [
  { name: 'low', flowLMin: 20 },
  { name: 'mid', flowLMin: 40 },
  { name: 'high', flowLMin: 70 },
];

const common = {
  ...{ gasReads: 'setting', roomC: 23, entrainedC: 60, fumeExtraction: 'low' },
  ...{ outletReadings: [], boardReadings: null, calibration: null },
} as const satisfies Partial<Station>;

/** Stations to begin from. Sizes and figures are of no particular make: common practice, no source. */
export const STATION_PRESETS: readonly Station[] = [
  {
    ...{ ...common, name: 'Handpiece over a ceramic preheater', flowLevels: USUAL_LEVELS },
    nozzle: { kind: 'round', diameterMm: 10, standOffMm: 20, sweepRadiusMm: 6, tiltDeg: 0, headingDeg: 0 },
    preheater: { kind: 'ceramic', lengthMm: 240, widthMm: 180, centre: null, sensor: null, largestC: 400 },
  },
  {
    ...{ ...common, name: 'Station with hoods over quartz', flowLevels: [], entrainedC: 23 },
    nozzle: {
      ...{ kind: 'hood', lengthMm: 36, widthMm: 36, turnDeg: 0, standOffMm: 1, tiltDeg: 0, headingDeg: 0 },
      ...{ filmAt30LMin: 100, rimGapMm: 1, leak: 0.2 },
    },
    preheater: { kind: 'quartz', lengthMm: 320, widthMm: 260, centre: null, sensor: null, largestC: 450 },
  },
  {
    ...{ ...common, name: 'Infrared from above over quartz', flowLevels: [] },
    nozzle: { kind: 'infrared', lengthMm: 40, widthMm: 40, turnDeg: 0, standOffMm: 25, emissivity: 0.9 },
    preheater: { kind: 'quartz', lengthMm: 320, widthMm: 260, centre: null, sensor: null, largestC: 450 },
  },
];
