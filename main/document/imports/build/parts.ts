import type { Part } from '../../../../shared-types/board.ts';
import { guessPart } from '../../../../shared-types/library/guess-part.ts';
import { tidy } from '../outline/contour.ts';
import type { ClaimedLand } from '../pads/claim.ts';
import { type Pad, padsBox } from '../pads/collect.ts';
import { describeLand, type PartLand, type Pose, toOwnAxes } from '../pads/extents.ts';
import { fitsTurned, ownBoxes, type PinRows, pinRows, rowsByPin1 } from '../pads/rows.ts';
import { applyTurn, type TurnRule } from '../pads/turn.ts';
import { boxCentre, boxHeight, boxWidth, distance, type Point } from '../plane.ts';
import type { PlacedMm } from '../register/register.ts';

/** A part with what the import learned on the way. */
export interface BuiltPart {
  readonly part: Part;
  readonly placement: PlacedMm;
  readonly land: PartLand | null;
  /** Placement to pads' middle, mm; null without pads. */
  readonly offMm: number | null;
  /** Why the pads' middle was taken as the body's, or null: the placement was. */
  readonly middle: 'pin' | 'far' | null;
  /** Where the body size comes from; 'assumed': nothing told it. */
  readonly sizeBy: 'name' | 'pads' | 'unnamedPads' | 'firstPad' | 'assumed';
}

export interface PartContext {
  readonly pads: ReadonlyMap<string, readonly Pad[]>;
  /** Added to placements to reach Gerber coordinates. */
  readonly offset: Point;
  readonly rule: TurnRule;
  /** Pads claimed on layers without references, by reference. */
  readonly claimed: ReadonlyMap<string, ClaimedLand>;
}

/** A part at Gerber coordinates: middle, turn, body, class guess, pin 1. `placement` must not lie on an inner layer. */
export function buildPart(placement: PlacedMm, { pads, offset, rule, claimed }: PartContext): BuiltPart {
  const side = placement.side === 'bottom' ? 'bottom' : 'top';
  const turn = applyTurn(placement.rotation, side, rule);
  const placed = { x: placement.x + offset.x, y: placement.y + offset.y };
  const own = pads.get(placement.refdes);
  const middle = own ? bodyMiddle(placed, own) : null;
  const centre = middle?.at ?? placed;
  const land = own ? describeLand(own, { ...centre, side, turn }) : null;
  const pin1 = land ? land.pin1 : firstPad(placement, offset, { ...centre, side, turn });
  const body = bodyOf(
    placement,
    land,
    claimed.get(placement.refdes) ?? null,
    pin1,
    own ? pinRows(ownBoxes(own, { ...centre, side, turn })) : null,
  );
  const part: Part = {
    refdes: placement.refdes,
    side,
    x: tidy(centre.x),
    y: tidy(centre.y),
    turn,
    package: body.package,
    class: body.classId,
    classGuessed: true,
    value: placement.value.slice(0, 200),
    fitted: placement.fitted,
    alloy: 'unknown',
    edgeBonded: false,
    underfilled: false,
    coated: false,
    ...(land ? { pinCount: land.pinCount } : {}),
    ...(land?.padAreaMm2 ? { padAreaMm2: Math.round(land.padAreaMm2 * 1e4) / 1e4 } : {}),
    ...(pin1 ? { pin1: { x: tidy(pin1.x), y: tidy(pin1.y) } } : {}),
  };
  const offMm = own ? distance(placed, boxCentre(padsBox(own))) : null;
  return { part, placement, land, offMm, middle: middle?.why ?? null, sizeBy: body.sizeBy };
}

/** Pin 1 by the table's own pad columns, in own axes; null where they say the middle or nothing. */
function firstPad({ pad1 }: PlacedMm, offset: Point, pose: Pose): Point | null {
  if (pad1 === null) return null;
  const own = toOwnAxes(pose, { x: pad1.x + offset.x, y: pad1.y + offset.y });
  return Math.hypot(own.x, own.y) > OFF_MM ? own : null;
}

const OFF_MM = 0.05;
const FAR_SHARE = 0.25;

