import type { StrapGroupOf, StrapWindow } from '../../straps.ts';
import { parseResistance } from '../resistance.ts';

type Divider = StrapGroupOf<'divider'>;

/** A resistor of the divider: null: left empty. */
export type DividerArm = { ohms: number; tolerancePercent: number } | null;

/** Voltage at the converter: as calculated, and the lowest and highest that tolerances, supply and converter allow; V. */
export type DividerSpan = { lowV: number; nominalV: number; highV: number };

/** Tolerance where nobody told one, per cent: that of E24 (IEC 60063), cautious for chips sold today. */
export const ASSUMED_TOLERANCE_PERCENT = 5;

const arm = (lowest: number, at: DividerArm): number =>
  at ? at.ohms * (1 + (lowest * at.tolerancePercent) / 100) : Infinity;

/** Share of the supply between the arms; NaN: both empty or both 0 ohm, so that nothing defines it. */
function share(top: number, bottom: number): number {
  if (top === Infinity && bottom === Infinity) return Number.NaN;
  if (bottom === Infinity) return 1;
  if (top === Infinity) return 0;
  return bottom / (top + bottom);
}

/**
 * Worst-case voltage: each arm at either end of its tolerance, the supply too unless the converter measures against it,
 * the converter's error on top. The share rises with the lower arm and falls with the upper, so the corners are the
 * extremes. Null: nothing defines the voltage (both empty, or both 0 ohm).
 */
export function dividerSpan(group: Divider, top: DividerArm, bottom: DividerArm): DividerSpan | null {
  const supply = (sign: number) =>
    group.supplyV * (group.ratiometric ? 1 : 1 + (sign * group.supplyTolerancePercent) / 100);
  const errorV = group.converterErrorMv / 1000;
  const nominalV = group.supplyV * share(arm(0, top), arm(0, bottom));
  if (!Number.isFinite(nominalV)) return null;
  return {
    lowV: Math.max(0, supply(-1) * share(arm(1, top), arm(-1, bottom)) - errorV),
    nominalV,
    highV: supply(1) * share(arm(-1, top), arm(1, bottom)) + errorV,
  };
}

/** The arm that a setting asks for at a position. */
export function armOf(group: Divider, refdes: string, value: string | null): DividerArm {
  if (value === null) return null;
  const written = parseResistance(value);
  if (!written) return null;
  const position = group.positions.find((one) => one.refdes === refdes);
  const tolerancePercent = written.tolerancePercent ?? position?.tolerancePercent ?? ASSUMED_TOLERANCE_PERCENT;
  return { ohms: written.ohms, tolerancePercent };
}

/** Codes that a span can be read as. `alone`: the one window that holds the whole span; null: none does. */
export type CodeReading = { codes: string[]; alone: StrapWindow | null };

/**
 * Which windows a span reaches. A voltage on the edge between two windows may be read as either, so a span that touches
 * an inner edge counts as reaching over it. Below a lowest window that begins at 0 V, and above a highest that ends at
 * the supply or over it, the converter stays at its last code.
 */
export function codesOf(group: Divider, { lowV, highV }: DividerSpan): CodeReading {
  const windows = [...group.windows].sort((a, b) => a.fromV - b.fromV);
  const bounds = windows.map((window, index) => ({
    window,
    from: index === 0 && window.fromV === 0 ? -Infinity : window.fromV,
    to: index === windows.length - 1 && window.toV >= group.supplyV ? Infinity : window.toV,
  }));
  const reached = bounds.filter(({ from, to }) => lowV <= to && highV >= from);
  const holding = bounds.find(({ from, to }) => lowV > from && highV < to);
  return {
    codes: [...new Set(reached.map(({ window }) => window.code))],
    alone: holding && reached.every(({ window }) => window.code === holding.window.code) ? holding.window : null,
  };
}
