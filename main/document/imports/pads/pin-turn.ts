import { type Box, boxCentre, boxHeight, boxOfPoints, boxWidth, normalAngle, type Point, turnPoint } from '../plane.ts';
import { FIRST_OF_TWO, FIRST_PINS } from './extents.ts';

const MOST_PINS = 400;
/** Rows may lie askew by rounding: only a clearly smaller box counts as turned. */
const SMALLER = 0.98;
/** A row of pins has no sides to speak of across it. */
const THIN_MM = 0.05;

/**
 * The turn that pins tell by themselves, degrees: rows of pins lie along the part's own axes, and pin 1 on the left (two pins)
 * or on the upper left (more), the zero orientation of IPC-7351, level A (from memory). Null where no pin 1 is named.
 */
export function turnByPins(pins: ReadonlyMap<string, Point>, side: 'top' | 'bottom'): number | null {
  const names = pins.size === 2 ? [...FIRST_PINS, ...FIRST_OF_TWO] : FIRST_PINS;
  const firstName = names.find((name) => pins.has(name));
  if (firstName === undefined || pins.size < 2) return null;
  // The bottom is unmirrored first; turns then run backwards.
  const points = new Map([...pins].map(([pin, { x, y }]) => [pin, { x, y: side === 'bottom' ? -y : y }]));
  const first = points.get(firstName) as Point;
  const all = [...points.values()].slice(0, MOST_PINS);
  const turn = pins.size === 2 ? towards(first, all.find((point) => point !== first) as Point) : turnOfRows(first, all);
  return normalAngle(Math.round((side === 'bottom' ? -turn : turn) * 1e3) / 1e3);
}

const towards = (from: Point, to: Point): number => (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;

function turnOfRows(first: Point, all: readonly Point[]): number {
  const askew = askewOf(all);
  let best = { turn: 0, score: Number.NEGATIVE_INFINITY };
  for (const quarter of [0, 90, 180, 270]) {
    const turn = askew + quarter;
    const score = upperLeft(turnPoint(first, -turn), turnedBox(all, turn));
    if (score > best.score + 1e-6) best = { turn, score };
  }
  return best.turn;
}

const turnedBox = (points: readonly Point[], turn: number): Box =>
  boxOfPoints(points.map((point) => turnPoint(point, -turn)));

/** 0 to 90 degrees: the direction of a nearest neighbour in which the pins need the smallest box. */
function askewOf(points: readonly Point[]): number {
  const area = (turn: number): number => {
    const box = turnedBox(points, turn);
    return boxWidth(box) * boxHeight(box);
  };
  let best = { turn: 0, area: area(0) };
  const angles = new Set(points.slice(0, 40).map((point) => Math.round(nearestAngle(point, points) * 100) / 100));
  for (const turn of angles) {
    const own = area(turn);
    if (own < best.area * SMALLER) best = { turn, area: own };
  }
  return best.turn;
}

function nearestAngle(point: Point, points: readonly Point[]): number {
  let best = { gap: Number.POSITIVE_INFINITY, angle: 0 };
  for (const other of points) {
    const gap = Math.hypot(other.x - point.x, other.y - point.y);
    if (other !== point && gap < best.gap) best = { gap, angle: towards(point, other) };
  }
  return ((best.angle % 90) + 90) % 90;
}

/** Left counts more than up: pin 1 of a row stands at its left end, of two rows or four sides on the left at the top. */
function upperLeft(pin: Point, box: Box): number {
  const middle = boxCentre(box);
  const share = (off: number, size: number): number => (size > THIN_MM ? (2 * off) / size : 0);
  return -share(pin.x - middle.x, boxWidth(box)) + 0.5 * share(pin.y - middle.y, boxHeight(box));
}
