import { type Box, boxHeight, boxOfDiscs, boxWidth, type Disc, type Point, turnPoint } from '../plane.ts';
import type { Pad } from './collect.ts';
import { hullAreaMm2, pinCentres } from './collect.ts';

export interface Pose {
  readonly x: number;
  readonly y: number;
  readonly side: 'top' | 'bottom';
  readonly turn: number;
}

/** A board point in the part's own axes: moved, turned back, and on the bottom unmirrored (y to -y). */
export function toOwnAxes(pose: Pose, point: Point): Point {
  const back = turnPoint({ x: point.x - pose.x, y: point.y - pose.y }, -pose.turn);
  return pose.side === 'bottom' ? { x: back.x, y: -back.y } : back;
}

/** Box of the pads in the part's own axes, mm. */
export function ownPadsBox(pads: readonly Pad[], pose: Pose): Box {
  const discs = pads.flatMap(({ hull }) => hull.map((disc): Disc => ({ ...toOwnAxes(pose, disc), r: disc.r })));
  return boxOfDiscs(discs);
}

export interface PadGrid {
  readonly pitchMm: number;
  readonly columns: number;
  readonly rows: number;
}

const MIN_ARRAY_PADS = 9;

/**
 * The grid of an array part: at least three rows and columns on one pitch, filled too well for leads round the edge.
 * Null for anything else. `pins` are middles of pads in own axes.
 */
export function arrayGrid(pins: readonly Point[]): PadGrid | null {
  if (pins.length < MIN_ARRAY_PADS) return null;
  const columns = levels(pins.map(({ x }) => x));
  const rows = levels(pins.map(({ y }) => y));
  if (columns.length < 3 || rows.length < 3) return null;
  const pitchX = evenPitch(columns);
  const pitchY = evenPitch(rows);
  if (pitchX === null || pitchY === null || Math.abs(pitchX - pitchY) > 0.02) return null;
  const across = Math.round((columns[columns.length - 1] - columns[0]) / pitchX) + 1;
  const up = Math.round((rows[rows.length - 1] - rows[0]) / pitchY) + 1;
  const edge = 2 * (across + up) - 4;
  const filled = pins.length / (across * up);
  if (filled < 0.35 || (pins.length <= edge && Math.min(across, up) > 3)) return null;
  return { pitchMm: Math.round(pitchX * 1e4) / 1e4, columns: across, rows: up };
}

const SAME_LEVEL_MM = 0.02;

function levels(values: readonly number[]): number[] {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted.filter((value, index) => index === 0 || value - sorted[index - 1] > SAME_LEVEL_MM);
}

/** The smallest gap, if all gaps are whole multiples of it. */
function evenPitch(sorted: readonly number[]): number | null {
  const gaps = sorted.slice(1).map((value, index) => value - sorted[index]);
  const pitch = Math.min(...gaps);
  if (!(pitch > 0.2)) return null;
  return gaps.every((gap) => Math.abs(gap / pitch - Math.round(gap / pitch)) < 0.08) ? pitch : null;
}

export interface PartLand {
  readonly padsBox: Box;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly pinCount: number;
  readonly pin1: Point | null;
  readonly padAreaMm2: number | null;
  readonly grid: PadGrid | null;
  readonly through: boolean;
}

/** Names of the first pin; letters only where there are two pins (cathode and anode, collector...). */
export const FIRST_PINS = ['1', 'A1'];
export const FIRST_OF_TWO = ['K', 'C', '+', 'P'];

/** What the pads say of a part: extents, pins, pin 1, area of the surface pads (none when pins go through), array grid. */
export function describeLand(pads: readonly Pad[], pose: Pose): PartLand {
  const box = ownPadsBox(pads, pose);
  const centres = pinCentres(pads);
  const names = centres.size === 2 ? [...FIRST_PINS, ...FIRST_OF_TWO] : FIRST_PINS;
  const first = names.map((pin) => centres.get(pin)).find((centre) => centre !== undefined);
  const through = pads.some((pad) => pad.through);
  const own = [...centres.values()].map((centre) => toOwnAxes(pose, centre));
  const area = through ? null : pads.reduce((sum, { hull }) => sum + hullAreaMm2(hull), 0);
  return {
    padsBox: box,
    lengthMm: boxWidth(box),
    widthMm: boxHeight(box),
    pinCount: centres.size,
    pin1: first ? toOwnAxes(pose, first) : null,
    padAreaMm2: area !== null && area > 0 ? area : null,
    grid: through ? null : arrayGrid(own),
    through,
  };
}
