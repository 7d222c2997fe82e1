/** The tables of the idle film, read for two temperatures at once; rows are 2 K apart (`idle-film.ts`). */

const ROWS_PER_KELVIN: f64 = 0.5;
/** 2^52: a whole number added to it stands in the low bits of the sum. */
const WHOLE_IN_LOW_BITS: f64 = 4503599627370496.0;

/** Place in the tables, in rows, of now x T(n) + earlier x T(n-1), clamped to the tables' ends. */
@inline
export function placeOf(here: v128, before: v128, now: v128, earlier: v128, first: v128, last: v128): v128 {
  const ahead = f64x2.add(f64x2.mul(now, here), f64x2.mul(earlier, before));
  const clamped = f64x2.pmin(f64x2.pmax(ahead, first), last);
  return f64x2.mul(f64x2.sub(clamped, first), f64x2.splat(ROWS_PER_KELVIN));
}

/** Whole rows as whole numbers: their 32-bit lanes 0 and 2. */
@inline
export function rowBits(whole: v128): v128 {
  return f64x2.add(whole, f64x2.splat(WHOLE_IN_LOW_BITS));
}

/** The table between its rows. */
@inline
export function blend(table: usize, bits: v128, part: v128): v128 {
  const first = v128.load(table + (<usize>i32x4.extract_lane(bits, 0) << 3));
  const second = v128.load(table + (<usize>i32x4.extract_lane(bits, 2) << 3));
  const low = v128.shuffle<f64>(first, second, 0, 2);
  const high = v128.shuffle<f64>(first, second, 1, 3);
  return f64x2.add(low, f64x2.mul(part, f64x2.sub(high, low)));
}

/** All bits of a lane set where the zone's byte is 1; `bytes` are two of them, little end first. */
@inline
export function zoneMask(masks: usize, bytes: u32): v128 {
  return v128.load(masks + ((bytes & 1) << 4) + ((bytes & 256) >> 3));
}