/**
 * Placement files give the point a machine picks: the body's middle. Some give the drawing's origin instead: then it lies
 * on a pin, or far off the pads, and the middle of the pads is the better guess.
 */
function bodyMiddle(placed: Point, pads: readonly Pad[]): { at: Point; why: 'pin' | 'far' } | null {
  const box = padsBox(pads);
  const at = boxCentre(box);
  if (distance(at, placed) <= OFF_MM) return null;
  const first = pads.filter(({ pin }) => pin === '1' || pin === 'A1');
  // A pin that goes through has a pad on each side, at one place.
  if (first.length > 0 && first.every((pad) => distance(pad.at, placed) <= OFF_MM)) return { at, why: 'pin' };
  const far =
    Math.abs(at.x - placed.x) > FAR_SHARE * boxWidth(box) || Math.abs(at.y - placed.y) > FAR_SHARE * boxHeight(box);
  return far ? { at, why: 'far' } : null;
}

const FALLBACK_MM = 1;
const MIN_BODY_MM = 0.1;
/** A first pad's own length and width are not in the table: about this much lies beyond its middle on both sides together. */
const PAD_MM = 0.6;

type Size = { readonly lengthMm: number; readonly widthMm: number };

/** Class and body: by name first, then by named pads, unnamed pads, and the first pad's distance from the middle. */
function bodyOf(
  placement: PlacedMm,
  land: PartLand | null,
  claimed: ClaimedLand | null,
  pin1: Point | null,
  rows: PinRows | null,
) {
  const { refdes, packageName, value } = placement;
  const pads = land ?? claimed;
  const guessWith = (bodyMm: Size | null) =>
    guessPart({
      refdes,
      packageName,
      value,
      pinCount: land?.pinCount ?? null,
      bodyMm: bodyMm && { lengthMm: bodyMm.lengthMm, widthMm: bodyMm.widthMm },
      padGrid: pads?.grid ?? null,
    });
  const byName = guessWith(null).package !== null;
  const byArm = pin1 && { lengthMm: 2 * Math.abs(pin1.x) + PAD_MM, widthMm: 2 * Math.abs(pin1.y) + PAD_MM };
  const guess = guessWith(pads ?? byArm);
  const found = guess.package ?? {
    shape: 'rectangle' as const,
    lengthMm: FALLBACK_MM,
    widthMm: FALLBACK_MM,
    heightMm: null,
  };
  const leads = rows ?? claimed?.rows ?? (pin1 && rowsByPin1(pin1, found));
  const size = WITH_LEADS.has(guess.classId) && leads && byName ? alongRows(found, leads) : found;
  const mm = (length: number) => Math.max(MIN_BODY_MM, Math.round(length * 1e4) / 1e4);
  return {
    classId: guess.classId,
    sizeBy: sizeSource(byName, land, claimed, byArm),
    package: {
      name: packageName.slice(0, 200),
      shape: size.shape,
      lengthMm: mm(size.lengthMm),
      widthMm: mm(size.widthMm),
      heightMm: placement.heightMm && placement.heightMm < 200 ? placement.heightMm : size.heightMm,
    },
  };
}

/** Classes whose leads reach out beside the body: there the pads' long side says nothing about the body's. */
const WITH_LEADS = new Set(['so', 'sot', 'optocoupler']);

function alongRows<T extends Size>(size: T, rows: PinRows): T {
  return fitsTurned(size, rows) ? { ...size, lengthMm: size.widthMm, widthMm: size.lengthMm } : size;
}

function sizeSource(
  byName: boolean,
  land: PartLand | null,
  claimed: ClaimedLand | null,
  byArm: Size | null,
): BuiltPart['sizeBy'] {
  if (byName) return 'name';
  if (land) return 'pads';
  if (claimed) return 'unnamedPads';
  return byArm ? 'firstPad' : 'assumed';
}

/** Body size that the package name tells by itself, or null. */
export function sizeByName({ refdes, packageName, value }: PlacedMm): Size | null {
  return guessPart({ refdes, packageName, value, pinCount: null, bodyMm: null }).package;
}
