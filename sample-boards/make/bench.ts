import type { Board, Part } from '../../shared-types/board.ts';
import {
  type Contour,
  distanceToPolygon,
  flattenContour,
  insidePolygon,
  otherSide,
  type Point,
  rectangleCorners,
  type Side,
  type TurnedRectangle,
} from '../../shared-types/geometry.ts';
import { classById } from '../../shared-types/library/classes.ts';
import type { LibraryPackage } from '../../shared-types/library/library-types.ts';
import { findPackage } from '../../shared-types/library/packages.ts';
import { createOccupancy } from './overlap.ts';

export type PlaceOptions = {
  side?: Side;
  turn?: number;
  value?: string;
  fitted?: boolean;
  /** Class in place of the package's own. */
  class?: string;
  /** Connector or the like that may stand over the edge. */
  overEdge?: boolean;
  /** Leads come through: nothing under it on the other side. */
  throughHole?: boolean;
  /** Everything else of a part that is not as usual. */
  more?: Partial<Part>;
};

/** Body and name of a package that the library does not hold. */
export type OwnPackage = Pick<LibraryPackage, 'name' | 'lengthMm' | 'widthMm' | 'heightMm' | 'classId' | 'pinCount'> & {
  shape?: LibraryPackage['shape'];
};

/** Room that leads take past the body, mm each side: along its own x, along its own y. */
const LEADS: Record<string, [number, number]> = {
  so: [0, 1.1],
  optocoupler: [0, 1.2],
  sot: [0, 0.7],
  qfp: [1.1, 1.1],
  qfn: [0.25, 0.25],
  diode: [0.5, 0],
  crystal: [0.2, 0.2],
  'power-package': [0, 1.8],
};

/** Smallest gap between two courtyards, mm. */
const GAP_MM = 0.25;
const EDGE_MM = 0.6;

/**
 * Where parts can be put on a board: keeps refdes counters and who lies where, and refuses what does not fit.
 * `usual` is what every part of the board has in common.
 */
export function createBench(outline: Contour, cutouts: readonly Contour[], usual: Partial<Part>) {
  const edge = flattenContour(outline, 0.02);
  const holes = cutouts.map((cutout) => flattenContour(cutout, 0.02));
  const occupied = { top: createOccupancy(), bottom: createOccupancy() };
  const counters = new Map<string, number>();
  const used = new Set<string>();
  const parts: Part[] = [];

  const packageOf = (pack: string | OwnPackage): OwnPackage => {
    if (typeof pack !== 'string') return pack;
    const one = findPackage(pack);
    if (!one) throw new Error(`The library has no package '${pack}'.`);
    return one;
  };

  /** Why a courtyard does not fit here; null when it does. */
  function obstacle(courtyard: TurnedRectangle, options: PlaceOptions): string | null {
    const side = options.side ?? 'top';
    const hit =
      occupied[side].conflict(courtyard, GAP_MM) ??
      (options.throughHole ? occupied[otherSide(side)].conflict(courtyard, GAP_MM) : undefined);
    if (hit) return hit.name;
    const corners = rectangleCorners(courtyard);
    if (
      !options.overEdge &&
      corners.some((corner) => !insidePolygon(corner, edge) || distanceToPolygon(corner, edge) < EDGE_MM)
    )
      return 'the edge';
    return holes.some((hole) => nearHole(courtyard, corners, hole)) ? 'a cutout' : null;
  }

  function courtyardOf(pack: OwnPackage, x: number, y: number, turn: number): TurnedRectangle {
    const [alongX, alongY] = LEADS[pack.classId] ?? [0, 0];
    return { x, y, lengthMm: pack.lengthMm + 2 * alongX, widthMm: pack.widthMm + 2 * alongY, turnDeg: turn };
  }

  /** The next free number for these letters, or the whole designator when it ends with a digit. */
  function nameOf(letters: string): string {
    let name = letters;
    for (let number = (counters.get(letters) ?? 0) + 1; !/\d$/.test(name) || used.has(name); number++) {
      if (/\d$/.test(letters)) throw new Error(`${letters} is there twice.`);
      name = `${letters}${number}`;
      counters.set(letters, number);
    }
    used.add(name);
    return name;
  }

  function fits(pack: string | OwnPackage, x: number, y: number, options: PlaceOptions = {}): boolean {
    return obstacle(courtyardOf(packageOf(pack), x, y, options.turn ?? 0), options) === null;
  }

  function place(letters: string, pack: string | OwnPackage, x: number, y: number, options: PlaceOptions = {}): Part {
    const one = packageOf(pack);
    const { side = 'top', turn = 0 } = options;
    const refdes = nameOf(letters);
    const courtyard = courtyardOf(one, x, y, turn);
    const hit = obstacle(courtyard, options);
    if (hit) throw new Error(`${refdes} (${one.name}) at ${x}, ${y} on the ${side} meets ${hit}.`);
    occupied[side].add({ ...courtyard, name: refdes });
    if (options.throughHole) occupied[otherSide(side)].add({ ...courtyard, name: `${refdes} (leads)` });
    const part = { ...partFor(refdes, one, x, y, options), ...usual, ...options.more };
    parts.push(part);
    return part;
  }

  /** Parts in a row: the first at x, y, the next ones a step further. */
  function row(
    letters: string,
    pack: string | OwnPackage,
    at: Point,
    step: Point,
    values: readonly string[],
    options: PlaceOptions = {},
  ): Part[] {
    return values.map((value, index) =>
      place(letters, pack, round(at.x + index * step.x), round(at.y + index * step.y), { ...options, value }),
    );
  }

  /** Keeps a place free on one side: a can's wall, a keep-out. */
  function keepFree(side: Side, rectangle: TurnedRectangle, name: string): void {
    occupied[side].add({ ...rectangle, name });
  }

  return { place, row, fits, keepFree, parts };
}

