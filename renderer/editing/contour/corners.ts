import { areaOf, edgeBetween, lengthOf, middleOf, radiusOf } from '../../../shared-types/contour/edges.ts';
import type { Contour, Corner, Point } from '../../../shared-types/geometry.ts';
import { bulgeOfRadius } from './shapes.ts';

/** Changes to the corners and edges of a contour. An edge is named by the corner it starts from. Lengths in mm. */

export const wrapped = (contour: Contour, index: number): number =>
  ((index % contour.length) + contour.length) % contour.length;

const corner = (x: number, y: number, bulge: number | undefined): Corner => (bulge ? { x, y, bulge } : { x, y });

const withCorners = (contour: Contour, moved: ReadonlyMap<number, Point>): Contour =>
  contour.map((one, index) => {
    const to = moved.get(index);
    return to ? corner(to.x, to.y, one.bulge) : one;
  });

export const moveCorner = (contour: Contour, index: number, to: Point): Contour =>
  withCorners(contour, new Map([[wrapped(contour, index), to]]));

/** Both ends of an edge moved by the same way. */
export function moveEdge(contour: Contour, index: number, by: Point): Contour {
  const ends = [wrapped(contour, index), wrapped(contour, index + 1)];
  return withCorners(
    contour,
    new Map(ends.map((end) => [end, { x: contour[end].x + by.x, y: contour[end].y + by.y }])),
  );
}

export const moveContour = (contour: Contour, by: Point): Contour =>
  contour.map((one) => corner(one.x + by.x, one.y + by.y, one.bulge));

export function setBulge(contour: Contour, index: number, bulge: number): Contour {
  const at = wrapped(contour, index);
  return contour.map((one, other) => (other === at ? corner(one.x, one.y, bulge) : one));
}

/** A new corner in the middle of an edge; an arc becomes two arcs of the same circle. */
export function insertCorner(contour: Contour, index: number): Contour {
  const at = wrapped(contour, index);
  const from = contour[at];
  const edge = edgeBetween(from, contour[wrapped(contour, at + 1)], from.bulge ?? 0);
  const bulge = Math.tan(Math.atan(from.bulge ?? 0) / 2);
  const middle = middleOf(edge);
  return [
    ...contour.slice(0, at),
    corner(from.x, from.y, bulge),
    corner(middle.x, middle.y, bulge),
    ...contour.slice(at + 1),
  ];
}

/** The contour without a corner, its two edges joined by a straight one; null: too few corners are left. */
export function deleteCorner(contour: Contour, index: number): Contour | null {
  const at = wrapped(contour, index);
  const before = wrapped(contour, at - 1);
  const rest = contour
    .map((one, other) => (other === before ? corner(one.x, one.y, 0) : one))
    .filter((_, other) => other !== at);
  const arcs = rest.some((one) => one.bulge);
  return rest.length < (arcs ? 2 : 3) ? null : rest;
}

/** Figures of an edge as a person reads them. `radius`: 0 straight, positive bent outwards, negative inwards. */
export type EdgeFigures = { lengthMm: number; angleDeg: number; radiusMm: number };

export function edgeFigures(contour: Contour, index: number): EdgeFigures {
  const from = contour[wrapped(contour, index)];
  const to = contour[wrapped(contour, index + 1)];
  if (Math.hypot(to.x - from.x, to.y - from.y) < 1e-9) return { lengthMm: 0, angleDeg: 0, radiusMm: 0 };
  const edge = edgeBetween(from, to, from.bulge ?? 0);
  const outward = Math.sign(edge.bulge) * (Math.sign(areaOf(contour)) || 1);
  return { lengthMm: lengthOf(edge), angleDeg: angleOf(from, to), radiusMm: outward * (radiusOf(edge) ?? 0) };
}

/** Direction from one point to another, degrees counter-clockwise from x, 0 to below 360. */
export function angleOf(from: Point, to: Point): number {
  const degrees = (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
  return degrees < 0 ? degrees + 360 : degrees;
}

/**
 * The edge made so long; an arc keeps its sweep. What follows moves along as far as the next straight edge that runs
 * the same way, so that a rectangle stays one and its rounded corners keep their shape.
 */
export function setLength(contour: Contour, index: number, lengthMm: number): Contour {
  const at = wrapped(contour, index);
  const end = wrapped(contour, at + 1);
  const now = edgeFigures(contour, at).lengthMm;
  if (!(now > 0) || !(lengthMm > 0)) return contour;
  const share = lengthMm / now - 1;
  const by = { x: (contour[end].x - contour[at].x) * share, y: (contour[end].y - contour[at].y) * share };
  const count = contour[at].bulge ? 1 : followers(contour, at);
  const moved = new Map<number, Point>();
  for (let step = 1; step <= count; step++) {
    const one = wrapped(contour, at + step);
    moved.set(one, { x: contour[one].x + by.x, y: contour[one].y + by.y });
  }
  return withCorners(contour, moved);
}

/** How many corners after an edge move along with its end: up to the next straight edge parallel to it, else one. */
function followers(contour: Contour, at: number): number {
  const way = (index: number) => {
    const from = contour[wrapped(contour, index)];
    const to = contour[wrapped(contour, index + 1)];
    const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
    return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  };
  const own = way(at);
  for (let step = 1; step < contour.length - 1; step++) {
    if (contour[wrapped(contour, at + step)].bulge) continue;
    const other = way(at + step);
    if (Math.abs(own.x * other.y - own.y * other.x) < 1e-6) return step;
  }
  return 1;
}

/** The edge turned about its start, its end moved. */
export function setAngle(contour: Contour, index: number, degrees: number): Contour {
  const at = wrapped(contour, index);
  const end = wrapped(contour, at + 1);
  const chord = Math.hypot(contour[end].x - contour[at].x, contour[end].y - contour[at].y);
  const radians = (degrees * Math.PI) / 180;
  return moveCorner(contour, end, {
    x: contour[at].x + chord * Math.cos(radians),
    y: contour[at].y + chord * Math.sin(radians),
  });
}

/** Smallest radius that an edge can be bent to: half of its chord. */
export function leastRadius(contour: Contour, index: number): number {
  const from = contour[wrapped(contour, index)];
  const to = contour[wrapped(contour, index + 1)];
  return Math.hypot(to.x - from.x, to.y - from.y) / 2;
}

/** The edge bent to a radius: 0 straight, positive outwards, negative inwards; null: the radius is too small for it. */
export function setRadius(contour: Contour, index: number, radiusMm: number): Contour | null {
  if (radiusMm === 0) return setBulge(contour, index, 0);
  const chord = 2 * leastRadius(contour, index);
  const outwards = Math.sign(areaOf(contour)) || 1;
  const bulge = bulgeOfRadius(chord, Math.abs(radiusMm), Math.sign(radiusMm) * outwards);
  if (bulge === null) return null;
  const before = contour[wrapped(contour, index)].bulge ?? 0;
  // More than half a circle stays more than half a circle.
  const large = Math.abs(before) > 1 + 1e-9 && Math.sign(before) === Math.sign(bulge);
  return setBulge(contour, index, large ? 1 / bulge : bulge);
}
