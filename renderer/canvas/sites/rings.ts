import { type Point, type TurnedRectangle, turnVector } from '../../../shared-types/geometry.ts';

/** Distances from the rework area's edge that are drawn, mm. */
export const RING_DISTANCES_MM = [5, 10, 20];

/** Distance from a point to a turned rectangle, mm; 0 inside. */
export function distanceToArea(at: Point, area: TurnedRectangle): number {
  const own = turnVector(at.x - area.x, at.y - area.y, -area.turnDeg);
  const dx = Math.max(0, Math.abs(own.x) - area.lengthMm / 2);
  const dy = Math.max(0, Math.abs(own.y) - area.widthMm / 2);
  return Math.hypot(dx, dy);
}

/**
 * The line at a distance round a turned rectangle: straight beside its edges, round at its corners. Closed (first
 * point repeated), counter-clockwise, chords within `toleranceMm`, no piece longer than `pieceMm`.
 */
export function ringAround(area: TurnedRectangle, distanceMm: number, toleranceMm: number, pieceMm = 1): Point[] {
  const own: Point[] = [];
  const corners = [
    [1, -1, -90],
    [1, 1, 0],
    [-1, 1, 90],
    [-1, -1, 180],
  ];
  const step = 2 * Math.acos(Math.max(0.7, 1 - toleranceMm / distanceMm));
  const pieces = Math.max(4, Math.ceil(Math.PI / 2 / step));
  for (const [sx, sy, startDeg] of corners)
    for (let i = 0; i <= pieces; i++) {
      const angle = ((startDeg + (90 * i) / pieces) * Math.PI) / 180;
      own.push({
        x: (sx * area.lengthMm) / 2 + distanceMm * Math.cos(angle),
        y: (sy * area.widthMm) / 2 + distanceMm * Math.sin(angle),
      });
    }
  own.push(own[0]);
  return subdivide(own, pieceMm).map((point) => {
    const turned = turnVector(point.x, point.y, area.turnDeg);
    return { x: area.x + turned.x, y: area.y + turned.y };
  });
}

function subdivide(points: readonly Point[], longest: number): Point[] {
  const fine: Point[] = [points[0]];
  for (let i = 1; i < points.length; i++) {
    const from = points[i - 1];
    const to = points[i];
    const pieces = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / longest));
    for (let piece = 1; piece <= pieces; piece++)
      fine.push({
        x: from.x + ((to.x - from.x) * piece) / pieces,
        y: from.y + ((to.y - from.y) * piece) / pieces,
      });
  }
  return fine;
}

/**
 * The line at a distance round several areas together: each area's ring, without what lies nearer to another area.
 * So a ring always says how far it is to the nearest rework area's edge.
 */
export function ringsAround(areas: readonly TurnedRectangle[], distanceMm: number, toleranceMm: number): Point[][] {
  return areas.flatMap((area, index) => {
    const ring = ringAround(area, distanceMm, toleranceMm);
    // Where two areas are equally near, as for two areas in the same place, only the first one's ring is drawn.
    const outside = (at: Point) =>
      areas.every((other, place) => {
        if (place === index) return true;
        const distance = distanceToArea(at, other);
        return place < index ? distance > distanceMm + 1e-6 : distance >= distanceMm - 1e-6;
      });
    return piecesWhere(ring, outside);
  });
}

/** The pieces of a line for which the test holds; ends found by halving. */
function piecesWhere(points: readonly Point[], holds: (at: Point) => boolean): Point[][] {
  const pieces: Point[][] = [];
  let piece: Point[] = [];
  let before = false;
  points.forEach((point, index) => {
    const now = holds(point);
    if (index > 0 && now !== before) {
      const edge = now ? turningPoint(points[index - 1], point, holds) : turningPoint(point, points[index - 1], holds);
      piece.push(edge);
      if (!now) {
        pieces.push(piece);
        piece = [];
      }
    }
    if (now) piece.push(point);
    before = now;
  });
  if (piece.length > 1) pieces.push(piece);
  return pieces;
}

/** Between a point where the test fails and one where it holds: the last place where it holds. */
function turningPoint(fails: Point, passes: Point, holds: (at: Point) => boolean): Point {
  let outer = fails;
  let inner = passes;
  for (let i = 0; i < 24; i++) {
    const middle = { x: (outer.x + inner.x) / 2, y: (outer.y + inner.y) / 2 };
    if (holds(middle)) inner = middle;
    else outer = middle;
  }
  return inner;
}
