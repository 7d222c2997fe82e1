import type { Part } from '../board.ts';
import type { Point } from '../geometry.ts';

/** Two-pin parts whose mark stands at one end, not at a corner. */
const POLARISED = /^(electrolytic|polymer|tantalum|supercapacitor|diode|led|coin-cell|lithium-cell|battery|melf)/;

/** Share of the half body at which a mark stands: well inside the body, and nearest to its corner or end. */
const OUT = 0.84;

/**
 * Where pin 1 may be marked, in the part's own axes, mm from the centre: the ends of two-pin parts, else the corners,
 * counter-clockwise from the upper left (pin 1 of a part at rest, IPC-7351 level A; from memory).
 */
export function pin1Places(part: Pick<Part, 'class' | 'package' | 'pinCount'>): Point[] {
  const x = round((OUT * part.package.lengthMm) / 2);
  const y = round((OUT * part.package.widthMm) / 2);
  const ends = part.pinCount === 2 || (part.pinCount === undefined && POLARISED.test(part.class));
  if (ends)
    return [
      { x: -x, y: 0 },
      { x, y: 0 },
    ];
  return [
    { x: -x, y },
    { x: -x, y: -y },
    { x, y: -y },
    { x, y },
  ];
}

const round = (mm: number): number => Math.round(mm * 1000) / 1000;

/** The place nearest to a point in the part's own axes. */
export function nearestPin1(part: Pick<Part, 'class' | 'package' | 'pinCount'>, own: Point): Point {
  const away = (place: Point) => Math.hypot(place.x - own.x, place.y - own.y);
  return pin1Places(part).reduce((best, place) => (away(place) < away(best) ? place : best));
}

/** The next place after the present mark, null after the last: what a key goes through. */
export function nextPin1(part: Pick<Part, 'class' | 'package' | 'pinCount' | 'pin1'>): Point | null {
  const places = pin1Places(part);
  const { pin1 } = part;
  if (!pin1) return places[0];
  const away = (place: Point) => Math.hypot(place.x - pin1.x, place.y - pin1.y);
  const now = places.reduce((best, place, index) => (away(place) < away(places[best]) ? index : best), 0);
  return places[now + 1] ?? null;
}
