import { areaOf, boxOfEdge, type Edge, edgesOf, insideEdges, TOUCH_MM } from '../contour/edges.ts';
import { type Meeting, meetingsOf } from '../contour/meetings.ts';
import { type Box, boxOf, type Contour, type Point } from '../geometry.ts';

/** The outline, or a cutout by its place in the list. */
export type ContourId = 'outline' | number;

/** What is wrong with the shape of a board, and where, mm. Edges are named by the corner they start from. */
export type ContourFault =
  | { kind: 'self'; id: ContourId; at: Point; crosses: boolean; edges: [number, number] }
  | { kind: 'pair'; id: ContourId; other: ContourId; at: Point; crosses: boolean }
  | { kind: 'outside'; id: number; at: Point }
  | { kind: 'nested'; id: number; other: number; at: Point }
  | { kind: 'empty'; id: ContourId; at: Point };

/** Area below which a contour encloses nothing, mm2. */
const EMPTY_MM2 = 1e-6;

export type Crossing = Meeting & { edges: [number, number] };

/** Where a closed contour meets itself, arcs exact; at most `most` places. */
export function selfMeetings(contour: readonly Contour[number][], most = 1, crossingsOnly = false): Crossing[] {
  const edges = edgesOf(contour);
  const found: Crossing[] = [];
  const boxed = sweepList(edges);
  for (let i = 0; i < boxed.length; i++) {
    for (let j = i + 1; j < boxed.length && boxed[j].box.minX <= boxed[i].box.maxX + TOUCH_MM; j++) {
      if (!boxesMeet(boxed[i], boxed[j])) continue;
      const [a, b] = boxed[i].place < boxed[j].place ? [boxed[i], boxed[j]] : [boxed[j], boxed[i]];
      for (const meeting of meetingsOf(a.edge, b.edge, sharedCorners(a, b, edges.length)))
        if (meeting.crosses || !crossingsOnly) found.push({ ...meeting, edges: [a.edge.index, b.edge.index] });
      if (found.length >= most) return found.slice(0, most);
    }
  }
  return found;
}

/** Where two contours meet: the first place, or null. */
export function contoursMeeting(first: Contour, second: Contour): Meeting | null {
  const other = preparedOf(second);
  const one = preparedOf(first);
  if (!boxesMeet(one, other)) return null;
  const others = other.boxed.filter((edge) => boxesMeet(edge, one));
  for (const edge of one.boxed) {
    if (!boxesMeet(edge, other)) continue;
    for (const against of others) {
      if (against.box.minX > edge.box.maxX + TOUCH_MM) break;
      if (!boxesMeet(edge, against)) continue;
      const [meeting] = meetingsOf(edge.edge, against.edge);
      if (meeting) return meeting;
    }
  }
  return null;
}

/** The first fault that one contour of a board has, by itself or against the others; null: none. */
export function contourFaultOf(outline: Contour, cutouts: readonly Contour[], id: ContourId): ContourFault | null {
  const contour = id === 'outline' ? outline : cutouts[id];
  const at = { x: contour[0].x, y: contour[0].y };
  const [self] = selfMeetings(contour);
  if (self) return { kind: 'self', id, at: self.at, crosses: self.crosses, edges: self.edges };
  if (Math.abs(areaOf(contour)) < EMPTY_MM2) return { kind: 'empty', id, at };
  if (id !== 'outline') return cutoutAgainst(outline, cutouts, id);
  for (const index of cutouts.keys()) {
    const fault = cutoutAgainstOutline(outline, cutouts[index], index);
    if (fault) return fault;
  }
  return null;
}

function cutoutAgainst(outline: Contour, cutouts: readonly Contour[], id: number): ContourFault | null {
  const fault = cutoutAgainstOutline(outline, cutouts[id], id);
  if (fault) return fault;
  for (const [other, cutout] of cutouts.entries()) {
    if (other === id) continue;
    const meeting = contoursMeeting(cutouts[id], cutout);
    if (meeting) return { kind: 'pair', id, other, ...meeting };
    const at = { x: cutouts[id][0].x, y: cutouts[id][0].y };
    if (isInside(at, cutout) || isInside(cutout[0], cutouts[id])) return { kind: 'nested', id, other, at };
  }
  return null;
}

function cutoutAgainstOutline(outline: Contour, cutout: Contour, id: number): ContourFault | null {
  const meeting = contoursMeeting(outline, cutout);
  if (meeting) return { kind: 'pair', id, other: 'outline', ...meeting };
  const [{ x, y }] = cutout;
  return isInside(cutout[0], outline) ? null : { kind: 'outside', id, at: { x, y } };
}

type Boxed = { edge: Edge; place: number; box: ReturnType<typeof boxOfEdge> };

const sweepList = (edges: readonly Edge[]): Boxed[] =>
  edges
    .map((edge, place) => ({ edge, place, box: boxOfEdge(edge) }))
    .sort((first, second) => first.box.minX - second.box.minX);

type Prepared = { edges: Edge[]; boxed: Boxed[]; box: Box };

const prepared = new WeakMap<Contour, Prepared>();

/** Edges and boxes of a contour, made once: an outline is asked again for every one of a thousand cutouts. */
function preparedOf(contour: Contour): Prepared {
  const known = prepared.get(contour);
  if (known) return known;
  const edges = edgesOf(contour);
  const boxed = sweepList(edges);
  const corners = boxed.flatMap(({ box }) => [
    { x: box.minX, y: box.minY },
    { x: box.maxX, y: box.maxY },
  ]);
  const made = { edges, boxed, box: boxOf(corners) };
  prepared.set(contour, made);
  return made;
}

/** A point off a contour's box is outside without a closer look. */
function isInside(at: Point, contour: Contour): boolean {
  const { box, edges } = preparedOf(contour);
  const within = at.x >= box.minX && at.x <= box.maxX && at.y >= box.minY && at.y <= box.maxY;
  return within && insideEdges(at, edges);
}

const boxesMeet = ({ box: a }: { box: Box }, { box: b }: { box: Box }): boolean =>
  a.minX <= b.maxX + TOUCH_MM &&
  b.minX <= a.maxX + TOUCH_MM &&
  a.minY <= b.maxY + TOUCH_MM &&
  b.minY <= a.maxY + TOUCH_MM;

/** Corners at which two edges follow one another. */
function sharedCorners(a: Boxed, b: Boxed, count: number): Point[] {
  const shared: Point[] = [];
  if (b.place === a.place + 1) shared.push(a.edge.to);
  if (a.place === 0 && b.place === count - 1) shared.push(a.edge.from);
  return shared;
}
