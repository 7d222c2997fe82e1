import { ownToBoard, type Part } from '../../board.ts';
import { type Point, turnVector } from '../../geometry.ts';
import { tidy } from './align.ts';
import type { PartAspect, PartChange, UpdateSource } from './types.ts';

/** What two exports of one board may differ by in rounding. */
const PLACE_MM = 0.05;
const TURN_DEGREES = 0.5;
const SIZE_MM = 0.05;
const HEIGHT_MM = 0.005;
const PIN_MM = 0.1;

/** What files say of single parts, as sets. */
export type ToldOfParts = {
  readonly turns: boolean;
  readonly fitted: ReadonlySet<string>;
  readonly heights: ReadonlySet<string>;
  readonly sizeless: ReadonlySet<string>;
};

export const toldOfParts = ({ told }: UpdateSource): ToldOfParts => ({
  turns: told.turns,
  fitted: new Set(told.fitted),
  heights: new Set(told.heights),
  sizeless: new Set(told.sizeless),
});

/**
 * What the files say otherwise of a part. `file`: the part in the ticket's frame, under the files' name. `atPin1`: the files
 * put the part at its pin 1, where the ticket has it in its middle: then it did not move.
 */
export function partChange(before: Part, file: Part, told: ToldOfParts): { change: PartChange; atPin1: boolean } {
  const after = inAxesOf(before, file, told.turns);
  const movedMm = Math.hypot(after.x - before.x, after.y - before.y);
  const turnedDeg = tidy(((((after.turn - before.turn + 180) % 360) + 360) % 360) - 180);
  const atPin1 = movedMm > PLACE_MM && liesAtPin1(before, after);
  const differs: Record<PartAspect, boolean> = {
    place: movedMm > PLACE_MM && !atPin1,
    turn: Math.abs(turnedDeg) > TURN_DEGREES && told.turns,
    side: before.side !== after.side,
    size: !told.sizeless.has(file.refdes) && !namesLess(before, after) && differentBody(before, after),
    package: after.package.name !== '' && after.package.name !== before.package.name,
    value: after.value !== '' && after.value !== before.value,
    height: told.heights.has(file.refdes) && differentHeight(before, after),
    fitted: told.fitted.has(file.refdes) && before.fitted !== after.fitted,
    pins: differentPins(before, after),
  };
  const aspects = (Object.keys(differs) as PartAspect[]).filter((aspect) => differs[aspect]);
  const originDoubt = aspects.includes('place') && mayBeOrigin(before, after);
  return { change: { refdes: before.refdes, before, after, aspects, movedMm, turnedDeg, originDoubt }, atPin1 };
}

/** Pads alone, without a package's name, tell less of a body than the name did. */
const namesLess = (before: Part, after: Part): boolean => after.package.name === '' && before.package.name !== '';

const near = (a: number, b: number): boolean => Math.abs(a - b) <= SIZE_MM;

/**
 * A body may be described along either of its sides: a chip of 1 x 2 not turned lies like one of 2 x 1 turned by 90. The
 * same part in the axes that the ticket uses for it. Files made of pads alone tell no turn: then the ticket's is taken.
 */
function inAxesOf(before: Part, file: Part, turnsTold: boolean): Part {
  if (!turnsTold) return withTurnOf(before, file);
  if (!liesAcross(before, file)) return file;
  const ways = [file, withAxes(file, 1), withAxes(file, 3)];
  const best = ways.reduce((least, way) => (awayFrom(before, way) < awayFrom(before, least) ? way : least));
  // Without pads a name tells a body's size, but not along which side its leads stand.
  return liesAcross(before, best) && best.pinCount === undefined ? withSizeOf(before, best) : best;
}

const liesAcross = ({ package: a }: Part, { package: b }: Part): boolean =>
  near(a.lengthMm, b.widthMm) && near(a.widthMm, b.lengthMm) && !near(a.lengthMm, b.lengthMm);

function withSizeOf({ package: { lengthMm, widthMm, shape } }: Part, file: Part): Part {
  return { ...file, package: { ...file.package, lengthMm, widthMm, shape } };
}

/** The pads' box, which is not turned, in the axes of a part that is. Between quarters a box tells neither size nor pins. */
function withTurnOf(before: Part, file: Part): Part {
  const { turn } = before;
  const steps = turn / 90;
  if (Number.isInteger(steps)) {
    const quarters = ((Math.round(before.side === 'bottom' ? -steps : steps) % 4) + 4) % 4;
    return { ...withAxes(file, quarters), turn };
  }
  const { pin1: _, ...unmarked } = withSizeOf(before, file);
  return { ...unmarked, turn };
}

/** The same body with its own axes turned by quarters; on the bottom they are mirrored before they are turned. */
function withAxes(part: Part, quarters: number): Part {
  const { package: body, pin1, turn, side } = part;
  const turned = turn + (side === 'bottom' ? -90 : 90) * quarters;
  const lying = quarters % 2 === 1 ? { ...body, lengthMm: body.widthMm, widthMm: body.lengthMm } : body;
  const own = pin1 && turnVector(pin1.x, pin1.y, -90 * quarters);
  return {
    ...part,
    turn: ((turned % 360) + 360) % 360,
    package: lying,
    ...(own ? { pin1: { x: tidy(own.x), y: tidy(own.y) } } : {}),
  };
}

/** How badly one description fits another: by pin 1 where both have it, else by the turn. */
function awayFrom(before: Part, after: Part): number {
  if (before.pin1 && after.pin1) return Math.hypot(before.pin1.x - after.pin1.x, before.pin1.y - after.pin1.y);
  const off = (((after.turn - before.turn) % 360) + 360) % 360;
  return Math.min(off, 360 - off);
}

function liesAtPin1(before: Part, after: Part): boolean {
  if (!before.pin1 || after.pin1 || before.side !== after.side) return false;
  const pin: Point = ownToBoard(before, before.pin1);
  return Math.hypot(pin.x - after.x, pin.y - after.y) <= PLACE_MM;
}

/** Connectors are the parts whose drawings seldom start in the middle: a point within the body is then no sure move. */
function mayBeOrigin(before: Part, after: Part): boolean {
  if (before.pinCount === undefined || after.pinCount !== undefined || before.side !== after.side) return false;
  const own = turnVector(after.x - before.x, after.y - before.y, -before.turn);
  const { lengthMm, widthMm } = before.package;
  const within = Math.abs(own.x) <= lengthMm / 2 + ORIGIN_MM && Math.abs(own.y) <= widthMm / 2 + ORIGIN_MM;
  return within && before.class.startsWith('connector');
}

const ORIGIN_MM = 1;

function differentBody({ package: a }: Part, { package: b }: Part): boolean {
  return a.shape !== b.shape || !near(a.lengthMm, b.lengthMm) || !near(a.widthMm, b.widthMm);
}

function differentHeight({ package: a }: Part, { package: b }: Part): boolean {
  if (b.heightMm === null) return false;
  return a.heightMm === null || Math.abs(a.heightMm - b.heightMm) > HEIGHT_MM;
}

function differentPins(before: Part, after: Part): boolean {
  const { pin1, pinCount, padAreaMm2 } = after;
  const mark = pin1 && (!before.pin1 || Math.hypot(pin1.x - before.pin1.x, pin1.y - before.pin1.y) > PIN_MM);
  const area = padAreaMm2 && Math.abs(padAreaMm2 / (before.padAreaMm2 ?? Number.POSITIVE_INFINITY) - 1) > 0.02;
  return Boolean(mark) || (pinCount !== undefined && pinCount !== before.pinCount) || Boolean(area);
}
