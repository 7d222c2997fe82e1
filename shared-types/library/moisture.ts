import type { Source } from './library-types.ts';
import { found, memory } from './sources.ts';

/** Moisture sensitivity levels of J-STD-020, from the least sensitive on. */
export const MOISTURE_LEVELS = ['1', '2', '2a', '3', '4', '5', '5a', '6'] as const;
export type MoistureLevel = (typeof MOISTURE_LEVELS)[number];

/**
 * Floor life out of the dry bag, h (J-STD-020 Table 5-1, J-STD-033 Table 7-1; at most 30 C and 60 % RH). Null: no end
 * (level 1). Level 6 is baked before every use, then the time on its label counts: 0 here.
 */
const FLOOR_LIFE_H: Record<MoistureLevel, number | null> = {
  '1': null,
  '2': 365 * 24,
  '2a': 4 * 7 * 24,
  '3': 168,
  '4': 72,
  '5': 48,
  '5a': 24,
  '6': 0,
};
export const FLOOR_LIFE_SOURCE = found('Floor life: J-STD-020 Table 5-1, J-STD-033 Table 7-1 (30 °C, 60 % RH)');
export const floorLifeH = (level: MoistureLevel): number | null => FLOOR_LIFE_H[level];

/** Hours of a bake at each of the three usual temperatures. */
export type Bake = { at125H: number; at90H: number; at40H: number; source: Source };

const DAY = 24;
type Hours = readonly [at125: number, at90: number, at40: number];
/** Floor life exceeded by more than 72 h (or not known), and by at most 72 h. */
type Row = { saturated: Hours; short: Hours; read: boolean };
const row = (saturated: Hours, short: Hours, read: boolean): Row => ({ saturated, short, read });

/** User bake of J-STD-033 by body thickness; `read`: in a public copy of the table, else from memory. */
const BAKES: { upToMm: number; rows: Partial<Record<MoistureLevel, Row>> }[] = [
  {
    upToMm: 1.4,
    rows: {
      '2': row([5, 17, 8 * DAY], [3, 11, 5 * DAY], false),
      '2a': row([7, 23, 9 * DAY], [5, 13, 7 * DAY], false),
      '3': row([9, 33, 13 * DAY], [7, 23, 9 * DAY], true),
      '4': row([11, 37, 15 * DAY], [7, 23, 9 * DAY], true),
      '5': row([12, 41, 17 * DAY], [7, 24, 10 * DAY], true),
      '5a': row([16, 54, 22 * DAY], [10, 24, 10 * DAY], true),
    },
  },
  {
    upToMm: 2,
    rows: {
      '2': row([18, 63, 25 * DAY], [15, 2 * DAY, 20 * DAY], false),
      '2a': row([21, 3 * DAY, 29 * DAY], [16, 2 * DAY, 22 * DAY], true),
      '3': row([27, 4 * DAY, 37 * DAY], [17, 2 * DAY, 23 * DAY], true),
      '4': row([34, 5 * DAY, 47 * DAY], [20, 3 * DAY, 28 * DAY], true),
      '5': row([40, 6 * DAY, 57 * DAY], [25, 4 * DAY, 35 * DAY], true),
      '5a': row([48, 8 * DAY, 79 * DAY], [40, 6 * DAY, 56 * DAY], false),
    },
  },
];
/** Thicker bodies, all levels: the longest figure of a range is taken. */
const THICK = row([48, 10 * DAY, 79 * DAY], [48, 10 * DAY, 67 * DAY], false);
const THICKEST_MM = 4.5;
/** Arrays with a side above this, and any stacked die, take 96 h at 125 C. */
const LARGE_ARRAY = { sideMm: 17, at125H: 96 };

const READ = found('User bake: J-STD-033 table, as printed in a public copy');
const REMEMBERED = memory('User bake: J-STD-033 table');

/**
 * How long a part is baked before it is soldered. Thickness of the body without balls or leads, mm; `longOver`: its floor
 * life ended more than 72 h ago, or nobody knows. Null where the standard's table says nothing: level 1 (no bake), level 6
 * (its label counts) and bodies above 4.5 mm.
 */
export function bakeOf(
  level: MoistureLevel,
  body: { thicknessMm: number; lengthMm: number; widthMm: number; array: boolean },
  longOver: boolean,
): Bake | null {
  if (level === '1' || level === '6' || body.thicknessMm > THICKEST_MM) return null;
  const found = BAKES.find((one) => body.thicknessMm <= one.upToMm)?.rows[level] ?? THICK;
  const [at125H, at90H, at40H] = longOver ? found.saturated : found.short;
  const large = body.array && (body.lengthMm > LARGE_ARRAY.sideMm || body.widthMm > LARGE_ARRAY.sideMm);
  return {
    at125H: large ? LARGE_ARRAY.at125H : at125H,
    at90H,
    at40H,
    source: found.read && !large ? READ : REMEMBERED,
  };
}

/** Temperatures of the standard's bakes, C, the quickest first. */
export const BAKE_TEMPERATURES_C = [125, 90, 40] as const;
