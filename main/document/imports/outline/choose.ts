import type { Box, Point } from '../plane.ts';
import { polygonHolds } from '../segments.ts';
import type { Loop } from './loop.ts';

export interface OutlineSource {
  readonly file: string;
  /** True when the file says that it is the board's profile (X2 file function). */
  readonly declared: boolean;
  readonly loops: readonly Loop[];
}

export interface OutlineCandidate {
  readonly loop: Loop;
  readonly declared: boolean;
  /** Share of the placements inside, 0 to 1. */
  readonly share: number;
  /** Place in the list of candidates; 0 is the choice of the importer. */
  readonly rank: number;
}

export interface OutlineChoice {
  readonly outline: Loop;
  readonly share: number;
  readonly cutouts: readonly Loop[];
  /** Loops inside the outline that were not taken as cutouts: another pen, parts inside, or loops within loops. */
  readonly leftOut: number;
  /** Width of the pen whose other edge was drawn as a loop of its own; 0 where the outline is one line. */
  readonly doubleMm: number;
  readonly why: 'smallest' | 'largest' | 'best' | 'chosen';
  /** Other loops that could be the outline, best first. */
  readonly others: readonly OutlineCandidate[];
}

const SHARE_NEEDED = 0.9;
const SHARE_WORTH_OFFERING = 0.5;
export const MIN_OUTLINE_AREA_MM2 = 4;
const MAX_OTHERS = 12;
/** Smaller loops than the first so many are drawings, never the outline. */
const MAX_CANDIDATES = 2000;
const MAX_INNER = 20_000;
/** As many as the board's format takes. */
const MAX_CUTOUTS = 5000;

/**
 * The smallest loop that holds at least 90 % of the placements; drawing frames are larger and lose. Declared profiles go first.
 * Without placements the largest loop of a declared profile, or of all files. `wanted` picks a candidate by its rank.
 */
export function chooseOutline(
  sources: readonly OutlineSource[],
  placements: readonly Point[],
  wanted?: number,
): OutlineChoice | null {
  const candidates = rankCandidates(sources, placements);
  if (candidates.length === 0) return null;
  const index = wanted !== undefined && candidates[wanted] ? wanted : 0;
  const { loop, declared, share } = candidates[index];
  const source = sources.find(({ file }) => file === loop.file);
  const inner = innerLoops(loop, source?.loops ?? [], placements, declared);
  const others = candidates.filter((candidate) => candidate.loop !== loop && candidate.share >= SHARE_WORTH_OFFERING);
  const unforced = placements.length === 0 ? 'largest' : share >= SHARE_NEEDED ? 'smallest' : 'best';
  return {
    outline: loop,
    share,
    ...inner,
    why: wanted === undefined ? unforced : 'chosen',
    others: others.slice(0, MAX_OTHERS),
  };
}

function rankCandidates(sources: readonly OutlineSource[], placements: readonly Point[]): OutlineCandidate[] {
  const large = sources
    .flatMap(({ loops, declared }) => loops.map((loop) => ({ loop, declared })))
    .filter(({ loop }) => loop.areaMm2 >= MIN_OUTLINE_AREA_MM2)
    .sort((a, b) => b.loop.areaMm2 - a.loop.areaMm2)
    .slice(0, MAX_CANDIDATES);
  const candidates = large.map((one) => ({ ...one, share: shareInside(one.loop, placements) }));
  const fits = (candidate: { share: number }) => candidate.share >= SHARE_NEEDED;
  const byArea = placements.length === 0 ? -1 : 1;
  candidates.sort((a, b) => {
    if (fits(a) !== fits(b)) return fits(a) ? -1 : 1;
    if (fits(a)) {
      if (a.declared !== b.declared) return a.declared ? -1 : 1;
      return byArea * (a.loop.areaMm2 - b.loop.areaMm2);
    }
    return b.share - a.share || a.loop.areaMm2 - b.loop.areaMm2;
  });
  return candidates.map((candidate, rank) => ({ ...candidate, rank }));
}

/** Share of the points inside the loop; 1 when there are none. */
export function shareInside(loop: Loop, points: readonly Point[]): number {
  if (points.length === 0) return 1;
  let inside = 0;
  for (const point of points) if (boxHolds(loop.box, point) && polygonHolds(loop.polygon, point)) inside++;
  return inside / points.length;
}

function boxHolds(box: Box, { x, y }: Point): boolean {
  return x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY;
}

/** Loops inside the outline. In a layer that does not call itself the profile only loops of the outline's own pen and without parts are cutouts. */
function innerLoops(outline: Loop, loops: readonly Loop[], placements: readonly Point[], declared: boolean) {
  let doubleMm = 0;
  const inside = loops
    .filter((loop) => loop !== outline && loop.areaMm2 < outline.areaMm2 && liesInside(loop, outline))
    .sort((a, b) => b.areaMm2 - a.areaMm2)
    .slice(0, MAX_INNER);
  const cutouts: Loop[] = [];
  for (const loop of inside) {
    const pen = penBetween(outline, loop);
    doubleMm = Math.max(doubleMm, pen);
    if (pen > 0) continue;
    const samePen = declared || Math.abs(loop.penMm - outline.penMm) < 1e-4;
    const empty = !placements.some((point) => boxHolds(loop.box, point) && polygonHolds(loop.polygon, point));
    if (samePen && empty && cutouts.length < MAX_CUTOUTS && !cutouts.some((other) => liesInside(loop, other)))
      cutouts.push(loop);
  }
  return { cutouts, doubleMm, leftOut: inside.length - cutouts.length };
}

const WIDEST_PEN_MM = 1;

/** Some programs draw a line as the two edges of its pen: the width between them when all four sides lie as far apart, else 0. */
function penBetween({ box: outer }: Loop, { box: inner }: Loop): number {
  const gaps = [inner.minX - outer.minX, inner.minY - outer.minY, outer.maxX - inner.maxX, outer.maxY - inner.maxY];
  const [least, most] = [Math.min(...gaps), Math.max(...gaps)];
  return least > 0 && most <= WIDEST_PEN_MM && most - least <= 0.02 ? most : 0;
}

function liesInside(inner: Loop, outer: Loop): boolean {
  const { box } = inner;
  if (box.minX < outer.box.minX || box.maxX > outer.box.maxX) return false;
  if (box.minY < outer.box.minY || box.maxY > outer.box.maxY) return false;
  return inner.polygon.every((point) => polygonHolds(outer.polygon, point) || onBorder(outer.box, point));
}

function onBorder(box: Box, { x, y }: Point): boolean {
  return x === box.minX || x === box.maxX || y === box.minY || y === box.maxY;
}