export type Bench = ReturnType<typeof createBench>;

export const round = (mm: number): number => Math.round(mm * 1000) / 1000;

function nearHole(courtyard: TurnedRectangle, corners: readonly Point[], hole: readonly Point[]): boolean {
  if (corners.some((corner) => insidePolygon(corner, hole) || distanceToPolygon(corner, hole) < 0.4)) return true;
  const polygon = [...corners];
  return (
    hole.some((point) => insidePolygon(point, polygon) || distanceToPolygon(point, polygon) < 0.4) &&
    courtyard.lengthMm > 0
  );
}

function partFor(refdes: string, pack: OwnPackage, x: number, y: number, options: PlaceOptions): Part {
  const { side = 'top', turn = 0, value = '', fitted = true } = options;
  const classId = options.class ?? pack.classId;
  return {
    refdes,
    side,
    x: round(x),
    y: round(y),
    turn,
    package: {
      name: pack.name,
      shape: pack.shape ?? 'rectangle',
      lengthMm: pack.lengthMm,
      widthMm: pack.widthMm,
      heightMm: pack.heightMm,
    },
    class: classId,
    classGuessed: false,
    value,
    fitted,
    alloy: 'sac305',
    edgeBonded: false,
    underfilled: false,
    coated: false,
    ...(pack.pinCount ? { pinCount: pack.pinCount } : {}),
    ...(showsPin1(classId) ? { pin1: pin1Of(pack) } : {}),
  };
}

/** Own upper left corner; a can's own left. */
const pin1Of = ({ shape, lengthMm, widthMm }: OwnPackage): Point =>
  shape === 'round' ? { x: round(-0.38 * lengthMm), y: 0 } : { x: round(-0.42 * lengthMm), y: round(0.42 * widthMm) };

const PIN_1 = new Set([
  'so',
  'qfp',
  'qfn',
  'diode',
  'led',
  'optocoupler',
  'crystal',
  'connector-unknown',
  'module-soldered',
]);

/** Integrated circuits, polar parts and connectors show pin 1 at their own upper left. */
function showsPin1(classId: string): boolean {
  return PIN_1.has(classId) || classById(classId).arrayPart || classId.startsWith('electrolytic');
}

/** A full circle as a contour: two half arcs. */
export const circle = (x: number, y: number, radius: number): Contour => [
  { x: round(x - radius), y, bulge: 1 },
  { x: round(x + radius), y, bulge: 1 },
];

/** A mounting hole in each corner, `inset` from both edges. */
export const cornerHoles = (length: number, width: number, inset: number, radius: number): Contour[] =>
  [
    [inset, inset],
    [length - inset, inset],
    [inset, width - inset],
    [length - inset, width - inset],
  ].map(([x, y]) => circle(x, y, radius));

/** A slot with round ends from one centre to another, along x or y. */
export function slot(x0: number, y0: number, x1: number, y1: number, radius: number): Contour {
  const alongX = y0 === y1;
  return alongX
    ? [
        { x: x0, y: y0 - radius },
        { x: x1, y: y0 - radius, bulge: 1 },
        { x: x1, y: y0 + radius },
        { x: x0, y: y0 + radius, bulge: 1 },
      ]
    : [
        { x: x0 + radius, y: y0 },
        { x: x0 + radius, y: y1, bulge: 1 },
        { x: x0 - radius, y: y1 },
        { x: x0 - radius, y: y0, bulge: 1 },
      ];
}

/** A quarter circle to the left of the way: tan(90 / 4 degrees). */
export const QUARTER = Math.tan(Math.PI / 8);

export const invented = (drawnFrom: string): Board['source'] => ({
  drawnFrom,
  licence: 'CC0-1.0',
  invented: true,
});
