import type { PadCheck } from '../../../../shared-types/import-report.ts';
import { type Pad, pinCentres } from '../pads/collect.ts';
import { toOwnAxes } from '../pads/extents.ts';
import {
  judgeTurns,
  type PhaseGroup,
  phaseGroups,
  type TurnRule,
  type TurnSample,
  type TurnVerdict,
} from '../pads/turn.ts';
import { angleDifference, type Point } from '../plane.ts';
import type { PlacedMm } from '../register/register.ts';
import type { BuiltPart } from './parts.ts';

export const CENTRE_LIMIT_MM = 0.05;
export const TURN_LIMIT_DEGREES = 1;

/** What the turn vote needs of every part that has pads; without any, the first pad's columns of the table serve. */
export function turnSamples(
  placements: readonly PlacedMm[],
  pads: ReadonlyMap<string, readonly Pad[]>,
): { samples: TurnSample[]; from: 'pads' | 'columns' | 'none' } {
  const samples = placements.flatMap((placement) => {
    const own = pads.get(placement.refdes);
    return own ? turnSample(placement, pinCentres(own)) : [];
  });
  if (samples.length > 0) return { samples, from: 'pads' };
  const columns = placements.flatMap((placement) => {
    const { pad1, x, y } = placement;
    const apart = pad1 !== null && Math.hypot(pad1.x - x, pad1.y - y) > MIN_ARM_MM;
    return apart
      ? turnSample(
          placement,
          new Map([
            ['1', pad1],
            ['middle', { x, y }],
          ]),
        )
      : [];
  });
  return { samples: columns, from: columns.length > 0 ? 'columns' : 'none' };
}

/** A first pad closer to the middle tells no direction. */
const MIN_ARM_MM = 0.1;

function turnSample({ refdes, side, packageName, rotation }: PlacedMm, pins: ReadonlyMap<string, Point>): TurnSample[] {
  return side === 'inner' ? [] : [{ refdes, side, packageName, written: rotation, pins }];
}

export interface CheckInput {
  readonly built: readonly BuiltPart[];
  readonly pads: ReadonlyMap<string, readonly Pad[]>;
  readonly layer: PadCheck['layer'];
  readonly rule: TurnRule;
}

/** Holds every part against its pads: side, middle, turn. */
export function checkParts({ built, pads, layer, rule }: CheckInput): PadCheck {
  const withPads = built.filter(({ part }) => pads.has(part.refdes));
  const placed = new Set(built.map(({ placement }) => placement.refdes));
  const { samples } = turnSamples(
    withPads.map(({ placement }) => placement),
    pads,
  );
  return {
    layer,
    withPads: withPads.length,
    side: checkSides(withPads, pads),
    centre: checkCentres(withPads),
    turn: checkTurns(withPads, phaseGroups(samples), pads, rule),
    withoutPads: built.flatMap(({ part }) => (pads.has(part.refdes) ? [] : [part.refdes])),
    padsOnly: [...pads.keys()].filter((refdes) => !placed.has(refdes)).sort(byName),
  };
}

function byName(a: string, b: string): number {
  return a.localeCompare(b, 'en', { numeric: true });
}

/** Surface pads lie on the side of their part; pins that go through say nothing. */
function checkSides(parts: readonly BuiltPart[], pads: CheckInput['pads']): PadCheck['side'] {
  const wrong: string[] = [];
  let [right, throughHole] = [0, 0];
  for (const { part } of parts) {
    const surface = (pads.get(part.refdes) ?? []).filter((pad) => !pad.through);
    if (surface.length === 0) throughHole++;
    else if (surface.some((pad) => pad.side === part.side)) right++;
    else wrong.push(part.refdes);
  }
  return { right, throughHole, wrong };
}

