import type { Board } from '../../../shared-types/board.ts';
import type { Plan, Station } from '../../../shared-types/plan.ts';
import type { Segment } from '../../../shared-types/profile.ts';
import { planForTargets, startingStation } from '../../../shared-types/rules/new-plan.ts';
import { segments } from '../segments.ts';
import { DRIVE_WORK } from './straps.ts';

/** The gun leans over the memory from the can's and the connector's free side: the jet runs off towards the lower edge. */
const STATION: Station = {
  ...startingStation(),
  name: 'Gun over quartz, small nozzle',
  nozzle: { kind: 'round', diameterMm: 4, standOffMm: 10, sweepRadiusMm: 2, tiltDeg: 0, headingDeg: 270 },
  preheater: { kind: 'quartz', lengthMm: 130, widthMm: 130, centre: null, sensor: null, largestC: 450 },
  roomC: 21,
  fumeExtraction: 'low',
};

const exchange = (gasC: number, seconds: number, holdS: number): Segment[] =>
  segments([
    ['Preheat', 200, [21, 290], null, 0, null],
    ['Soak', 80, [290, 290], null, 0, null],
    ['Gas', seconds, [290, 290], [gasC - 80, gasC], 11, 'site-1'],
    ['Hold', holdS, [290, 290], [gasC, gasC], 11, 'site-1'],
    ['Cool without moving', 120, [21, 21], null, 0, null],
  ]);

/** Ticket FG-0236: the firmware memory lifted with hot air, as first planned: no shield, nothing off. */
export function ferryGatePlan(board: Board): Plan {
  const plan = planForTargets(board, 'FG-0236', ['U1']);
  return {
    ...plan,
    ticket: {
      number: 'FG-0236',
      customer: 'Invented customer: Sundline ferries',
      unit: 'Gate controller 5, west ramp',
      order: 'Does not start after a failed update. Write the firmware anew; keep the calibration of this gate.',
      technician: '',
      date: '',
      notes: 'Everything in this ticket is invented.',
    },
    station: STATION,
    straps: DRIVE_WORK,
    sites: plan.sites.map((site) => ({
      ...site,
      exchangedBefore: 0,
      incoming: { moistureLevel: '1', openH: null, thicknessMm: 1.5 },
    })),
    heatRuns: plan.heatRuns.map((run) =>
      run.kind === 'site-preparation'
        ? run
        : { ...run, segments: run.kind === 'removal' ? exchange(374, 70, 20) : exchange(366, 80, 48) },
    ),
  };
}
