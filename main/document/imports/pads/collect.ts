import type { GerberImage, GerberObject } from '../gerber/types.ts';
import { type Box, boxCentre, boxOfDiscs, type Disc, type Point } from '../plane.ts';
import { flattenLoop } from '../segments.ts';

export type CopperSide = 'top' | 'bottom';

/** One pad of a part: its pin and its hull in board axes (mm, as in the Gerber file). */
export interface Pad {
  readonly pin: string;
  readonly side: CopperSide;
  /** Through-hole pads stand on both sides. */
  readonly through: boolean;
  readonly at: Point;
  readonly hull: readonly Disc[];
}

/** Pads with X2 pin attributes of one copper layer, by reference (Gerber format specification, section 5.6.13). */
export function collectPads(image: GerberImage, side: CopperSide, into: Map<string, Pad[]>): void {
  for (const object of image.objects) {
    const { refdes, pin } = object.attributes;
    if (!object.dark || refdes === undefined || pin === undefined) continue;
    const hull = hullOf(object);
    const at = object.kind === 'flash' ? object.at : boxCentre(boxOfDiscs(hull));
    const through = object.attributes.apertureFunction?.startsWith('ComponentPad') ?? false;
    const pad: Pad = { pin, side, through, at, hull };
    const pads = into.get(refdes);
    if (pads) pads.push(pad);
    else into.set(refdes, [pad]);
  }
}

const REGION_TOLERANCE_MM = 0.005;

/** The hull of any object in absolute coordinates. */
export function hullOf(object: GerberObject): Disc[] {
  if (object.kind === 'flash') {
    return object.shape.map(({ x, y, r }) => ({ x: x + object.at.x, y: y + object.at.y, r }));
  }
  if (object.kind === 'stroke') {
    const r = object.widthMm / 2;
    return [...flattenLoop([object.segment], REGION_TOLERANCE_MM), object.segment.to].map((point) => ({ ...point, r }));
  }
  return object.contours
    .flatMap((contour) => flattenLoop(contour, REGION_TOLERANCE_MM))
    .map((point) => ({ ...point, r: 0 }));
}

export function padsBox(pads: readonly Pad[]): Box {
  return boxOfDiscs(pads.flatMap(({ hull }) => hull));
}

/** Middle of the pads of every pin: pins with several pads (a shell, a heat pad in pieces) count once. */
export function pinCentres(pads: readonly Pad[]): Map<string, Point> {
  const sums = new Map<string, { x: number; y: number; count: number }>();
  for (const { pin, at } of pads) {
    const sum = sums.get(pin) ?? { x: 0, y: 0, count: 0 };
    sums.set(pin, { x: sum.x + at.x, y: sum.y + at.y, count: sum.count + 1 });
  }
  return new Map([...sums].map(([pin, { x, y, count }]) => [pin, { x: x / count, y: y / count }]));
}

const CIRCLE_STEPS = 36;

/** Area of the convex hull of discs, mm2; circles as 36-gons of equal area. */
export function hullAreaMm2(hull: readonly Disc[]): number {
  const swell = Math.sqrt((2 * Math.PI) / (CIRCLE_STEPS * Math.sin((2 * Math.PI) / CIRCLE_STEPS)));
  const points = hull.flatMap(({ x, y, r }) =>
    r === 0
      ? [{ x, y }]
      : Array.from({ length: CIRCLE_STEPS }, (_, step) => {
          const angle = (2 * Math.PI * step) / CIRCLE_STEPS;
          return { x: x + r * swell * Math.cos(angle), y: y + r * swell * Math.sin(angle) };
        }),
  );
  return convexArea(points);
}

/** Shoelace over the monotone-chain hull. */
function convexArea(points: readonly Point[]): number {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const half = (list: readonly Point[]) => {
    const chain: Point[] = [];
    for (const point of list) {
      while (chain.length >= 2 && cross(chain[chain.length - 2], chain[chain.length - 1], point) <= 0) chain.pop();
      chain.push(point);
    }
    return chain.slice(0, -1);
  };
  const hull = [...half(sorted), ...half([...sorted].reverse())];
  let twice = 0;
  hull.forEach((a, index) => {
    const b = hull[(index + 1) % hull.length];
    twice += a.x * b.y - b.x * a.y;
  });
  return Math.abs(twice) / 2;
}

function cross(a: Point, b: Point, c: Point): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}
