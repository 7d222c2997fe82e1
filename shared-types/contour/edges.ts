import { boxOf, type Contour, type Corner, type Point } from '../geometry.ts';

/** Lengths up to this count as none, mm: a thousandth of a thousandth, far below any drawing and far above rounding. */
export const TOUCH_MM = 1e-6;

/**
 * An edge of a contour as the curve k/2 (x2 + y2) + l x + m y + n = 0 with a unit gradient on it: near the curve the
 * left side is the signed distance, and one form holds straight edges (k = 0) and arcs however flat. Coordinates are
 * taken from `origin`, the middle of the chord. The whole arc lies on one side of its chord.
 */
export type Edge = {
  /** Index of the corner it starts from. */
  index: number;
  from: Point;
  to: Point;
  bulge: number;
  /** No arc, or one that leaves its chord by less than can matter. */
  straight: boolean;
  origin: Point;
  k: number;
  l: number;
  m: number;
  n: number;
};

/** Shorter edges are corners given twice, mm. */
const NO_LENGTH_MM = 1e-9;

/** Edges of a closed contour; those without length are left out. */
export function edgesOf(contour: readonly Corner[]): Edge[] {
  return contour.flatMap((corner, index) => {
    const next = contour[(index + 1) % contour.length];
    return Math.hypot(next.x - corner.x, next.y - corner.y) > NO_LENGTH_MM
      ? [edgeBetween(corner, next, corner.bulge ?? 0, index)]
      : [];
  });
}

export function edgeBetween(from: Point, to: Point, bulge: number, index = 0): Edge {
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  const ux = (to.x - from.x) / chord;
  const uy = (to.y - from.y) / chord;
  const size = 1 + bulge * bulge;
  const across = (1 - bulge * bulge) / size;
  const k = (4 * bulge) / (chord * size);
  return {
    index,
    from: { x: from.x, y: from.y },
    to: { x: to.x, y: to.y },
    bulge,
    straight: Math.abs(bulge) * chord < TOUCH_MM / 2,
    origin: { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 },
    k,
    l: uy * across,
    m: -ux * across,
    n: (-k * chord * chord) / 8,
  };
}

/** Signed distance, mm, of a point near the edge's whole curve: positive on the right of the way of a straight edge. */
export function offCurve(edge: Edge, at: Point): number {
  const x = at.x - edge.origin.x;
  const y = at.y - edge.origin.y;
  return (edge.k / 2) * (x * x + y * y) + edge.l * x + edge.m * y + edge.n;
}

/** Where a point stands against the chord: how far along it (0 to its length) and how far left of it, mm. */
function againstChord({ from, to }: Edge, at: Point): { along: number; left: number; chord: number } {
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  const ux = (to.x - from.x) / chord;
  const uy = (to.y - from.y) / chord;
  const x = at.x - from.x;
  const y = at.y - from.y;
  return { along: x * ux + y * uy, left: ux * y - uy * x, chord };
}

/** True when a point of the edge's whole curve lies on the edge itself. */
export function withinEdge(edge: Edge, at: Point): boolean {
  const { along, left, chord } = againstChord(edge, at);
  if (isStraight(edge)) return along >= 0 && along <= chord;
  return edge.bulge > 0 ? left <= 0 : left >= 0;
}

export const isStraight = (edge: Edge): boolean => edge.straight;

const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

/** Centre of an arc edge; null for a straight one. */
export function centreOf(edge: Edge): Point | null {
  if (isStraight(edge)) return null;
  return { x: edge.origin.x - edge.l / edge.k, y: edge.origin.y - edge.m / edge.k };
}

/** Radius of an arc edge, mm; null for a straight one. */
export const radiusOf = (edge: Edge): number | null => (isStraight(edge) ? null : 1 / Math.abs(edge.k));

/** Length along the edge, mm. */
export function lengthOf(edge: Edge): number {
  const chord = apart(edge.from, edge.to);
  return isStraight(edge) ? chord : Math.abs(4 * Math.atan(edge.bulge)) / Math.abs(edge.k);
}

