import type { Board } from '../../../shared-types/board.ts';
import type { Plan, Station } from '../../../shared-types/plan.ts';
import type { Segment } from '../../../shared-types/profile.ts';
import { planForTargets, startingStation } from '../../../shared-types/rules/new-plan.ts';
import { segments } from '../segments.ts';

const STATION: Station = {
  ...startingStation(),
  name: 'Bench 1, hot air over ceramic preheater',
  nozzle: { kind: 'round', diameterMm: 8, standOffMm: 15, sweepRadiusMm: 4, tiltDeg: 0, headingDeg: 0 },
  preheater: { kind: 'ceramic', lengthMm: 150, widthMm: 120, centre: null, sensor: null, largestC: 450 },
  roomC: 21,
  fumeExtraction: 'low',
};

const exchange = (gasC: number, seconds: number): Segment[] =>
  segments([
    ['Preheat', 260, [21, 330], null, 0, null],
    ['Soak', 90, [330, 330], null, 0, null],
    ['Gas', 60, [330, 330], [gasC - 100, gasC], 20, 'site-1'],
    ['Hold', seconds, [330, 330], [gasC, gasC], 20, 'site-1'],
    ['Cool without moving', 150, [21, 21], null, 0, null],
  ]);

/** Ticket WT-0559: the memory for the third time, from a donor board with leaded balls. */
export function weighbridgePlan(board: Board): Plan {
  const plan = planForTargets(board, 'WT-0559', ['U1']);
  return {
    ...plan,
    ticket: {
      number: 'WT-0559',
      customer: 'Invented customer: Karst quarry',
      unit: 'Terminal 2, gate scale',
      order: 'Memory again, exchanged twice elsewhere. Customer brings a donor board of an older make.',
      technician: '',
      date: '',
      notes: 'Everything in this ticket is invented.',
    },
    station: STATION,
    sites: plan.sites.map((site) => ({
      ...site,
      alloyOn: 'sn63pb37',
      exchangedBefore: 2,
      incoming: { moistureLevel: '3', openH: null, thicknessMm: 1.1 },
    })),
    heatRuns: plan.heatRuns.map((run) =>
      run.kind === 'site-preparation'
        ? run
        : { ...run, segments: run.kind === 'removal' ? exchange(362, 42) : exchange(312, 40) },
    ),
  };
}
