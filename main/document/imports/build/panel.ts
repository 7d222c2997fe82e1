import { boxOfPoints, distance, normalAngle, type Point, turnPoint } from '../plane.ts';
import type { PlacedMm } from '../register/register.ts';

/** References that repeat because the table lists several images of one board. */
export interface Panel {
  readonly images: number;
  /** Parts of the first image. */
  readonly first: ReadonlySet<PlacedMm>;
  /** Parts whose reference stands once: marks and fixings of the panel, or of one image. */
  readonly single: readonly PlacedMm[];
}

export type PanelChoice = 'all' | 'one';

const MIN_REFERENCES = 3;
const MIN_SHARE = 0.5;
const SAME_PLACE_MM = 0.02;
const SAME_TURN_DEGREES = 0.5;

/** A panel, where at least half of the references (and three of them) stand equally often at different places; else null. */
export function findPanel(placements: readonly PlacedMm[]): Panel | null {
  const groups = groupByReference(placements);
  const images = commonCount([...groups.values()].map(({ length }) => length));
  const repeated = [...groups.values()].filter(({ length }) => length === images);
  if (images < 2 || repeated.length < MIN_REFERENCES || repeated.length < groups.size * MIN_SHARE) return null;
  const [anchors] = repeated;
  const first = [...groups.values()].filter(({ length }) => length > 1).map((group) => firstImage(group, anchors));
  return {
    images,
    first: new Set(first),
    single: [...groups.values()].flatMap((group) => (group.length === 1 ? group : [])),
  };
}

/** The same part listed by two files at one place stands once. */
function groupByReference(placements: readonly PlacedMm[]): Map<string, PlacedMm[]> {
  const groups = new Map<string, PlacedMm[]>();
  for (const one of placements) {
    const group = groups.get(one.refdes) ?? [];
    groups.set(one.refdes, group);
    if (!group.some((other) => other.side === one.side && distance(other, one) <= SAME_PLACE_MM)) group.push(one);
  }
  return groups;
}

function commonCount(counts: readonly number[]): number {
  const often = new Map<number, number>();
  for (const count of counts) if (count > 1) often.set(count, (often.get(count) ?? 0) + 1);
  return [...often].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 0;
}

/**
 * The part of the first anchor's image: that one from which the others lie as the other anchors lie from the first, images
 * that are turned included. Two images half a turn apart fit either way: there the nearest is taken. Where no part fits, the
 * order of the file decides.
 */
function firstImage(group: readonly PlacedMm[], anchors: readonly PlacedMm[]): PlacedMm {
  if (group === anchors || group.length !== anchors.length) return group[0];
  const fitting = group.filter((one) => fitsImages(one, group, anchors));
  const [nearest] = fitting.sort((a, b) => distance(a, anchors[0]) - distance(b, anchors[0]));
  return nearest ?? group[0];
}

function fitsImages(one: PlacedMm, group: readonly PlacedMm[], anchors: readonly PlacedMm[]): boolean {
  const [base] = anchors;
  const arm: Point = { x: one.x - base.x, y: one.y - base.y };
  return anchors.every((anchor) => {
    const turn = normalAngle(anchor.rotation - base.rotation);
    const turned = turnPoint(arm, turn);
    const at = { x: anchor.x + turned.x, y: anchor.y + turned.y };
    return group.some((other) => distance(other, at) <= SAME_PLACE_MM && isTurned(one, other, turn));
  });
}

function isTurned(one: PlacedMm, other: PlacedMm, turn: number): boolean {
  const off = normalAngle(other.rotation - one.rotation - turn);
  return Math.min(off, 360 - off) <= SAME_TURN_DEGREES;
}

/** What the choice leaves on the board. Of parts that stand once, the first image keeps those that lie among its own. */
export function takeImages(
  placements: readonly PlacedMm[],
  panel: Panel | null,
  choice: PanelChoice,
): { placements: readonly PlacedMm[]; strays: readonly string[] } {
  if (panel === null || choice === 'all') return { placements, strays: [] };
  const box = boxOfPoints(panel.first);
  const strays = panel.single.filter(({ x, y }) => x < box.minX || x > box.maxX || y < box.minY || y > box.maxY);
  const away = new Set(strays);
  const kept = new Set([...panel.first, ...panel.single.filter((one) => !away.has(one))]);
  return { placements: placements.filter((one) => kept.has(one)), strays: strays.map(({ refdes }) => refdes) };
}
