import type { Board } from '../../../shared-types/board.ts';
import type { HeatRun, Plan, Station } from '../../../shared-types/plan.ts';
import type { Segment } from '../../../shared-types/profile.ts';
import { planForTargets, startingStation } from '../../../shared-types/rules/new-plan.ts';
import type { Tag } from '../../../shared-types/tags.ts';
import { segments } from '../segments.ts';

const STATION: Station = {
  ...startingStation(),
  name: 'Field case, small hot-air set over quartz',
  nozzle: { kind: 'round', diameterMm: 5, standOffMm: 12, sweepRadiusMm: 3, tiltDeg: 0, headingDeg: 0 },
  preheater: { kind: 'quartz', lengthMm: 120, widthMm: 120, centre: null, sensor: null, largestC: 450 },
  roomC: 18,
  fumeExtraction: 'high',
};

const exchange = (gasC: number, seconds: number): Segment[] =>
  segments([
    ['Preheat', 200, [18, 360], null, 0, null],
    ['Soak', 80, [360, 360], null, 0, null],
    ['Gas up', 40, [360, 360], [180, gasC], 8, 'site-1'],
    ['Gas', seconds, [360, 360], [gasC, gasC], 8, 'site-1'],
    ['Cool without moving', 150, [18, 18], null, 0, null],
  ]);

function heatRuns(planned: readonly HeatRun[]): HeatRun[] {
  return planned.map((run) => {
    if (run.kind === 'removal') return { ...run, segments: exchange(345, 60) };
    if (run.kind === 'installation') return { ...run, segments: exchange(350, 82) };
    return {
      ...run,
      segments: segments([
        ['Preheat', 240, [18, 300], null, 0, null],
        ['Dress the site', 150, [300, 300], null, 0, null],
        ['Cool without moving', 150, [18, 18], null, 0, null],
      ]),
    };
  });
}

function tags(replace: Tag[], controller: { x: number; y: number }): Tag[] {
  const { x, y } = controller;
  return [
    {
      id: 'tag-2',
      kind: 'remove',
      order: 1,
      note: 'Lithium, soldered: off with the iron at its leads, never with hot air. Insulate the leads at once.',
      refdes: 'BT1',
      goesBack: true,
      traySlot: 'A1',
    },
    ...replace.map((tag) => ({ ...tag, order: 2 })),
    {
      id: 'tag-3',
      kind: 'watchPoint',
      order: null,
      note: 'Far corner, seen from the cell: the coldest by guess.',
      name: 'W1',
      side: 'top',
      x: x - 4.4,
      y: y + 4.4,
      refdes: 'U1',
    },
    { id: 'tag-4', kind: 'watchPoint', order: null, note: '', name: 'W2', side: 'bottom', x, y, refdes: null },
  ];
}

/** Ticket TG-0077: the controller of a coated logger exchanged; nobody knows what it is soldered with. */
export function tideGaugePlan(board: Board): Plan {
  const plan = planForTargets(board, 'TG-0077', ['U1']);
  const controller = board.parts.find((part) => part.refdes === plan.sites[0].target);
  if (!controller) throw new Error('The board has no controller.');
  return {
    ...plan,
    ticket: {
      number: 'TG-0077',
      customer: 'Invented customer: Port of Ostmark',
      unit: 'Logger 14, harbour wall',
      order:
        'Logger answers no more. Exchange the controller; keep the log memory. The board is coated, strip the site first.',
      technician: '',
      date: '',
      notes:
        'Everything in this ticket is invented. Drawn from two photos and a ruler: sizes and classes are guesses until checked.',
    },
    station: STATION,
    sites: plan.sites.map((site) => ({ ...site, alloyOff: 'unknown', alloyOn: 'sac305' })),
    heatRuns: heatRuns(plan.heatRuns),
    tags: tags(plan.tags, controller),
  };
}
