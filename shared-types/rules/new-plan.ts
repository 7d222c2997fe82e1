import { type Board, bodyOf, type Part } from '../board.ts';
import { PLAN_FORMAT, PLAN_VERSION } from '../format-version.ts';
import type { HeatRun, Plan, Site, Station } from '../plan.ts';
import type { Segment } from '../profile.ts';

/**
 * Station a new ticket starts with: a 10 mm round nozzle kept moving over the part and a ceramic preheater.
 * Common practice, no source; the technician replaces it by the station on the bench.
 */
export function startingStation(): Station {
  return {
    name: 'Bench station',
    nozzle: { kind: 'round', diameterMm: 10, standOffMm: 15, sweepRadiusMm: 6, tiltDeg: 0, headingDeg: 0 },
    gasReads: 'setting',
    preheater: { kind: 'ceramic', lengthMm: 240, widthMm: 180, centre: null, sensor: null, largestC: 400 },
    roomC: 23,
    entrainedC: 60,
    fumeExtraction: 'low',
  };
}

type Stretch = [
  name: string,
  seconds: number,
  preheater: [number, number],
  gas: [number, number] | null,
  flowLMin: number,
];

const segmentsOf = (siteId: string | null, stretches: readonly Stretch[]): Segment[] =>
  stretches.map(([name, seconds, preheater, gas, flowLMin]) => ({
    name,
    seconds,
    preheater: { startC: preheater[0], endC: preheater[1] },
    gas: gas && { startC: gas[0], endC: gas[1] },
    flowLMin,
    siteId: gas ? siteId : null,
  }));

/**
 * Starting profiles for a lead-free array part, to be changed for the board at hand.
 * Heat model page, section 9: preheat 180-200 s, soak 75 s, gas 70-90 s, hold, cool; common practice, no source.
 */
export function startingSegments(kind: HeatRun['kind'], siteId: string | null): Segment[] {
  const warm: Stretch[] = [
    ['Preheat', 190, [23, 260], null, 0],
    ['Soak', 75, [260, 260], null, 0],
  ];
  const cool: Stretch = ['Cool without moving', 90, [23, 23], null, 0];
  if (kind === 'site-preparation')
    return segmentsOf(siteId, [...warm, ['Dress the site', 120, [260, 260], null, 0], cool]);
  const gasSeconds = kind === 'installation' ? 80 : 75;
  return segmentsOf(siteId, [
    ...warm,
    ['Gas', gasSeconds, [260, 260], [380, 380], 45],
    ['Hold', kind === 'installation' ? 20 : 10, [260, 260], [380, 380], 45],
    cool,
  ]);
}

/** A site on a part: its rework area is the part's body. */
export function siteOn(part: Part, siteId: string): Site {
  return {
    id: siteId,
    name: part.refdes,
    target: part.refdes,
    side: part.side,
    area: bodyOf(part),
    alloyOff: part.alloy,
    alloyOn: 'sac305',
  };
}

/** The three heat runs of an exchange: off, dress, on. */
export function runsFor(siteIds: readonly string[], side: Site['side'], firstNumber = 1): HeatRun[] {
  const run = (offset: number, kind: HeatRun['kind'], name: string): HeatRun => ({
    id: `run-${firstNumber + offset}`,
    name,
    kind,
    side,
    siteIds: [...siteIds],
    segments:
      siteIds.length > 1 && kind !== 'site-preparation'
        ? segmentsForMany(kind, siteIds)
        : startingSegments(kind, siteIds[0] ?? null),
  });
  return [
    run(0, 'removal', 'Removal'),
    run(1, 'site-preparation', 'Site preparation'),
    run(2, 'installation', 'Installation'),
  ];
}

/** One preheat serves several targets: the gas and hold stretches come once per site. */
function segmentsForMany(kind: HeatRun['kind'], siteIds: readonly string[]): Segment[] {
  const single = startingSegments(kind, siteIds[0]);
  const gas = single.filter((segment) => segment.gas);
  const perSite = siteIds.flatMap((siteId) =>
    gas.map((segment) => ({ ...segment, name: `${segment.name} ${siteId}`, siteId })),
  );
  return [...single.slice(0, 2), ...perSite, single[single.length - 1]];
}

/** A plan with nothing decided: no site, no run. */
export function emptyPlan(number: string): Plan {
  return {
    format: PLAN_FORMAT,
    version: PLAN_VERSION,
    ticket: { number, customer: '', unit: '', order: '', technician: '', date: '', notes: '' },
    station: startingStation(),
    sites: [],
    heatRuns: [],
    tags: [],
    clampedTurnDeg: 0,
  };
}

/**
 * The plan with a site at each given part: replace tags and the three heat runs.
 * Parts that the board does not have are skipped; check them before.
 */
export function planForTargets(board: Board, number: string, targets: readonly string[]): Plan {
  const parts = targets.flatMap((refdes) => board.parts.filter((part) => part.refdes === refdes));
  const sites = parts.map((part, index) => siteOn(part, `site-${index + 1}`));
  const plan = emptyPlan(number);
  return {
    ...plan,
    sites,
    heatRuns: sites.length
      ? runsFor(
          sites.map((site) => site.id),
          sites[0].side,
        )
      : [],
    tags: sites.map((site, index) => ({
      id: `tag-${index + 1}`,
      kind: 'replace',
      order: index + 1,
      note: '',
      refdes: site.target,
      siteId: site.id,
      comesOff: '',
      goesOn: '',
    })),
  };
}
