import type { Board, Part } from '../../shared-types/board.ts';
import { boxOf, type Contour, flattenContour } from '../../shared-types/geometry.ts';
import { classById } from '../../shared-types/library/classes.ts';
import { heightOf } from '../../shared-types/library/limits.ts';
import { preheaterById } from '../../shared-types/library/preheaters.ts';
import { DEFAULT_SHIELD, shieldById, shieldMass, shieldResistance } from '../../shared-types/library/shields.ts';
import type { Nozzle, Plan, Site, Station } from '../../shared-types/plan.ts';
import { fail, type Problem, type Result, succeed } from '../../shared-types/problem.ts';
import type { Segment } from '../../shared-types/profile.ts';
import { measuredOutletC } from '../../shared-types/rules/outlet.ts';
import type { TagOf } from '../../shared-types/tags.ts';
import { bodyOfCover } from './covers.ts';
import { arealProperties } from './layers.ts';
import type { Presence } from './presence.ts';
import type {
  HeatScene,
  RingM,
  SceneBody,
  SceneFence,
  SceneNozzle,
  SceneOverlay,
  ScenePreheater,
  SceneSegment,
} from './scene.ts';

/** Emissivity of parts and solder mask, and of a shiny shield (heat-model.md, section 3). */
const DULL = 0.9;
const SHINY = 0.1;

/** Outlet = room + 0.9 (set - room) unless measured (assumption of the model). */
const OUTLET_SHARE = 0.9;

/** What fume extraction adds to idle convection, W/m2K (assumption of the model). */
const FUME_FILM = { off: 0, low: 3, high: 8 } as const;

const metres = (mm: number): number => mm / 1000;

function ring(contour: Contour): RingM {
  return flattenContour(contour).map((point) => [metres(point.x), metres(point.y)] as const);
}

/** Outlet temperature for a gas figure of the profile, °C; an emitter's own temperature is what its dial says. */
export function outletC(station: Station, gasC: number): number {
  if (station.gasReads === 'outlet' || station.nozzle.kind === 'infrared') return gasC;
  const { roomC, outletReadings } = station;
  if (outletReadings.length > 0) return measuredOutletC(outletReadings, roomC, gasC);
  return roomC + OUTLET_SHARE * (gasC - roomC);
}

/** The nozzle of a station, SI. */
export function nozzleOf(nozzle: Nozzle): SceneNozzle {
  return {
    mouth:
      nozzle.kind === 'round'
        ? { shape: 'round', diameterM: metres(nozzle.diameterMm) }
        : {
            shape: 'rect',
            lengthM: metres(nozzle.lengthMm),
            widthM: metres(nozzle.widthMm),
            turnDeg: nozzle.turnDeg,
          },
    standOffM: metres(nozzle.standOffMm),
    sweepRadiusM: 'sweepRadiusMm' in nozzle ? metres(nozzle.sweepRadiusMm) : 0,
    tiltDeg: 'tiltDeg' in nozzle ? nozzle.tiltDeg : 0,
    headingDeg: 'headingDeg' in nozzle ? nozzle.headingDeg : 0,
    hood:
      nozzle.kind === 'hood'
        ? { filmAt30: nozzle.filmAt30LMin, rimGapM: metres(nozzle.rimGapMm), leak: nozzle.leak }
        : null,
    infrared: nozzle.kind === 'infrared' ? { emissivity: nozzle.emissivity } : null,
  };
}

/**
 * How much of the film inside passes a fence of loose foil. An assumption, chosen so that with a gap of 4 mm the nearest array part
 * loses some 8 % of its peak: the most that was published (Sci. Rep. 12:15118, 2022).
 */
const FENCE_LEAK = 0.8;

/** The fence round a site, in metres. */
function fenceOf(site: Site | undefined): SceneFence | null {
  if (!site?.fence) return null;
  const { area, fence } = site;
  return {
    xM: metres(area.x),
    yM: metres(area.y),
    lengthM: metres(area.lengthMm + 2 * fence.marginMm),
    widthM: metres(area.widthMm + 2 * fence.marginMm),
    turnDeg: area.turnDeg,
    rimGapM: metres(fence.rimGapMm),
    leak: FENCE_LEAK,
  };
}

