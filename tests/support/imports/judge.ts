import type { Board, Part } from '../../../shared-types/board.ts';
import { type At, corners, middleOf, type Rect, rectOf, type Side, type TruePad, type Truth } from './truth.ts';

/** One import held against the truth: figures of one line of the table. */
export interface Verdict {
  readonly top: number;
  readonly bottom: number;
  readonly truth: string;
  readonly matched: number;
  readonly unmatched: readonly string[];
  readonly sideRight: number;
  readonly sideOf: number;
  readonly centres: readonly { readonly refdes: string; readonly mm: number }[];
  readonly turns: readonly { readonly refdes: string; readonly degrees: number; readonly twoPads: boolean }[];
  readonly alone: number;
  /** Largest difference of the outline's two sides, mm; null: nothing to compare with. */
  readonly boxMm: number | null;
}

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0;

function boardBox(board: Board): Rect {
  const points = board.outline.flatMap((from, index): At[] => {
    const to = board.outline[(index + 1) % board.outline.length];
    const bulge = from.bulge ?? 0;
    if (bulge === 0) return [from];
    // A corner's bulge is the tangent of a quarter of its arc's angle: points along it, by the circle through both ends.
    const sweep = 4 * Math.atan(bulge);
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const reach = 1 / Math.tan(sweep / 2) / 2;
    const centre = { x: (from.x + to.x) / 2 - dy * reach, y: (from.y + to.y) / 2 + dx * reach };
    const radius = Math.hypot(from.x - centre.x, from.y - centre.y);
    const start = Math.atan2(from.y - centre.y, from.x - centre.x);
    return Array.from({ length: 65 }, (_, step) => ({
      x: centre.x + radius * Math.cos(start + (sweep * step) / 64),
      y: centre.y + radius * Math.sin(start + (sweep * step) / 64),
    }));
  });
  return rectOf(points);
}

const inside = ({ x, y }: At, box: Rect): boolean => x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY;
const areaOf = (box: Rect): number => (box.maxX - box.minX) * (box.maxY - box.minY);

/** The smallest box that holds nine tenths of all pads: README of the outside boards. Without pads the largest. */
function profileOf({ chains, pads, padsBy, bare }: Truth): Rect | null {
  // A netlist may count from a place of its own.
  const all = padsBy === 'IPC-D-356' ? [] : [...pads.values()].flat().map(({ at }) => at);
  const points = all.length > 0 ? all : [...bare.top, ...bare.bottom];
  const loops = chains.filter(({ box }) => areaOf(box) > 4);
  const telling = loops.filter((one) => one.telling);
  for (const some of [telling, loops]) {
    const holding = some.filter(({ box }) => points.filter((at) => inside(at, box)).length >= 0.9 * points.length);
    const sorted = holding.sort((a, b) => areaOf(a.box) - areaOf(b.box));
    const found = points.length > 0 ? sorted[0] : sorted.at(-1);
    if (found) return found.box;
  }
  return null;
}

/** A point of the files in a part's own axes, as the board file's documentation defines them. */
function ownAxes(part: Part, at: At): At {
  const [dx, dy] = [at.x - part.x, at.y - part.y];
  const angle = (-part.turn * Math.PI) / 180;
  const x = dx * Math.cos(angle) - dy * Math.sin(angle);
  const y = dx * Math.sin(angle) + dy * Math.cos(angle);
  return part.side === 'bottom' ? { x, y: -y } : { x, y };
}

const apart = (a: number, b: number, period: number): number => {
  const off = (((a - b) % period) + period) % period;
  return Math.min(off, period - off);
};

/** Middle of the first pin's pads. */
function firstPin(pads: readonly TruePad[]): At | null {
  const names = new Set(pads.map(({ pin }) => pin));
  const wanted = ['1', 'A1', ...(names.size === 2 ? ['K', 'C', '+', 'P'] : [])].find((name) => names.has(name));
  const own = pads.filter(({ pin }) => pin === wanted);
  return own.length === 0 ? null : middleOf(rectOf(own.map(({ at }) => at)));
}

interface Pose {
  readonly refdes: string;
  readonly key: string;
  readonly angle: number;
  readonly twoPads: boolean;
  readonly side: Side;
}

