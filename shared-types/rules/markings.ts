import { chipByInch } from '../library/packages/chip-sizes.ts';
import { E_SERIES } from './e-series.ts';
import { letterCode, POINT_LETTERS, scaled, TOLERANCE_LETTERS } from './resistance.ts';

export type MarkingSystem = 'link' | 'three-digit' | 'four-digit' | 'eia-96' | 'letter-code';

/** One way to read what is printed on a chip resistor. */
export type MarkingReading = {
  system: MarkingSystem;
  ohms: number;
  /** Per cent where the marking says it or its system goes with one; null: not said. */
  tolerancePercent: number | null;
};

/**
 * Multiplier letters of EIA-96 as powers of ten. Published tables (getelectronics.net, 3bmdesign.com and two public
 * decoders agree): Z 0.001, Y or R 0.01, X or S 0.1, A 1, B or H 10, C 100, D 1k, E 10k, F 100k.
 */
export const EIA96_MULTIPLIERS: Record<string, number> = {
  Z: -3,
  Y: -2,
  R: -2,
  X: -1,
  S: -1,
  A: 0,
  B: 1,
  H: 1,
  C: 2,
  D: 3,
  E: 4,
  F: 5,
};

/** '0', '00', '000', '0000', '0R', '0R0', 'R000': a link of no resistance. */
const LINK = /^(?:0{1,4}|0R0{0,2}|R0{2,3}|00R0)$/;

function tolerated(text: string): { code: string; percent: number | null } {
  const match = /^(\d{3,4})([A-Z])$/.exec(text);
  const percent = match ? TOLERANCE_LETTERS[match[2]] : undefined;
  return match && percent !== undefined ? { code: match[1], percent } : { code: text, percent: null };
}

/** ab x 10^c, and abc x 10^d; the first digit is never 0. A tolerance letter may follow ('103J'). */
function digits(text: string): MarkingReading[] {
  const { code, percent } = tolerated(text);
  if (!/^[1-9]\d{2,3}$/.test(code)) return [];
  const ohms = scaled(code.slice(0, -1), Number(code.slice(-1)));
  return code.length === 3
    ? [{ system: 'three-digit', ohms, tolerancePercent: percent }]
    : [{ system: 'four-digit', ohms, tolerancePercent: percent ?? 1 }];
}

/** Two digits 01 to 96, the place in E96, and a multiplier letter. */
function eia96(text: string): MarkingReading[] {
  const match = /^(\d\d)([A-Z])$/.exec(text);
  const power = match ? EIA96_MULTIPLIERS[match[2]] : undefined;
  const value = match ? E_SERIES.E96[Number(match[1]) - 1] : undefined;
  if (power === undefined || value === undefined) return [];
  return [{ system: 'eia-96', ohms: scaled(String(value), power), tolerancePercent: 1 }];
}

/** Letter in the place of the point. A small 'm' is read both ways: print on a chip has no case that one can trust. */
function letters(text: string, original: string): MarkingReading[] {
  const coded = letterCode(text);
  if (!coded) return [];
  const reading = { system: 'letter-code', ohms: coded.ohms, tolerancePercent: coded.tolerancePercent } as const;
  if (!/m/.test(original) || !/^\d*m\d*/.test(original)) return [reading];
  const point = /^(\d*)m(\d*)/.exec(original);
  const milli = scaled(`${point?.[1] || '0'}.${point?.[2] || '0'}`, POINT_LETTERS.L);
  return [reading, { ...reading, ohms: milli }];
}

/**
 * All ways to read a marking, the digits first; none for text that is no resistor marking. More than one reading means
 * that only a measurement out of circuit tells: '10R' is 10 ohm by IEC 60062 and 1.24 ohm by EIA-96.
 */
export function readMarking(marking: string): MarkingReading[] {
  const original = marking.trim().replace(/\s+/g, '');
  const text = original.toUpperCase();
  if (LINK.test(text)) return [{ system: 'link', ohms: 0, tolerancePercent: null }];
  return [...digits(text), ...eia96(text), ...letters(text, original)];
}

/** Whether a marking fits the value that belongs there. 'ambiguous': one of its readings does, another does not. */
export function markingFits(marking: string, ohms: number): 'fits' | 'ambiguous' | 'differs' | 'not-readable' {
  const readings = readMarking(marking);
  if (readings.length === 0) return 'not-readable';
  const fitting = readings.filter((reading) => Math.abs(reading.ohms - ohms) <= 1e-6 * Math.max(reading.ohms, ohms));
  if (fitting.length === 0) return 'differs';
  return fitting.length === readings.length ? 'fits' : 'ambiguous';
}

/** Largest chip that mostly carries no marking (common practice, no source): 0402, 1.0 x 0.5 mm. */
const LARGEST_UNMARKED_MM = chipByInch('0402')?.lengthMm ?? 1;

/** True for chips of 0402 and smaller: what stands there is measured out of circuit, not read. */
export const mostlyUnmarked = (lengthMm: number, widthMm: number): boolean =>
  Math.max(lengthMm, widthMm) <= LARGEST_UNMARKED_MM + 0.05;
