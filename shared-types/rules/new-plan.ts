import { type Board, bodyOf, type Part } from '../board.ts';
import { PLAN_FORMAT, PLAN_VERSION } from '../format-version.ts';
import type { HeatRun, Plan, Site, Station } from '../plan.ts';
import type { Segment } from '../profile.ts';
import { emptyStepWork } from '../steps.ts';
import { emptyStrapWork } from '../straps.ts';

/**
 * Station a new ticket starts with: a 10 mm round nozzle kept moving over the part and a ceramic preheater.
 * Common practice, no source; the technician replaces it by the station on the bench.
 */
export function startingStation(): Station {
  return {
    name: 'Bench station',
    nozzle: { kind: 'round', diameterMm: 10, standOffMm: 20, sweepRadiusMm: 6, tiltDeg: 0, headingDeg: 0 },
    gasReads: 'setting',
    preheater: { kind: 'ceramic', lengthMm: 240, widthMm: 180, centre: null, sensor: null, largestC: 400 },
    roomC: 23,
    entrainedC: 60,
    fumeExtraction: 'low',
    flowLevels: [],
    outletReadings: [],
    boardReadings: null,
    calibration: null,
  };
}

/** The station with its open nozzle moved on a circle that reaches about three quarters of the way to the part's edge. */
export function stationFor(station: Station, bodyMm: number): Station {
  if (!('sweepRadiusMm' in station.nozzle)) return station;
  const sweepRadiusMm = Math.round(2 * Math.min(14, Math.max(2, 0.38 * bodyMm))) / 2;
  return { ...station, nozzle: { ...station.nozzle, sweepRadiusMm } };
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

/** Smaller side of a body that a starting profile is made for when nothing else is said, mm. */
const USUAL_BODY_MM = 17;

/**
 * Gas setting that a starting profile begins from, C: a wider part takes more. Fitted by running the heat model on bare boards of
 * 60 x 40 to 200 x 150 mm with parts of 10 to 31 mm, so that the coldest joint comes near 230 C; an assumption of ours.
 */
const startingGasC = (bodyMm: number): number => Math.round(Math.min(390, Math.max(325, 310 + 2.4 * bodyMm)) / 5) * 5;

/**
 * Starting profiles for a lead-free array part, to be changed for the board at hand.
 * Heat model page, section 9: about 150 C at the site after 190 s and a soak, gas 70-90 s, hold, cool without moving; common
 * practice, no source.
 */
export function startingSegments(kind: HeatRun['kind'], siteId: string | null, bodyMm = USUAL_BODY_MM): Segment[] {
  const warm: Stretch[] = [
    ['Preheat', 190, [400, 400], null, 0],
    ['Soak', 75, [290, 290], null, 0],
  ];
  const cool: Stretch = ['Cool without moving', 90, [23, 23], null, 0];
  if (kind === 'site-preparation') {
    return segmentsOf(siteId, [...warm, ['Dress the site', 120, [290, 290], null, 0], cool]);
  }
  const gasC = startingGasC(bodyMm) - (kind === 'installation' ? 0 : 10);
  return segmentsOf(siteId, [
    ...warm,
    ['Gas', 80, [290, 290], [gasC - 80, gasC], 30],
    ['Hold', kind === 'installation' ? 25 : 15, [290, 290], [gasC, gasC], 30],
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
    exchangedBefore: null,
    incoming: { moistureLevel: 'unknown', openH: null, thicknessMm: null },
    fence: null,
  };
}

const smallerSide = (area: Site['area']): number => Math.min(area.lengthMm, area.widthMm);

/** The three heat runs of an exchange: off, dress, on. `sites`: where known, for their sizes and names. */
export function runsFor(
  siteIds: readonly string[],
  side: Site['side'],
  firstNumber = 1,
  sites: readonly Site[] = [],
): HeatRun[] {
  const run = (offset: number, kind: HeatRun['kind'], name: string): HeatRun => ({
    id: `run-${firstNumber + offset}`,
    name,
    kind,
    side,
    siteIds: [...siteIds],
    segments: segmentsForSites(kind, siteIds, sites),
  });
  return [
    run(0, 'removal', 'Removal'),
    run(1, 'site-preparation', 'Site preparation'),
    run(2, 'installation', 'Installation'),
  ];
}

/** The blowing stretches of a starting profile for one site, named by its target. */
export function siteStretches(kind: HeatRun['kind'], site: Site): Segment[] {
  return startingSegments(kind, site.id, smallerSide(site.area))
    .filter((segment) => segment.gas)
    .map((segment) => ({ ...segment, name: `${segment.name} ${site.target}` }));
}

/** One preheat serves several targets: the gas and hold stretches come once per site. */
export function segmentsForSites(kind: HeatRun['kind'], siteIds: readonly string[], sites: readonly Site[]): Segment[] {
  const known = siteIds.flatMap((siteId) => sites.find((site) => site.id === siteId) ?? []);
  const [first] = known;
  const whole = startingSegments(kind, siteIds[0] ?? null, first && smallerSide(first.area));
  if (known.length < 2 || kind === 'site-preparation') return whole;
  const heated = known.flatMap((site) => siteStretches(kind, site));
  return [...whole.slice(0, 2), ...heated, whole[whole.length - 1]];
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
    straps: emptyStrapWork(),
    exchanges: [],
    steps: emptyStepWork(),
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
  const widest = Math.max(...sites.map((site) => smallerSide(site.area)));
  return {
    ...plan,
    station: sites.length ? stationFor(plan.station, widest) : plan.station,
    sites,
    heatRuns: sites.length
      ? runsFor(
          sites.map((site) => site.id),
          sites[0].side,
          1,
          sites,
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
