import { at, both, count, num, pair, put } from './access';
import {
  BEFORE,
  CAPACITY,
  COUNT,
  DIAGONAL,
  DT,
  ENTRY_BEFORE,
  ENTRY_CAPACITY,
  ENTRY_RHS,
  ENTRY_TEMPERATURE,
  FACE,
  INVERSE,
  JOINT,
  METAL_END,
  METAL_START,
  OUTER,
  OUTER_SOURCE,
  RATE,
  TAU,
  TEMPERATURE,
} from './slots';

/** Adds to the numbers at two addresses, which may be the same. */
@inline
function addAt(first: usize, second: usize, value: v128, alone: bool): void {
  store<f64>(first, load<f64>(first) + f64x2.extract_lane(value, 0));
  if (!alone) store<f64>(second, load<f64>(second) + f64x2.extract_lane(value, 1));
}

function takeInRange(from: usize, to: usize): void {
  const faces = at(FACE);
  const capacity = at(ENTRY_CAPACITY);
  const joint = at(JOINT);
  const outer = at(OUTER);
  const outerSource = at(OUTER_SOURCE);
  const temperature = at(ENTRY_TEMPERATURE);
  const inverse = at(INVERSE);
  const rhs = at(ENTRY_RHS);
  const faceTemperature = at(TEMPERATURE);
  const rate = at(RATE);
  const diagonal = at(DIAGONAL);
  const dt = both(DT);
  const tau = both(TAU);
  const one = f64x2.splat(1);
  const end = to << 3;
  for (let o = from << 3; o < end; o += 16) {
    const alone = end - o < 16;
    const a = <usize>load<u32>(faces + (o >> 1)) << 3;
    const b = <usize>load<u32>(faces + (o >> 1), 4) << 3;
    const here = v128.load(temperature + o);
    const g = v128.load(joint + o);
    const film = v128.load(outer + o);
    const flow = f64x2.mul(g, f64x2.sub(pair(faceTemperature + a, faceTemperature + b), here));
    const sum = f64x2.add(v128.load(capacity + o), f64x2.mul(tau, f64x2.add(g, film)));
    const pivot = f64x2.div(one, sum);
    const gain = f64x2.sub(f64x2.add(flow, v128.load(outerSource + o)), f64x2.mul(film, here));
    put(inverse + o, pivot, alone);
    put(rhs + o, f64x2.mul(dt, gain), alone);
    addAt(rate + a, rate + b, f64x2.neg(flow), alone);
    const kept = f64x2.mul(f64x2.mul(f64x2.mul(tau, g), g), pivot);
    addAt(diagonal + a, diagonal + b, f64x2.sub(g, kept), alone);
  }
}

/** Adds the joints of plain entries to their faces; keeps each entry's own right-hand side (`numerics/cell-solve.ts`). */
export function takeIn(): void {
  takeInRange(0, count(METAL_START));
  takeInRange(count(METAL_END), count(COUNT));
}

function feedRange(from: usize, to: usize): void {
  const faces = at(FACE);
  const joint = at(JOINT);
  const inverse = at(INVERSE);
  const rhs = at(ENTRY_RHS);
  const rate = at(RATE);
  const scale = f64x2.splat(num(TAU) / num(CAPACITY));
  const end = to << 3;
  for (let o = from << 3; o < end; o += 16) {
    const a = <usize>load<u32>(faces + (o >> 1)) << 3;
    const b = <usize>load<u32>(faces + (o >> 1), 4) << 3;
    const pushed = f64x2.mul(f64x2.mul(scale, v128.load(joint + o)), v128.load(inverse + o));
    addAt(rate + a, rate + b, f64x2.mul(pushed, v128.load(rhs + o)), end - o < 16);
  }
}

/** Adds what the eliminated entries push into their faces. */
export function feedFaces(): void {
  feedRange(0, count(METAL_START));
  feedRange(count(METAL_END), count(COUNT));
}

function giveBackRange(from: usize, to: usize): void {
  const faces = at(FACE);
  const joint = at(JOINT);
  const inverse = at(INVERSE);
  const rhs = at(ENTRY_RHS);
  const temperature = at(ENTRY_TEMPERATURE);
  const before = at(ENTRY_BEFORE);
  const faceTemperature = at(TEMPERATURE);
  const faceBefore = at(BEFORE);
  const tau = both(TAU);
  const end = to << 3;
  for (let o = from << 3; o < end; o += 16) {
    const alone = end - o < 16;
    const a = <usize>load<u32>(faces + (o >> 1)) << 3;
    const b = <usize>load<u32>(faces + (o >> 1), 4) << 3;
    const change = f64x2.sub(
      pair(faceTemperature + a, faceTemperature + b),
      pair(faceBefore + a, faceBefore + b),
    );
    const here = v128.load(temperature + o);
    const push = f64x2.add(v128.load(rhs + o), f64x2.mul(f64x2.mul(tau, v128.load(joint + o)), change));
    put(before + o, here, alone);
    put(temperature + o, f64x2.add(here, f64x2.mul(v128.load(inverse + o), push)), alone);
  }
}

/** Moves the plain entries on, now that the change of their faces is known. */
export function giveBack(): void {
  giveBackRange(0, count(METAL_START));
  giveBackRange(count(METAL_END), count(COUNT));
}