/** Direction to pin 1 from the middle of the pads, in own axes: the same for all parts of one package, on both sides. */
function judgeTurns(poses: readonly Pose[]): Pick<Verdict, 'turns' | 'alone'> {
  const groups = groupByKey(poses);
  const turns: { refdes: string; degrees: number; twoPads: boolean }[] = [];
  let alone = 0;
  for (const group of groups.values()) {
    if (group.length === 1) {
      alone++;
      continue;
    }
    const period = group[0].twoPads ? 180 : 360;
    const usual = group
      .map(({ angle }) => ({ angle, near: group.filter((other) => apart(other.angle, angle, period) <= 1).length }))
      .sort((a, b) => b.near - a.near)[0].angle;
    for (const { refdes, angle, twoPads } of group)
      turns.push({ refdes, degrees: apart(angle, usual, period), twoPads });
  }
  return { turns, alone };
}

function groupByKey(poses: readonly Pose[]): Map<string, Pose[]> {
  const groups = new Map<string, Pose[]>();
  for (const pose of poses) groups.set(pose.key, [...(groups.get(pose.key) ?? []), pose]);
  return groups;
}

const directionOf = ({ x, y }: At): number => (Math.atan2(y, x) * 180) / Math.PI;

/** Board and truth may count from two origins where no outline joins them: then the most usual difference is taken off. */
function shiftBetween(board: Board, truth: Truth, profile: Rect | null): At | null {
  const box = boardBox(board);
  const sameBox =
    profile !== null &&
    Math.abs(box.maxX - box.minX - profile.maxX + profile.minX) < 1 &&
    Math.abs(box.maxY - box.minY - profile.maxY + profile.minY) < 1;
  if (sameBox && truth.padsBy !== 'IPC-D-356') return { x: box.minX - profile.minX, y: box.minY - profile.minY };
  const pairs = board.parts.flatMap((part) => {
    const pads = truth.pads.get(part.refdes);
    return pads ? [{ part, middle: middleOf(rectOf(pads.flatMap((pad) => corners(pad.box)))) }] : [];
  });
  if (pairs.length === 0) return null;
  return {
    x: median(pairs.map(({ part, middle }) => part.x - middle.x)),
    y: median(pairs.map(({ part, middle }) => part.y - middle.y)),
  };
}

/** @param layers files that can show an outline are among those that the board was made from */
export function judge(board: Board, truth: Truth, layers: boolean): Verdict {
  const profile = layers ? profileOf(truth) : null;
  const box = boardBox(board);
  const boxMm =
    profile === null
      ? null
      : Math.max(
          Math.abs(box.maxX - box.minX - profile.maxX + profile.minX),
          Math.abs(box.maxY - box.minY - profile.maxY + profile.minY),
        );
  const shift = shiftBetween(board, truth, profile);
  const onSide = (side: Side): number => board.parts.filter((part) => part.side === side).length;
  const counted = { top: onSide('top'), bottom: onSide('bottom'), boxMm };
  const nothing = { matched: 0, unmatched: [], sideRight: 0, sideOf: 0, centres: [], turns: [], alone: 0 };
  if (shift === null) return { ...counted, ...nothing, truth: '-' };
  if (truth.padsBy) return { ...counted, ...judgeNamed(board, truth, shift), truth: truth.padsBy };
  if (truth.bare.top.length + truth.bare.bottom.length === 0) return { ...counted, ...nothing, truth: '-' };
  return { ...counted, ...judgeBare(board, truth, shift), truth: 'unnamed pads' };
}

type Judged = Omit<Verdict, 'top' | 'bottom' | 'boxMm' | 'truth'>;

function judgeNamed(board: Board, truth: Truth, shift: At): Judged {
  const moved = ({ x, y }: At): At => ({ x: x + shift.x, y: y + shift.y });
  const unmatched: string[] = [];
  const centres: { refdes: string; mm: number }[] = [];
  const poses: Pose[] = [];
  let [sideRight, sideOf] = [0, 0];
  for (const part of board.parts) {
    const pads = truth.pads.get(part.refdes);
    if (!pads) {
      unmatched.push(part.refdes);
      continue;
    }
    const middle = moved(middleOf(rectOf(pads.flatMap((pad) => corners(pad.box)))));
    centres.push({ refdes: part.refdes, mm: Math.hypot(part.x - middle.x, part.y - middle.y) });
    const through = (pad: TruePad): boolean =>
      pads.some((other) => other.side !== pad.side && Math.hypot(other.at.x - pad.at.x, other.at.y - pad.at.y) < 0.01);
    const surface = pads.filter((pad) => !through(pad));
    if (surface.length > 0) {
      sideOf++;
      if (surface.some((pad) => pad.side === part.side)) sideRight++;
    }
    const first = firstPin(pads);
    if (first === null) continue;
    const [a, b] = [ownAxes(part, moved(first)), ownAxes(part, middle)];
    const arm = { x: a.x - b.x, y: a.y - b.y };
    const pins = new Set(pads.map(({ pin }) => pin)).size;
    if (Math.hypot(arm.x, arm.y) < 0.05 || pins < 2) continue;
    const key = `${part.package.name || part.refdes} ${pins} ${Math.hypot(arm.x, arm.y).toFixed(1)}`;
    poses.push({ refdes: part.refdes, key, angle: directionOf(arm), twoPads: pins === 2, side: part.side });
  }
  return { matched: centres.length, unmatched, sideRight, sideOf, centres, ...judgeTurns(poses) };
}

