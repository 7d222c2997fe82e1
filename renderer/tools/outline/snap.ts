import { centreOf, type Edge, edgesOf, middleOf, nearestOnEdge } from '../../../shared-types/contour/edges.ts';
import type { Contour, Point } from '../../../shared-types/geometry.ts';
import type { SnapKind } from './outline-state.ts';

export type Snapped = { at: Point; kind: SnapKind };

/** What the pencil may snap to. Lengths in mm. */
export type SnapSurroundings = {
  contours: readonly Contour[];
  /** Corners of the shape under way. */
  points: readonly Point[];
  /** The point that the next edge leaves from; null: none, no angles then. */
  from: Point | null;
  gridMm: number;
  reachMm: number;
};

/** Steps of direction that an edge is drawn in, degrees: 45 and 90 are among them. */
const ANGLE_STEP = 15;
const STRONG = ['corner', 'middle', 'centre'] as const;

/**
 * The nearest corner, middle or centre within reach; else the nearest edge; else a direction in steps of 15 degrees, or
 * level with another corner of the shape; else the grid.
 */
export function snapPoint(at: Point, around: SnapSurroundings): Snapped {
  return (
    pointSnap(at, around) ??
    edgeSnap(at, around) ??
    angleSnap(at, around) ??
    levelSnap(at, around) ??
    onGrid(at, around)
  );
}

const off = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

function pointSnap(at: Point, { contours, points, reachMm }: SnapSurroundings): Snapped | null {
  let best: Snapped | null = null;
  let nearest = reachMm;
  const offer = (point: Point | null, kind: (typeof STRONG)[number]) => {
    if (!point || off(point, at) > nearest) return;
    nearest = off(point, at);
    best = { at: { x: point.x, y: point.y }, kind };
  };
  for (const contour of contours)
    for (const edge of edgesOf(contour)) {
      offer(edge.from, 'corner');
      offer(middleOf(edge), 'middle');
      offer(centreOf(edge), 'centre');
    }
  for (const point of points) offer(point, 'corner');
  return best;
}

function edgeSnap(at: Point, { contours, reachMm, gridMm }: SnapSurroundings): Snapped | null {
  let best: Snapped | null = null;
  let nearest = reachMm * 0.6;
  for (const contour of contours)
    for (const edge of edgesOf(contour)) {
      const foot = nearestOnEdge(edge, at);
      if (off(foot, at) > nearest) continue;
      nearest = off(foot, at);
      best = { at: onGridOfEdge(edge, foot, gridMm), kind: 'edge' };
    }
  return best;
}

/** Along an upright or level edge the grid still holds; elsewhere the foot stays where it is. */
function onGridOfEdge(edge: Edge, foot: Point, gridMm: number): Point {
  const stepped = [
    { x: foot.x, y: gridded(foot.y, gridMm) },
    { x: gridded(foot.x, gridMm), y: foot.y },
  ];
  return stepped.find((point) => off(nearestOnEdge(edge, point), point) < 1e-9 && off(point, foot) > 0) ?? foot;
}

/** On a ray of a round direction; the way along it goes by whole steps of the grid. */
function angleSnap(at: Point, { from, reachMm, gridMm }: SnapSurroundings): Snapped | null {
  if (!from) return null;
  const length = off(at, from);
  if (length < reachMm) return null;
  const step = (ANGLE_STEP * Math.PI) / 180;
  const round = Math.round(Math.atan2(at.y - from.y, at.x - from.x) / step);
  const way = { x: exact(Math.cos(round * step)), y: exact(Math.sin(round * step)) };
  const along = (at.x - from.x) * way.x + (at.y - from.y) * way.y;
  const steps = gridMm > 0 ? Math.max(1, Math.round(along / gridMm)) * gridMm : along;
  const foot = { x: from.x + along * way.x, y: from.y + along * way.y };
  if (off(foot, at) > reachMm) return null;
  return { at: { x: tidy(from.x + steps * way.x), y: tidy(from.y + steps * way.y) }, kind: 'angle' };
}

const exact = (value: number): number => (Math.abs(value) < 1e-12 ? 0 : value);
const tidy = (value: number): number => Math.round(value * 1e6) / 1e6 || 0;

/** Level with a corner of the shape under way, so that the last edge comes home straight. */
function levelSnap(at: Point, { points, reachMm, gridMm }: SnapSurroundings): Snapped | null {
  const level = (axis: 'x' | 'y') => points.find((point) => Math.abs(point[axis] - at[axis]) < reachMm * 0.6);
  const [upright, flat] = [level('x'), level('y')];
  if (!upright && !flat) return null;
  return {
    at: { x: upright ? upright.x : gridded(at.x, gridMm), y: flat ? flat.y : gridded(at.y, gridMm) },
    kind: 'level',
  };
}

const gridded = (value: number, step: number): number => (step > 0 ? tidy(Math.round(value / step) * step) : value);

export const onGrid = (at: Point, { gridMm }: { gridMm: number }): Snapped => ({
  at: { x: gridded(at.x, gridMm), y: gridded(at.y, gridMm) },
  kind: gridMm > 0 ? 'grid' : 'free',
});
