import { distance, type Point } from '../plane.ts';
import { isFullCircle, type Segment, segmentMiddle } from '../segments.ts';

/** Segments joined at shared ends. Half-edge 2n runs along segment n, half-edge 2n + 1 against it. */
export interface SegmentGraph {
  readonly segments: readonly Segment[];
  readonly penMm: readonly number[];
  readonly nodeFrom: readonly number[];
  readonly nodeTo: readonly number[];
  readonly nodes: readonly Point[];
}

/** Ends closer than `toleranceMm` become one node. Repeated segments and those of no length are left out. */
export function buildGraph(strokes: readonly PenStroke[], toleranceMm: number): SegmentGraph {
  const nodes = nodeFinder(toleranceMm);
  const seen = new Set<string>();
  const segments: Segment[] = [];
  const penMm: number[] = [];
  const nodeFrom: number[] = [];
  const nodeTo: number[] = [];
  for (const { segment, widthMm } of strokes) {
    if (isFullCircle(segment)) continue;
    const from = nodes.find(segment.from);
    const to = nodes.find(segment.to);
    if (from === to && segment.kind === 'line') continue;
    const key = segmentKey(segment, from, to, toleranceMm);
    if (seen.has(key)) continue;
    seen.add(key);
    segments.push(segment);
    penMm.push(widthMm);
    nodeFrom.push(from);
    nodeTo.push(to);
  }
  return { segments, penMm, nodeFrom, nodeTo, nodes: nodes.points };
}

export interface PenStroke {
  readonly segment: Segment;
  readonly widthMm: number;
}

/** A line drawn twice, also backwards, has one key; an arc between the same ends another. */
function segmentKey(segment: Segment, from: number, to: number, toleranceMm: number): string {
  const middle = segmentMiddle(segment);
  const cell = Math.max(toleranceMm, 0.001) * 4;
  return `${Math.min(from, to)} ${Math.max(from, to)} ${Math.round(middle.x / cell)} ${Math.round(middle.y / cell)}`;
}

function nodeFinder(toleranceMm: number) {
  const points: Point[] = [];
  const cells = new Map<string, number[]>();
  const size = Math.max(toleranceMm, 1e-6);
  const find = (point: Point): number => {
    const column = Math.floor(point.x / size);
    const row = Math.floor(point.y / size);
    for (let dx = -1; dx <= 1; dx++) {
      for (let dy = -1; dy <= 1; dy++) {
        const near = cells
          .get(`${column + dx} ${row + dy}`)
          ?.find((node) => distance(points[node], point) <= toleranceMm);
        if (near !== undefined) return near;
      }
    }
    const node = points.length;
    points.push(point);
    const key = `${column} ${row}`;
    const cell = cells.get(key);
    if (cell) cell.push(node);
    else cells.set(key, [node]);
    return node;
  };
  return { points, find };
}
