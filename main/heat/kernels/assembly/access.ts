import { ADDRESSES_AT, NUMBERS_AT } from './slots';

/** Address of an array. */
@inline
export function at(slot: i32): usize {
  return load<u32>(ADDRESSES_AT + (slot << 2));
}

@inline
export function num(slot: i32): f64 {
  return load<f64>(NUMBERS_AT + (slot << 3));
}

@inline
export function set(slot: i32, value: f64): void {
  store<f64>(NUMBERS_AT + (slot << 3), value);
}

/** A whole number of the table. */
@inline
export function count(slot: i32): usize {
  return <usize>num(slot);
}

/** One number for both lanes. */
@inline
export function both(slot: i32): v128 {
  return f64x2.splat(num(slot));
}

/** Stores two neighbours of an array, or the first of them alone. */
@inline
export function put(address: usize, value: v128, alone: bool): void {
  if (alone) v128.store64_lane(address, value, 0);
  else v128.store(address, value);
}

/** The numbers at two addresses. */
@inline
export function pair(first: usize, second: usize): v128 {
  return v128.load64_lane(second, v128.load64_zero(first), 1);
}

/** Keeps two peaks up with two values. */
@inline
export function keepPeak(address: usize, value: v128, alone: bool): void {
  // pmax(a, b) is a < b ? b : a.
  put(address, f64x2.pmax(v128.load(address), value), alone);
}
