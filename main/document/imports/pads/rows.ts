import { type Box, boxOfDiscs, type Disc, type Point } from '../plane.ts';
import { type Pose, toOwnAxes } from './extents.ts';

/** Two rows of leads: which way they run, how long a body they suggest, and the gap between them. */
export interface PinRows {
  readonly along: 'x' | 'y';
  /** Span of the longer row and one pitch: about the body's length along the rows, mm. */
  readonly alongMm: number;
  /** Gap between the inner pad edges: about the body's size across, mm. */
  readonly acrossMm: number;
}

const SAME_LEVEL_MM = 0.1;
const CENTRAL_SHARE = 0.15;

/** Boxes of pads in a part's own axes. */
export function ownBoxes(pads: readonly { readonly hull: readonly Disc[] }[], pose: Pose): Box[] {
  return pads.map(({ hull }) => boxOfDiscs(hull.map((disc) => ({ ...toOwnAxes(pose, disc), r: disc.r }))));
}

/** The rows of a part whose leads stand in two of them, or null. A pad in the middle (heat pad) does not count. */
export function pinRows(boxes: readonly Box[]): PinRows | null {
  const spots = withoutCentral(boxes);
  if (spots.length < 3) return null;
  const [columns, rows] = [levels(spots.map(({ x }) => x)), levels(spots.map(({ y }) => y))];
  if (columns.length === 2 && rows.length > 2) {
    const acrossMm = gapBetween(spots.map(({ box }) => [box.minX, box.maxX]));
    return { along: 'y', alongMm: spanAndPitch(rows), acrossMm };
  }
  if (rows.length === 2 && columns.length > 2) {
    const acrossMm = gapBetween(spots.map(({ box }) => [box.minY, box.maxY]));
    return { along: 'x', alongMm: spanAndPitch(columns), acrossMm };
  }
  return null;
}

const PITCH_MM = 0.8;
const PAD_LENGTH_MM = 1.5;
/** A first pin so near an axis stands alone opposite a row. */
const ALONE_MM = 0.2;
const CLEAR_MM = 0.3;

/** Rows as pin 1 alone suggests them: the way round in which the body fits better; pitch and pad length are usual ones. */
export function rowsByPin1(pin1: Point, { lengthMm, widthMm }: Sides): PinRows {
  const reach = { x: 2 * Math.abs(pin1.x), y: 2 * Math.abs(pin1.y) };
  const rows = (along: 'x' | 'y', across: 'x' | 'y'): PinRows => ({
    along,
    alongMm: reach[along] + PITCH_MM,
    acrossMm: reach[across] - PAD_LENGTH_MM,
  });
  const misfit = ({ alongMm, acrossMm }: PinRows) =>
    Math.min(
      Math.abs(lengthMm - alongMm) + Math.abs(widthMm - acrossMm),
      Math.abs(widthMm - alongMm) + Math.abs(lengthMm - acrossMm),
    );
  const [upright, level] = [rows('y', 'x'), rows('x', 'y')];
  const sides = { alongMm: Math.max(lengthMm, widthMm), acrossMm: Math.min(lengthMm, widthMm) };
  if (Math.abs(pin1.x) < ALONE_MM) return { along: 'x', ...sides };
  if (Math.abs(pin1.y) < ALONE_MM) return { along: 'y', ...sides };
  const better = misfit(upright) - misfit(level);
  // Nothing to choose between: rows lie further apart than the leads of a three-lead part.
  if (Math.abs(better) < CLEAR_MM) return reach.x > reach.y ? { along: 'y', ...sides } : { along: 'x', ...sides };
  return better > 0 ? level : upright;
}

interface Spot {
  readonly x: number;
  readonly y: number;
  readonly box: Box;
}

function withoutCentral(boxes: readonly Box[]): Spot[] {
  const spots = boxes.map((box) => ({ x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2, box }));
  const reach = Math.max(...spots.map(({ x, y }) => Math.hypot(x, y)));
  return spots.filter(({ x, y }) => Math.hypot(x, y) > CENTRAL_SHARE * reach);
}

function levels(values: readonly number[]): number[] {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted.filter((value, index) => index === 0 || value - sorted[index - 1] > SAME_LEVEL_MM);
}

function spanAndPitch(sorted: readonly number[]): number {
  const gaps = sorted.slice(1).map((value, index) => value - sorted[index]);
  return sorted[sorted.length - 1] - sorted[0] + Math.min(...gaps);
}

function gapBetween(ranges: readonly (readonly number[])[]): number {
  const low = ranges.filter(([from, to]) => from + to < 0).map(([, to]) => to);
  const high = ranges.filter(([from, to]) => from + to >= 0).map(([from]) => from);
  return Math.min(...high) - Math.max(...low);
}

export type Sides = { readonly lengthMm: number; readonly widthMm: number };

/** True when the body fits its rows of leads better the other way round. */
export function fitsTurned({ lengthMm, widthMm }: Sides, { along, alongMm, acrossMm }: PinRows): boolean {
  const misfit = (alongSide: number, acrossSide: number) =>
    Math.abs(alongSide - alongMm) + Math.abs(acrossSide - acrossMm);
  const [now, turned] =
    along === 'x'
      ? [misfit(lengthMm, widthMm), misfit(widthMm, lengthMm)]
      : [misfit(widthMm, lengthMm), misfit(lengthMm, widthMm)];
  return turned < now - 0.01;
}