function checkCentres(parts: readonly BuiltPart[]): PadCheck['centre'] {
  const off = parts.filter(({ offMm }) => offMm !== null && offMm > CENTRE_LIMIT_MM);
  const spread = new Map<string, { least: number; most: number; count: number }>();
  for (const { part, offMm } of parts) {
    const known = spread.get(part.package.name) ?? { least: Number.POSITIVE_INFINITY, most: 0, count: 0 };
    const value = offMm ?? 0;
    spread.set(part.package.name, {
      least: Math.min(known.least, value),
      most: Math.max(known.most, value),
      count: known.count + 1,
    });
  }
  return {
    within: parts.length - off.length,
    limitMm: CENTRE_LIMIT_MM,
    off: off.map(({ part, offMm, middle }) => {
      const alike = spread.get(part.package.name);
      const common = alike !== undefined && alike.count > 1 && alike.most - alike.least < SAME_OFF_MM;
      const why = middle ?? (common ? 'uneven' : 'single');
      return { refdes: part.refdes, mm: Math.round((offMm ?? 0) * 1e4) / 1e4, packageName: part.package.name, why };
    }),
  };
}

/** Parts of one package that lie off their pads by the same amount: then the land pattern is uneven, not the placement. */
const SAME_OFF_MM = 0.01;

function checkTurns(
  parts: readonly BuiltPart[],
  groups: readonly PhaseGroup[],
  pads: CheckInput['pads'],
  rule: TurnRule,
): PadCheck['turn'] {
  const verdicts = judgeTurns(groups, rule);
  const compared = verdicts.filter(({ groupSize }) => groupSize > 1);
  const many = compared.filter(({ twoPads }) => !twoPads);
  const two = compared.filter(({ twoPads }) => twoPads);
  const alone = verdicts.filter(({ groupSize }) => groupSize === 1).map(({ refdes }) => refdes);
  const byRefdes = new Map(parts.map((one) => [one.part.refdes, one]));
  const along = alone.filter((refdes) => liesAlongAxes(byRefdes.get(refdes), pads.get(refdes) ?? []));
  const right = (list: readonly TurnVerdict[]) =>
    list.filter(({ offDegrees }) => offDegrees <= TURN_LIMIT_DEGREES).length;
  return {
    limitDegrees: TURN_LIMIT_DEGREES,
    manyPins: { right: right(many), of: many.length },
    twoPads: {
      right: right(two),
      of: two.length,
      rightWithPinNumbers: two.filter(({ offWithPins }) => offWithPins <= TURN_LIMIT_DEGREES).length,
    },
    alone: { alongAxes: along.length, of: alone.length, others: alone.filter((refdes) => !along.includes(refdes)) },
    onePin: parts.length - verdicts.length,
    wrong: compared
      .filter(({ offDegrees }) => offDegrees > TURN_LIMIT_DEGREES)
      .map(({ refdes, offDegrees }) => ({ refdes, degrees: Math.round(offDegrees * 10) / 10 })),
  };
}

const MANY_PINS = 400;

/** True when a part's pins, seen in its own axes, stand in rows along them: most nearest neighbours lie level or upright. */
function liesAlongAxes(built: BuiltPart | undefined, pads: readonly Pad[]): boolean {
  if (!built) return false;
  const pins = [...pinCentres(pads).values()].slice(0, MANY_PINS).map((pin) => toOwnAxes(built.part, pin));
  const level = pins.filter((pin) => isLevel(pin, pins));
  return level.length > pins.length / 2;
}

function isLevel(pin: Point, pins: readonly Point[]): boolean {
  let nearest: { angle: number; gap: number } | null = null;
  for (const other of pins) {
    const gap = Math.hypot(other.x - pin.x, other.y - pin.y);
    if (other === pin || gap === 0 || (nearest && gap >= nearest.gap)) continue;
    nearest = { gap, angle: (Math.atan2(other.y - pin.y, other.x - pin.x) * 180) / Math.PI };
  }
  return nearest !== null && angleDifference(nearest.angle, 0, 90) <= TURN_LIMIT_DEGREES;
}
