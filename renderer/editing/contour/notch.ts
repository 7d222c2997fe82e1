import { centreOf, distanceToEdge, type Edge, edgesOf, insideContour } from '../../../shared-types/contour/edges.ts';
import { meetingsOf } from '../../../shared-types/contour/meetings.ts';
import { type Contour, type Corner, flattenContour, type Point } from '../../../shared-types/geometry.ts';

/** Places nearer than this are one, mm. */
const SAME_MM = 1e-4;

/**
 * The outline less a shape that lies over its edge: the bay that the shape leaves in it. Null: the two do not meet in exactly two
 * places, or nothing would be left or taken.
 */
export function withNotch(outline: Contour, shape: Contour): Contour | null {
  const places = meetingPlaces(outline, shape);
  if (places.length !== 2) return null;
  const [a, b] = places;
  const kept = [pathOf(outline, a, b), pathOf(outline, b, a)].filter(
    (path) => path && !insideContour(path.middle, shape),
  );
  const cut = [shape, reversed(shape)].map((way) => {
    const [from, to] = kept[0]?.ends ?? [a, b];
    return pathOf(way, to, from);
  });
  const inside = cut.filter((path) => path && insideContour(path.middle, outline));
  const [rest, bay] = [kept[0], inside[0]];
  if (kept.length !== 1 || inside.length !== 1 || !rest || !bay) return null;
  return [...rest.corners, ...bay.corners];
}

function meetingPlaces(outline: Contour, shape: Contour): Point[] {
  const places: Point[] = [];
  const others = edgesOf(shape);
  for (const edge of edgesOf(outline))
    for (const other of others)
      for (const { at } of meetingsOf(edge, other))
        if (places.every((one) => apart(one, at) > SAME_MM)) places.push(at);
  return places;
}

type Path = { corners: Corner[]; middle: Point; ends: [Point, Point] };

/** The way along a contour from one place on it to another: its corners but for the last, and a place between. */
function pathOf(contour: Contour, from: Point, to: Point): Path | null {
  const edges = edgesOf(contour);
  const first = edges.findIndex((edge) => distanceToEdge(edge, from) < SAME_MM && apart(edge.to, from) > SAME_MM);
  const last = edges.findIndex((edge) => distanceToEdge(edge, to) < SAME_MM && apart(edge.from, to) > SAME_MM);
  if (first < 0 || last < 0) return null;
  const straightOn = first === last && shareOf(edges[first], to) > shareOf(edges[first], from);
  const count = straightOn ? 0 : (last - first + edges.length) % edges.length || edges.length;
  const corners: Corner[] = [];
  for (let step = 0; step <= count; step++) {
    const edge = edges[(first + step) % edges.length];
    const [start, end] = [step === 0 ? from : edge.from, step === count ? to : edge.to];
    if (apart(start, end) > SAME_MM) corners.push(pieceOf(edge, start, end));
  }
  const drawn = flattenContour([...corners, { x: to.x, y: to.y }], 0.01);
  const ends: [Point, Point] = [from, to];
  return corners.length > 0 ? { corners, middle: between(corners, to, drawn), ends } : null;
}

/** A place on the path that is none of its ends. */
function between(corners: readonly Corner[], to: Point, drawn: readonly Point[]): Point {
  const ends = drawn.filter((at) => apart(at, corners[0]) > SAME_MM && apart(at, to) > SAME_MM);
  if (ends.length > 0) return ends[ends.length >> 1];
  return { x: (corners[0].x + to.x) / 2, y: (corners[0].y + to.y) / 2 };
}

/** A piece of an edge as the corner that it leaves from. */
function pieceOf(edge: Edge, start: Point, end: Point): Corner {
  const at = { x: start.x, y: start.y };
  const share = shareOf(edge, end) - shareOf(edge, start);
  return edge.straight ? at : { ...at, bulge: Math.tan(share * Math.atan(edge.bulge)) };
}

/** How far along an edge a place on it lies, 0 to 1. */
function shareOf(edge: Edge, at: Point): number {
  const centre = centreOf(edge);
  if (!centre) return apart(edge.from, at) / apart(edge.from, edge.to);
  if (apart(edge.from, at) < SAME_MM) return 0;
  if (apart(edge.to, at) < SAME_MM) return 1;
  const angle = (point: Point) => Math.atan2(point.y - centre.y, point.x - centre.x);
  const turned = (angle(at) - angle(edge.from)) * Math.sign(edge.bulge);
  const whole = 2 * Math.PI;
  return (((turned % whole) + whole) % whole) / (4 * Math.atan(Math.abs(edge.bulge)));
}

/** The same contour the other way round: a bend belongs to the corner that its edge leaves. */
function reversed(contour: Contour): Contour {
  return contour.map((_, index) => {
    const { x, y } = contour[contour.length - 1 - index];
    const { bulge } = contour[(2 * contour.length - 2 - index) % contour.length];
    return bulge ? { x, y, bulge: -bulge } : { x, y };
  });
}

const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
