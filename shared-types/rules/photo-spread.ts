import type { Point } from '../geometry.ts';
import type { PhotoFitKind } from '../photo.ts';
import type { PlacePair } from './photo-models.ts';

/** Why pairs do not settle a map; `pairs`: indices of those to blame. */
export type FitRefusal = {
  code: 'too-few-pairs' | 'same-place' | 'on-one-line' | 'all-but-one-on-one-line' | 'folded';
  /** Where the fault shows. */
  on: 'photo' | 'board' | 'both';
  pairs: number[];
  /** Pairs that this kind of map needs. */
  needed: number;
};

export const LEAST_PAIRS: Record<PhotoFitKind, number> = { similarity: 2, affine: 3, projective: 4 };

/** Nearer than this share of the spread of all pairs, two places count as one. */
const SAME = 1e-3;
/** Points count as on one line when they stray from it by less than this share of their extent along it. */
const THIN = 0.02;

/** What forbids a kind of map; null: the pairs are spread well enough. */
export function spreadRefusal(pairs: readonly PlacePair[], kind: PhotoFitKind): FitRefusal | null {
  const needed = LEAST_PAIRS[kind];
  if (pairs.length < needed) return { code: 'too-few-pairs', on: 'both', pairs: [], needed };
  for (const on of ['photo', 'board'] as const) {
    const points = pairs.map((pair) => pair[on]);
    const refusal = pointsRefusal(points, kind);
    if (refusal) return { ...refusal, on, needed };
  }
  return null;
}

function pointsRefusal(points: readonly Point[], kind: PhotoFitKind): Pick<FitRefusal, 'code' | 'pairs'> | null {
  const needed = LEAST_PAIRS[kind];
  const { distinct, twins } = distinctPoints(points);
  if (distinct.length < needed) return { code: 'same-place', pairs: twins };
  if (kind === 'similarity') return null;
  const all = distinct.map((index) => points[index]);
  if (thinness(all) < THIN) return { code: 'on-one-line', pairs: distinct };
  if (kind === 'affine') return null;
  const lone = loneOffLine(all);
  if (lone === null) return null;
  return { code: 'all-but-one-on-one-line', pairs: distinct.filter((_, index) => index !== lone) };
}

function distinctPoints(points: readonly Point[]): { distinct: number[]; twins: number[] } {
  const reach = SAME * Math.max(extentOf(points), Number.MIN_VALUE);
  const distinct: number[] = [];
  const twins = new Set<number>();
  points.forEach((point, index) => {
    const twin = distinct.find((one) => Math.hypot(points[one].x - point.x, points[one].y - point.y) <= reach);
    if (twin === undefined) distinct.push(index);
    else for (const one of [twin, index]) twins.add(one);
  });
  return { distinct, twins: [...twins].sort((a, b) => a - b) };
}

function extentOf(points: readonly Point[]): number {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  return Math.hypot(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
}

/** Smaller over larger standard deviation along the principal axes, 0 to 1. */
export function thinness(points: readonly Point[]): number {
  const mean = { x: 0, y: 0 };
  for (const { x, y } of points) {
    mean.x += x / points.length;
    mean.y += y / points.length;
  }
  let [xx, xy, yy] = [0, 0, 0];
  for (const { x, y } of points) {
    xx += (x - mean.x) ** 2;
    xy += (x - mean.x) * (y - mean.y);
    yy += (y - mean.y) ** 2;
  }
  const half = (xx + yy) / 2;
  const root = Math.hypot((xx - yy) / 2, xy);
  return half + root > 0 ? Math.sqrt(Math.max(0, half - root) / (half + root)) : 0;
}

/** The point without which the others lie on one line; null: there is none. A projective map needs four points, no three on a line. */
function loneOffLine(points: readonly Point[]): number | null {
  for (let index = 0; index < points.length; index++)
    if (thinness(points.filter((_, other) => other !== index)) < THIN) return index;
  return null;
}
