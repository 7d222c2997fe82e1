import { at, both, count, keepPeak, num, put } from './access';
import { BEFORE, CAPACITY, CELLS, DIAGONAL, PEAK, RATE, TAU, TEMPERATURE, THROUGH } from './slots';

/** Solves both faces of every cell and moves their temperatures on; folds the peaks in (`numerics/cell-solve.ts`). */
export function solveCells(): void {
  const temperature = at(TEMPERATURE);
  const before = at(BEFORE);
  const peak = at(PEAK);
  const rhs = at(RATE);
  const diagonal = at(DIAGONAL);
  const layer = count(CELLS) << 3;
  const tau = both(TAU);
  const capacity = both(CAPACITY);
  const link = f64x2.splat(num(TAU) * num(THROUGH));
  const own = f64x2.add(capacity, link);
  const linkSquared = f64x2.mul(link, link);
  for (let o: usize = 0; o < layer; o += 16) {
    const alone = layer - o < 16;
    const under = o + layer;
    const a = f64x2.add(own, f64x2.mul(tau, v128.load(diagonal + o)));
    const d = f64x2.add(own, f64x2.mul(tau, v128.load(diagonal + under)));
    const scale = f64x2.div(capacity, f64x2.sub(f64x2.mul(a, d), linkSquared));
    const upperRhs = v128.load(rhs + o);
    const lowerRhs = v128.load(rhs + under);
    const upperOld = v128.load(temperature + o);
    const lowerOld = v128.load(temperature + under);
    const upperPush = f64x2.add(f64x2.mul(d, upperRhs), f64x2.mul(link, lowerRhs));
    const lowerPush = f64x2.add(f64x2.mul(a, lowerRhs), f64x2.mul(link, upperRhs));
    const upperNew = f64x2.add(upperOld, f64x2.mul(upperPush, scale));
    const lowerNew = f64x2.add(lowerOld, f64x2.mul(lowerPush, scale));
    put(before + o, upperOld, alone);
    put(before + under, lowerOld, alone);
    put(temperature + o, upperNew, alone);
    put(temperature + under, lowerNew, alone);
    keepPeak(peak + o, upperNew, alone);
    keepPeak(peak + under, lowerNew, alone);
  }
}