/** The middle of the edge: of an arc the point farthest from its chord. */
export function middleOf(edge: Edge): Point {
  const { origin, from, to, bulge } = edge;
  return { x: origin.x + (bulge * (to.y - from.y)) / 2, y: origin.y - (bulge * (to.x - from.x)) / 2 };
}

/** The point of the edge nearest to a point. */
export function nearestOnEdge(edge: Edge, at: Point): Point {
  const centre = centreOf(edge);
  if (!centre) {
    const { along, chord } = againstChord(edge, at);
    const share = Math.max(0, Math.min(1, along / chord));
    return { x: edge.from.x + (edge.to.x - edge.from.x) * share, y: edge.from.y + (edge.to.y - edge.from.y) * share };
  }
  const off = apart(at, centre);
  const radius = 1 / Math.abs(edge.k);
  if (off > 0) {
    const foot = {
      x: centre.x + ((at.x - centre.x) * radius) / off,
      y: centre.y + ((at.y - centre.y) * radius) / off,
    };
    if (withinEdge(edge, foot)) return foot;
  }
  return apart(at, edge.from) <= apart(at, edge.to) ? edge.from : edge.to;
}

export const distanceToEdge = (edge: Edge, at: Point): number => apart(nearestOnEdge(edge, at), at);

/** Upright box of an edge, its arc included. */
export function boxOfEdge(edge: Edge) {
  const centre = centreOf(edge);
  const points = [edge.from, edge.to];
  if (centre) {
    const radius = 1 / Math.abs(edge.k);
    for (const [x, y] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ]) {
      const far = { x: centre.x + x * radius, y: centre.y + y * radius };
      if (withinEdge(edge, far)) points.push(far);
    }
  }
  return boxOf(points);
}

/** Upright box of a contour, arcs included exactly. */
export function boxOfContour(contour: readonly Corner[]) {
  const boxes = edgesOf(contour).map(boxOfEdge);
  return boxOf(
    boxes.flatMap(({ minX, minY, maxX, maxY }) => [
      { x: minX, y: minY },
      { x: maxX, y: maxY },
    ]),
  );
}

/** Signed area of a contour, mm2, arcs included exactly; positive when it runs counter-clockwise. */
export function areaOf(contour: readonly Corner[]): number {
  return edgesOf(contour).reduce((sum, edge) => {
    const base = contour[0];
    const x1 = edge.from.x - base.x;
    const y1 = edge.from.y - base.y;
    const triangle = (x1 * (edge.to.y - base.y) - (edge.to.x - base.x) * y1) / 2;
    if (isStraight(edge)) return sum + triangle;
    const sweep = 4 * Math.atan(edge.bulge);
    return sum + triangle + capOf(sweep) / (2 * edge.k * edge.k);
  }, 0);
}

/** sweep - sin(sweep); of a flat arc by its series, which does not lose the small difference. */
const capOf = (sweep: number): number =>
  Math.abs(sweep) < 1e-2 ? (sweep ** 3 / 6) * (1 - sweep ** 2 / 20) : sweep - Math.sin(sweep);

/** True when the point lies inside the contour; exact for arcs: the chords' polygon, each arc's cap added or taken. */
export const insideContour = (at: Point, contour: Contour): boolean => insideEdges(at, edgesOf(contour));

/** The same for a contour given by its edges. */
export function insideEdges(at: Point, edges: readonly Edge[]): boolean {
  const onChord = edges.some((edge) => !isStraight(edge) && Math.abs(againstChord(edge, at).left) < TOUCH_MM / 100);
  // On a chord it would belong to the polygon or to the cap by chance: asked a hair's breadth beside it.
  const { x, y } = onChord ? { x: at.x + 0.17 * TOUCH_MM, y: at.y + 0.11 * TOUCH_MM } : at;
  let inside = false;
  for (const edge of edges) {
    const { from: a, to: b } = edge;
    if (a.y > y !== b.y > y && x < ((b.x - a.x) * (y - a.y)) / (b.y - a.y) + a.x) inside = !inside;
    if (isStraight(edge)) continue;
    const { left } = againstChord(edge, { x, y });
    const inCap = offCurve(edge, { x, y }) * edge.k < 0 && (edge.bulge > 0 ? left < 0 : left > 0);
    if (inCap) inside = !inside;
  }
  return inside;
}