function preheaterOf(board: Board, station: Station): ScenePreheater {
  const given = station.preheater;
  const kind = preheaterById(given.kind);
  const box = boxOf(flattenContour(board.outline));
  const centre = given.centre ?? { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  return {
    xM: metres(centre.x),
    yM: metres(centre.y),
    lengthM: metres(given.lengthMm),
    widthM: metres(given.widthMm),
    turnDeg: 0,
    film: given.filmWm2K ?? kind.filmWm2K,
    lagS: given.lagS ?? kind.lagS,
    sensor: given.sensor && {
      xM: metres(given.sensor.x),
      yM: metres(given.sensor.y),
      sourceMaxC: given.largestC,
    },
  };
}

type LaidShield = Pick<TagOf<'shield'>, 'shield' | 'gapMm' | 'layers' | 'waterG'>;
type ShieldFigures = { resistance: number; arealHeat: number; emissivity: number; mass: SceneOverlay | null };

/** A shield as series resistance, areal heat, outside and mass; null for an id that the library does not hold. */
function shieldFigures(laid: LaidShield, areaMm2: number): ShieldFigures | null {
  const shield = shieldById(laid.shield);
  if (!shield) return null;
  const { m2KW, arealMassJm2K, polishedOutside } = shieldResistance(shield, laid);
  return {
    resistance: m2KW,
    arealHeat: arealMassJm2K,
    emissivity: polishedOutside ? SHINY : DULL,
    mass: shieldMass(shield, laid, areaMm2),
  };
}

/** A mass over the layers: they lie between it and the part, and the film meets the mass. */
function overlayOver(mass: SceneOverlay, resistance: number): SceneOverlay {
  const through = (conductance: number) => 1 / (1 / conductance + resistance);
  return {
    ...mass,
    wetConductance: through(mass.wetConductance),
    dryConductance: through(mass.dryConductance),
  };
}

/** A part as a body of the scene; `laid` are the shields that its tags lay over it. */
export function bodyOfPart(part: Part, laid: readonly LaidShield[]): SceneBody {
  const partClass = classById(part.class);
  const { lengthMm, widthMm, shape } = part.package;
  const areaMm2 = lengthMm * widthMm * (shape === 'round' ? Math.PI / 4 : 1);
  const shields = laid.flatMap((one) => shieldFigures(one, areaMm2) ?? []);
  const resistance = shields.reduce((sum, shield) => sum + shield.resistance, 0);
  const mass = shields.findLast((shield) => shield.mass)?.mass;
  const trial = shields.length > 0 ? null : shieldFigures({ shield: DEFAULT_SHIELD }, areaMm2);
  return {
    id: part.refdes,
    side: part.side,
    xM: metres(part.x),
    yM: metres(part.y),
    lengthM: metres(lengthMm),
    widthM: metres(widthMm),
    turnDeg: part.turn,
    shape: shape === 'round' ? 'round' : 'rect',
    wallM: 0,
    heightM: metres(heightOf(part)),
    jointConductance: partClass.jointWm2K,
    gapConductance: 0,
    volumetricHeat: partClass.heatCapacityJm3K,
    conductivity: partClass.conductivityWmK,
    emissivity: shields.at(-1)?.emissivity ?? DULL,
    shieldResistance: mass ? 0 : resistance,
    shieldArealHeat: shields.reduce((sum, shield) => sum + shield.arealHeat, 0),
    overlay: mass ? overlayOver(mass, resistance) : null,
    metal: false,
    trialShield: trial && {
      resistance: trial.resistance,
      arealHeat: trial.arealHeat,
      emissivity: trial.emissivity,
    },
  };
}

const invalid = (where: string, reason: string, todo: string): { ok: false; problem: Problem } =>
  fail('invalid-field', { where, detail: { reason, todo } });

/** Site of a segment: its own, else the run's (or plan's) first. */
const segmentSite = (plan: Plan, presence: Presence, segment: Segment): Site | undefined =>
  plan.sites.find((candidate) => candidate.id === segment.siteId) ?? presence.sites[0] ?? plan.sites[0];

/** Nozzle centre of a segment, mm: its own, else its site's. */
export function nozzleCentre(plan: Plan, presence: Presence, segment: Segment): { x: number; y: number } | null {
  if (segment.nozzleCentre) return segment.nozzleCentre;
  const site = segmentSite(plan, presence, segment);
  return site ? { x: site.area.x, y: site.area.y } : null;
}

function segmentsOf(plan: Plan, presence: Presence): Result<SceneSegment[]> {
  const { station } = plan;
  const hottest = station.preheater.sensor ? Number.POSITIVE_INFINITY : station.preheater.largestC;
  const segments: SceneSegment[] = [];
  for (const segment of presence.run.segments) {
    const centre = nozzleCentre(plan, presence, segment);
    if (segment.gas && !centre) {
      const where = `segment ${segment.name} of heat run ${presence.run.name}`;
      return invalid(where, 'blows gas but names no site', 'Choose the site that the nozzle stands over.');
    }
    const gas = segment.gas && {
      startC: outletC(station, segment.gas.startC),
      endC: outletC(station, segment.gas.endC),
      flowStart: segment.flowLMin,
      flowEnd: segment.flowLMin,
    };
    segments.push({
      name: segment.name,
      seconds: segment.seconds,
      preheaterStartC: Math.min(hottest, segment.preheater.startC),
      preheaterEndC: Math.min(hottest, segment.preheater.endC),
      gas,
      nozzleXM: metres(centre?.x ?? 0),
      nozzleYM: metres(centre?.y ?? 0),
      fence: gas && fenceOf(segmentSite(plan, presence, segment)),
    });
  }
  return succeed(segments);
}

/**
 * The scene of one heat run of a ticket. Bodies: the parts of `presence` in order, then its covers.
 * A segment that blows gas without a site comes back as a problem.
 */
export function sceneOfTicket(board: Board, plan: Plan, presence: Presence): Result<HeatScene> {
  const { station } = plan;
  const segments = segmentsOf(plan, presence);
  if (!segments.ok) return segments;
  const shieldsOf = (refdes: string) =>
    plan.tags.filter((tag) => tag.kind === 'shield').filter((tag) => tag.refdes === refdes);
  const { thicknessM, volumetricHeat, inPlane, throughPlane } = arealProperties(board.laminate);
  return succeed({
    roomC: station.roomC,
    entrainedC: station.entrainedC,
    workedSide: presence.run.side,
    fumeFilm: FUME_FILM[station.fumeExtraction],
    board: {
      outlines: [ring(board.outline)],
      cutouts: board.cutouts.map(ring),
      thicknessM,
      volumetricHeat,
      inPlane,
      throughPlane,
      emissivity: DULL,
    },
    bodies: [
      ...presence.parts.map((part) => bodyOfPart(part, shieldsOf(part.refdes))),
      ...presence.covers.map(bodyOfCover),
    ],
    nozzle: nozzleOf(station.nozzle),
    preheater: preheaterOf(board, station),
    segments: segments.value,
  });
}
