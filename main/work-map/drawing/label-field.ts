import { segmentsCross } from '../../../shared-types/geometry.ts';
import { boxesOverlap, boxInside, type PageBox, type PagePoint } from '../paper.ts';

type Leader = { from: PagePoint; to: PagePoint };

/** What is taken on one picture: text boxes (hard), bodies better left visible (soft) and leader lines. */
export type LabelField = {
  frame: PageBox;
  take(box: PageBox): void;
  avoid(box: PageBox): void;
  takeLeader(leader: Leader): void;
  /** Free of text and inside the frame. */
  isFree(box: PageBox): boolean;
  /** Also off the bodies and off the leader lines. */
  isClear(box: PageBox): boolean;
  /** No text lies under the line. */
  isOpenLine(leader: Leader): boolean;
  /** No other leader line crosses it. */
  isUncrossed(leader: Leader): boolean;
};

const CELL = 32;

/** A box index by cells: labels ask only their neighbours. */
function createIndex() {
  const cells = new Map<string, PageBox[]>();
  const visit = (box: PageBox, see: (key: string) => boolean): boolean => {
    for (let row = Math.floor(box.y0 / CELL); row <= Math.floor(box.y1 / CELL); row++)
      for (let column = Math.floor(box.x0 / CELL); column <= Math.floor(box.x1 / CELL); column++)
        if (see(`${column},${row}`)) return true;
    return false;
  };
  return {
    add(box: PageBox) {
      visit(box, (key) => {
        const list = cells.get(key);
        if (list) list.push(box);
        else cells.set(key, [box]);
        return false;
      });
    },
    hits: (box: PageBox, test: (other: PageBox) => boolean) => visit(box, (key) => (cells.get(key) ?? []).some(test)),
  };
}

/** True when the line enters the box (Liang and Barsky's clipping). */
export function lineEntersBox({ from, to }: Leader, box: PageBox): boolean {
  const delta = { x: to.x - from.x, y: to.y - from.y };
  let enter = 0;
  let leave = 1;
  const edges: [number, number][] = [
    [-delta.x, from.x - box.x0],
    [delta.x, box.x1 - from.x],
    [-delta.y, from.y - box.y0],
    [delta.y, box.y1 - from.y],
  ];
  for (const [slope, room] of edges) {
    if (slope === 0 && room < 0) return false;
    if (slope < 0) enter = Math.max(enter, room / slope);
    if (slope > 0) leave = Math.min(leave, room / slope);
  }
  return enter <= leave;
}

/** An empty field over a frame. */
export function createLabelField(frame: PageBox): LabelField {
  const texts = createIndex();
  const bodies = createIndex();
  const leaders: Leader[] = [];
  const isFree = (box: PageBox) => boxInside(box, frame) && !texts.hits(box, (other) => boxesOverlap(box, other));
  return {
    frame,
    take: (box) => texts.add(box),
    avoid: (box) => bodies.add(box),
    takeLeader: (leader) => {
      leaders.push(leader);
    },
    isFree,
    isClear: (box) =>
      isFree(box) &&
      !bodies.hits(box, (other) => boxesOverlap(box, other)) &&
      !leaders.some((leader) => lineEntersBox(leader, box)),
    isUncrossed: (leader) => !leaders.some((other) => segmentsCross(leader.from, leader.to, other.from, other.to)),
    isOpenLine: (leader) => {
      const bounds = {
        x0: Math.min(leader.from.x, leader.to.x),
        x1: Math.max(leader.from.x, leader.to.x),
        y0: Math.min(leader.from.y, leader.to.y),
        y1: Math.max(leader.from.y, leader.to.y),
      };
      return !texts.hits(bounds, (other) => lineEntersBox(leader, other));
    },
  };
}

export type Placed = { x: number; y: number; distance: number };

/** Directions in the order a draughtsman would try them: right, left, above, below, then the corners and between. */
const DIRECTIONS = [0, 180, 90, 270, 45, 135, 315, 225, 22, 158, 338, 202, 67, 113, 293, 247].map((degrees) => {
  const angle = (degrees * Math.PI) / 180;
  return { x: Math.cos(angle), y: -Math.sin(angle) };
});
const GAPS = [2, 8, 16, 26, 38, 52, 70, 92, 120, 155, 200, 260, 330, 420];

/** Up to here a place that covers a body is better than a clear one further off. */
const NEAR = 70;

/**
 * Finds a place for a label of `size` near a body: first beside it, then further and further out. Places that cover no
 * body and no leader line go before others, but a near one goes before a far one. Returns the upper left corner, or null.
 */
export function placeNear(
  field: LabelField,
  body: PageBox,
  size: { width: number; height: number },
  reach: number,
): Placed | null {
  const near = GAPS.filter((gap) => gap <= Math.min(reach, NEAR));
  const far = GAPS.filter((gap) => gap > NEAR && gap <= reach);
  return (
    search(field, body, size, near, true) ??
    search(field, body, size, near, false) ??
    search(field, body, size, far, true) ??
    search(field, body, size, far, false)
  );
}

function search(
  field: LabelField,
  body: PageBox,
  size: { width: number; height: number },
  gaps: readonly number[],
  strict: boolean,
): Placed | null {
  const centre = { x: (body.x0 + body.x1) / 2, y: (body.y0 + body.y1) / 2 };
  const half = { x: (body.x1 - body.x0) / 2, y: (body.y1 - body.y0) / 2 };
  for (const gap of gaps) {
    for (const direction of DIRECTIONS) {
      const middle = {
        x: centre.x + spread(direction.x) * (half.x + size.width / 2) + direction.x * gap,
        y: centre.y + spread(direction.y) * (half.y + size.height / 2) + direction.y * gap,
      };
      const x = middle.x - size.width / 2;
      const y = middle.y - size.height / 2;
      const box = { x0: x, y0: y, x1: x + size.width, y1: y + size.height };
      if (strict ? !field.isClear(box) : !field.isFree(box)) continue;
      const leader = { from: centre, to: nearestPoint(box, centre) };
      if (gap > 4 && (!field.isOpenLine(leader) || (strict && !field.isUncrossed(leader)))) continue;
      return { x, y, distance: gap };
    }
  }
  return null;
}

/** Oblique directions clear the body by its whole half size on the dominant axis only. */
const spread = (component: number): number => (Math.abs(component) > 0.7 ? Math.sign(component) : component);

/** The point of a box nearest to a point outside it. */
export const nearestPoint = (box: PageBox, point: PagePoint): PagePoint => ({
  x: Math.max(box.x0, Math.min(box.x1, point.x)),
  y: Math.max(box.y0, Math.min(box.y1, point.y)),
});
