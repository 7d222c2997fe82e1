import type { Board, Part } from '../../../shared-types/board.ts';
import type { HeatRun, Plan, Site, Station } from '../../../shared-types/plan.ts';
import type { Segment } from '../../../shared-types/profile.ts';
import { planForTargets, startingStation } from '../../../shared-types/rules/new-plan.ts';
import type { Tag } from '../../../shared-types/tags.ts';
import { type Stretch, segments } from '../segments.ts';
import { exchangesFor, STRAP_WORK } from './straps.ts';

const STATION: Station = {
  ...startingStation(),
  name: 'Bench 2, hot air over quartz preheater',
  nozzle: { kind: 'round', diameterMm: 10, standOffMm: 20, sweepRadiusMm: 7, tiltDeg: 0, headingDeg: 0 },
  preheater: { kind: 'quartz', lengthMm: 200, widthMm: 140, centre: null, sensor: null, largestC: 450 },
  roomC: 23,
  fumeExtraction: 'low',
};

/** Source of the preheater, C: brings the site to about 140 C in under five minutes. */
const PREHEAT = 370;
const SITES = ['site-1', 'site-2', 'site-3'] as const;
type PerSite = readonly [number, number, number];

/** Preheat once, then one target after the other, the processor first: it needs the longest. */
function exchange(gasC: number, seconds: PerSite): Segment[] {
  const flowLMin: PerSite = [24, 18, 18];
  const gas = SITES.map(
    (siteId, index): Stretch => [
      `Gas, site ${index + 1}`,
      seconds[index],
      [PREHEAT, PREHEAT],
      [gasC, gasC],
      flowLMin[index],
      siteId,
    ],
  );
  return segments([
    ['Preheat', 200, [23, PREHEAT], null, 0, null],
    ['Soak', 80, [PREHEAT, PREHEAT], null, 0, null],
    ['Gas up, site 1', 40, [PREHEAT, PREHEAT], [180, gasC], flowLMin[0], SITES[0]],
    ...gas,
    ['Cool without moving', 150, [23, 23], null, 0, null],
  ]);
}

function heatRuns(planned: readonly HeatRun[]): HeatRun[] {
  return planned.map((run) => {
    if (run.kind === 'removal') return { ...run, segments: exchange(320, [72, 24, 20]) };
    if (run.kind === 'installation') return { ...run, segments: exchange(325, [88, 32, 38]) };
    return {
      ...run,
      segments: segments([
        ['Preheat', 200, [23, 300], null, 0, null],
        ['Dress the sites', 240, [300, 300], null, 0, null],
        ['Cool without moving', 150, [23, 23], null, 0, null],
      ]),
    };
  });
}

const partOf = (board: Board, refdes: string): Part => {
  const part = board.parts.find((one) => one.refdes === refdes);
  if (!part) throw new Error(`The board has no ${refdes}.`);
  return part;
};

function tagsFor(board: Board, sites: readonly Site[]): Tag[] {
  const u1 = partOf(board, 'U1');
  const u2 = partOf(board, 'U2');
  const goesOn = ['HG-SOC17 processor, stepping 2', 'HG-MEM8G memory', 'HG-MEM8G memory'];
  return [
    {
      id: 'tag-1',
      kind: 'remove',
      order: 1,
      note: 'Cell never sees heat. Keep the old one for its date code.',
      refdes: 'BT1',
      goesBack: true,
      traySlot: 'A1',
    },
    {
      id: 'tag-2',
      kind: 'remove',
      order: 2,
      note: 'Pull straight up, no tools on the plastic frame.',
      refdes: 'A1',
      goesBack: true,
      traySlot: 'A2',
    },
    ...sites.map(
      (site, index): Tag => ({
        id: `tag-${index + 3}`,
        kind: 'replace',
        order: index + 3,
        note: '',
        refdes: site.target,
        siteId: site.id,
        comesOff: partOf(board, site.target).value,
        goesOn: goesOn[index],
      }),
    ),
    {
      id: 'tag-6',
      kind: 'watchPoint',
      order: null,
      note: 'At the corner ball, under the body.',
      name: 'W1',
      side: 'top',
      x: u1.x - 7.6,
      y: u1.y - 7.6,
      refdes: 'U1',
    },
    {
      id: 'tag-7',
      kind: 'watchPoint',
      order: null,
      note: '',
      name: 'W2',
      side: 'top',
      x: u2.x,
      y: u2.y + 6,
      refdes: 'U2',
    },
    {
      id: 'tag-8',
      kind: 'watchPoint',
      order: null,
      note: 'Seen from below, between the bypass rows.',
      name: 'W3',
      side: 'bottom',
      x: u1.x,
      y: u1.y,
      refdes: null,
    },
  ];
}

/** Ticket GG-0412: processor and both memories exchanged in one removal and one installation run. */
export function greenhousePlan(board: Board): Plan {
  const plan = planForTargets(board, 'GG-0412', ['U1', 'U2', 'U3']);
  return {
    ...plan,
    ticket: {
      number: 'GG-0412',
      customer: 'Invented customer: Halm glasshouses',
      unit: 'Gateway no. 20731',
      order:
        'Gateway restarts under load. Exchange the processor for stepping 2 and both memories for 8 Gbit parts; ' +
        'set the memory straps to the new size. Data in the eMMC must survive.',
      technician: '',
      date: '',
      notes: 'Everything in this ticket is invented.',
    },
    station: STATION,
    heatRuns: heatRuns(plan.heatRuns),
    tags: tagsFor(board, plan.sites),
    straps: STRAP_WORK,
    exchanges: exchangesFor(plan.sites),
  };
}
