import type { Board } from '../../../shared-types/board.ts';
import type { Plan, Station } from '../../../shared-types/plan.ts';
import type { Segment } from '../../../shared-types/profile.ts';
import { planForTargets, startingStation } from '../../../shared-types/rules/new-plan.ts';
import type { Tag } from '../../../shared-types/tags.ts';
import { segments } from '../segments.ts';

const STATION: Station = {
  ...startingStation(),
  name: 'Station with hood, hot air below',
  nozzle: {
    kind: 'hood',
    lengthMm: 56,
    widthMm: 56,
    turnDeg: 0,
    filmAt30LMin: 100,
    rimGapMm: 1,
    leak: 0.3,
    tiltDeg: 0,
    headingDeg: 0,
    standOffMm: 2,
  },
  gasReads: 'outlet',
  preheater: { kind: 'hot-air', lengthMm: 320, widthMm: 240, centre: null, sensor: null, largestC: 350 },
  roomC: 22,
  fumeExtraction: 'low',
};

/** Two millimetres and fourteen layers take long: the preheat first, hot, then held back while the gas works. */
const exchange = (gasC: number, seconds: number): Segment[] =>
  segments([
    ['Preheat', 330, [22, 345], null, 0, null],
    ['Soak', 150, [300, 300], null, 0, null],
    ['Gas up', 60, [300, 300], [200, gasC], 40, 'site-1'],
    ['Gas', seconds, [300, 300], [gasC, gasC], 40, 'site-1'],
    ['Cool without moving', 180, [22, 22], null, 0, null],
  ]);

const WATCH: Tag[] = [
  {
    id: 'tag-2',
    kind: 'watchPoint',
    order: null,
    note: 'Corner beside the stiffener: the coldest.',
    name: 'W1',
    side: 'top',
    x: 133.5,
    y: 87.5,
    refdes: 'U1',
  },
  { id: 'tag-3', kind: 'watchPoint', order: null, note: '', name: 'W2', side: 'top', x: 150, y: 124, refdes: null },
];

/** Ticket SC-1180: the lidded array exchanged on a hood station. The stiffener still stands beside it. */
export function signalCardPlan(board: Board): Plan {
  const plan = planForTargets(board, 'SC-1180', ['U1']);
  return {
    ...plan,
    ticket: {
      number: 'SC-1180',
      customer: 'Invented customer: Brandt seismic survey',
      unit: 'Card 3 of rack 9',
      order: 'Processor has an open joint. Exchange it; the card goes back into a rack, so it must stay flat.',
      technician: '',
      date: '',
      notes: 'Everything in this ticket is invented.',
    },
    station: STATION,
    sites: plan.sites.map((site) => ({
      ...site,
      exchangedBefore: 0,
      incoming: { moistureLevel: '3', openH: 4, thicknessMm: 2.9 },
    })),
    heatRuns: plan.heatRuns.map((run) => ({
      ...run,
      segments:
        run.kind === 'site-preparation'
          ? segments([
              ['Preheat', 300, [22, 200], null, 0, null],
              ['Dress the site', 240, [200, 200], null, 0, null],
              ['Cool without moving', 180, [22, 22], null, 0, null],
            ])
          : run.kind === 'removal'
            ? exchange(266, 125)
            : exchange(271, 122),
    })),
    tags: [...plan.tags, ...WATCH],
  };
}