const REACH_MM = 8;
const TWIN_MM = 0.1;

/** Pads without references: two that lie opposite of each other about a part are taken as its own. */
function judgeBare(board: Board, truth: Truth, shift: At): Judged {
  const unmatched: string[] = [];
  const centres: { refdes: string; mm: number }[] = [];
  const byPackage = new Map<string, { refdes: string; twins: At[] }[]>();
  const bySide = { top: finder(truth.bare.top, shift), bottom: finder(truth.bare.bottom, shift) };
  for (const part of board.parts) {
    const pairs = pairsOf(part, bySide[part.side]);
    if (pairs.length === 0) {
      unmatched.push(part.refdes);
      continue;
    }
    const middle = middleOf(rectOf(pairs[0]));
    centres.push({ refdes: part.refdes, mm: Math.hypot(part.x - middle.x, part.y - middle.y) });
    const known = byPackage.get(part.package.name) ?? [];
    known.push({ refdes: part.refdes, twins: pairs.flat().map((pad) => ownAxes(part, pad)) });
    byPackage.set(part.package.name, known);
  }
  const { turns, alone } = turnsByTwins([...byPackage.values()]);
  return {
    matched: centres.length,
    unmatched,
    sideRight: centres.length,
    sideOf: centres.length,
    centres,
    turns,
    alone,
  };
}

type Twins = { readonly refdes: string; readonly twins: readonly At[] };

/** Parts of one package share the places of their pads in own axes; without pin numbers half a turn cannot be told. */
function turnsByTwins(groups: readonly (readonly Twins[])[]): Pick<Verdict, 'turns' | 'alone'> {
  const turns: { refdes: string; degrees: number; twoPads: boolean }[] = [];
  let alone = 0;
  for (const group of groups) {
    if (group.length === 1) {
      alone++;
      continue;
    }
    const has = ({ twins }: Twins, place: At): boolean =>
      twins.some((at) => Math.hypot(at.x - place.x, at.y - place.y) < TWIN_MM);
    const [usual] = group
      .map(({ twins }) => ({ place: twins[0], near: group.filter((other) => has(other, twins[0])).length }))
      .sort((a, b) => b.near - a.near);
    const reach = Math.hypot(usual.place.x, usual.place.y);
    for (const { refdes, twins } of group) {
      const alike = twins.filter((at) => Math.abs(Math.hypot(at.x, at.y) - reach) < TWIN_MM);
      const offs = alike.map((at) => apart(directionOf(at), directionOf(usual.place), 180));
      if (offs.length === 0) alone++;
      else turns.push({ refdes, degrees: Math.min(...offs), twoPads: true });
    }
  }
  return { turns, alone };
}

function finder(points: readonly At[], shift: At): (at: At, within: number) => At[] {
  const cells = new Map<string, At[]>();
  for (const { x, y } of points) {
    const at = { x: x + shift.x, y: y + shift.y };
    const key = `${Math.floor(at.x)} ${Math.floor(at.y)}`;
    cells.set(key, [...(cells.get(key) ?? []), at]);
  }
  return (at, within) => {
    const found: At[] = [];
    for (let column = Math.floor(at.x - within); column <= Math.floor(at.x + within); column++) {
      for (let row = Math.floor(at.y - within); row <= Math.floor(at.y + within); row++) {
        found.push(...(cells.get(`${column} ${row}`) ?? []));
      }
    }
    return found.filter((one) => Math.hypot(one.x - at.x, one.y - at.y) <= within);
  };
}

/** Pairs of pads opposite of each other about a part's middle, the nearest first. */
function pairsOf(part: Part, near: ReturnType<typeof finder>): [At, At][] {
  const reach = (at: At): number => Math.hypot(at.x - part.x, at.y - part.y);
  return near(part, REACH_MM)
    .filter((pad) => reach(pad) >= TWIN_MM)
    .sort((a, b) => reach(a) - reach(b))
    .flatMap((pad): [At, At][] => {
      const [twin] = near({ x: 2 * part.x - pad.x, y: 2 * part.y - pad.y }, TWIN_MM);
      return twin ? [[pad, twin]] : [];
    });
}
