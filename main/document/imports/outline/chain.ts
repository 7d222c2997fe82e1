import { distance } from '../plane.ts';
import { arcSweep, isFullCircle, polygonArea, reverseSegment, type Segment } from '../segments.ts';
import { buildGraph, type PenStroke, type SegmentGraph } from './graph.ts';
import { type Loop, makeLoop } from './loop.ts';

/** Ends are joined within the first tolerance; a file that gives no loop is tried again with the wider ones. */
export const JOIN_TOLERANCES_MM = [0.01, 0.05, 0.2] as const;

/**
 * All closed loops among the strokes of one file: the faces of the plane graph that the segments form, each component's outer
 * border, and full circles. Dangling strokes (dimension lines, text) fall away. Loops run counter-clockwise.
 */
export function findLoops(strokes: readonly PenStroke[], file: string): Loop[] {
  const circles = strokes
    .filter(({ segment }) => isFullCircle(segment))
    .map(({ segment, widthMm }) => makeLoop([counterClockwise(segment)], file, widthMm, 0));
  for (const tolerance of JOIN_TOLERANCES_MM) {
    const loops = facesOf(buildGraph(strokes, tolerance), file, tolerance);
    if (loops.length > 0) return [...loops, ...circles];
  }
  return circles;
}

function counterClockwise(circle: Segment): Segment {
  return circle.kind === 'arc' && circle.clockwise ? { ...circle, clockwise: false } : circle;
}

function facesOf(graph: SegmentGraph, file: string, toleranceMm: number): Loop[] {
  const next = followers(graph, livingSegments(graph));
  const used = new Uint8Array(next.length);
  const loops: Loop[] = [];
  for (let start = 0; start < next.length; start++) {
    if (used[start] || next[start] < 0) continue;
    const halfEdges: number[] = [];
    for (let edge = start; !used[edge]; edge = next[edge]) {
      used[edge] = 1;
      halfEdges.push(edge);
    }
    const loop = loopOf(graph, halfEdges, file, toleranceMm);
    if (loop) loops.push(loop);
  }
  return withoutTwins(loops);
}

function loopOf(graph: SegmentGraph, halfEdges: readonly number[], file: string, toleranceMm: number): Loop | null {
  const segments = halfEdges.map((edge) => {
    const segment = graph.segments[edge >> 1];
    return edge & 1 ? reverseSegment(segment) : segment;
  });
  const loop = makeLoop(segments, file, graph.penMm[halfEdges[0] >> 1], widestGap(segments, toleranceMm));
  if (loop.areaMm2 < 1e-4) return null;
  if (polygonArea(loop.polygon) > 0) return loop;
  return makeLoop(segments.map(reverseSegment).reverse(), file, loop.penMm, loop.gapMm);
}

function widestGap(segments: readonly Segment[], toleranceMm: number): number {
  let gap = 0;
  segments.forEach((segment, index) => {
    gap = Math.max(gap, distance(segment.to, segments[(index + 1) % segments.length].from));
  });
  return gap <= JOIN_TOLERANCES_MM[0] && toleranceMm === JOIN_TOLERANCES_MM[0] ? 0 : gap;
}

/** A simple loop is both the inner face and the outer border of its component: one of the two is enough. */
function withoutTwins(loops: readonly Loop[]): Loop[] {
  const seen = new Set<string>();
  return loops.filter(({ box, areaMm2, segments }) => {
    const figures = [box.minX, box.minY, box.maxX, box.maxY, areaMm2].map((value) => value.toFixed(4));
    const key = `${segments.length} ${figures.join(' ')}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** Strips dangling segments until every node left has two or more. */
function livingSegments({ segments, nodeFrom, nodeTo, nodes }: SegmentGraph): boolean[] {
  const alive = segments.map(() => true);
  const atNode: number[][] = nodes.map(() => []);
  segments.forEach((_, index) => {
    atNode[nodeFrom[index]].push(index);
    atNode[nodeTo[index]].push(index);
  });
  const degree = atNode.map((list) => list.length);
  const ends = degree.flatMap((count, node) => (count === 1 ? [node] : []));
  for (let node = ends.pop(); node !== undefined; node = ends.pop()) {
    for (const index of atNode[node]) {
      if (!alive[index]) continue;
      alive[index] = false;
      for (const end of [nodeFrom[index], nodeTo[index]]) if (--degree[end] === 1) ends.push(end);
    }
  }
  return alive;
}

/** For every half-edge the one that follows it round its face (the face lies to the left); -1 for stripped segments. */
function followers({ segments, nodeFrom, nodeTo, nodes }: SegmentGraph, alive: readonly boolean[]): Int32Array {
  const leaving: number[][] = nodes.map(() => []);
  alive.forEach((living, index) => {
    if (!living) return;
    leaving[nodeFrom[index]].push(2 * index);
    leaving[nodeTo[index]].push(2 * index + 1);
  });
  const next = new Int32Array(2 * segments.length).fill(-1);
  for (const edges of leaving) {
    const order = edges
      .map((edge) => ({ edge, ...leavingDirection(segments[edge >> 1], (edge & 1) === 1) }))
      .sort((a, b) => a.angle - b.angle || a.bend - b.bend);
    order.forEach(({ edge }, index) => {
      next[edge ^ 1] = order[(index + order.length - 1) % order.length].edge;
    });
  }
  return next;
}

/** Direction in which a half-edge leaves its node, and its curvature to tell arcs that leave along one tangent. */
function leavingDirection(segment: Segment, backwards: boolean): { angle: number; bend: number } {
  const along = backwards ? reverseSegment(segment) : segment;
  const { from, to } = along;
  if (along.kind === 'line') return { angle: wrap(Math.atan2(to.y - from.y, to.x - from.x)), bend: 0 };
  const sweep = arcSweep(along);
  const tangent = Math.atan2(from.y - along.centre.y, from.x - along.centre.x) + (Math.sign(sweep) * Math.PI) / 2;
  return { angle: wrap(tangent), bend: Math.sign(sweep) / distance(from, along.centre) };
}

/** Angle in [0, 2 pi) on a grid of 1e-6, so that one direction reached two ways compares equal. */
function wrap(angle: number): number {
  const steps = Math.round(((angle + 4 * Math.PI) % (2 * Math.PI)) * 1e6);
  return steps >= Math.round(2 * Math.PI * 1e6) ? 0 : steps;
}
