import type { Side } from '../geometry.ts';
import type { PhotoFitKind } from '../photo.ts';
import { leftOver, predictionSpread, squaresOf } from './least-squares.ts';
import { modelOf, normalise, solveModel } from './photo-fit.ts';
import type { PhotoModel, PlacePair } from './photo-models.ts';
import { LEAST_PAIRS, spreadRefusal } from './photo-spread.ts';
import { divisorAt } from './plane-maps.ts';

/** A pair that does not go with the others. */
export type Suspect = {
  index: number;
  /** Distance from where the trusted pairs put it, mm. */
  mm: number;
  /** How many times further off than the trusted pairs' own scatter lets expect. */
  times: number;
};

/** Nobody clicks better than this: an exact fit of the others accuses nobody by less, mm. */
const LEAST_SCATTER_MM = 0.02;
/** Placed parts and leads that stand up lie this far off by themselves (met on outside photos: 0.14 mm); a wrong part is further off. */
const LEAST_OFF_MM = 0.2;
/** Chance at which an honest set of pairs is accused at all. */
const CHANCE = 0.01;
const MOST_TRIALS = 400;
/** Spare pairs needed to tell which one is bad: with one spare any of them could be. */
const SPARE_NEEDED = 2;

/**
 * Pairs that were clicked on the wrong place, also several at once, such as two parts taken for each other. Starts from the set of pairs that
 * the least median of squares trusts (Rousseeuw, 'Least median of squares regression', JASA 79, 1984), takes one pair after the other in
 * as long as it lies where the trusted ones put it (forward search after Hadi and Simonoff, JASA 88, 1993), and accuses the rest.
 * 'Lies where' is an F test on the deletion residual with 2 and v degrees of freedom, whose chance is (1 + 2 F / v)^(-v / 2), shared out over
 * the pairs. Empty when fewer than two pairs are to spare. Sources from memory; the false alarm rate is tested.
 */
export function suspectPairs(pairs: readonly PlacePair[], side: Side, kind: PhotoFitKind): Suspect[] {
  if (pairs.length < LEAST_PAIRS[kind] + SPARE_NEEDED || spreadRefusal(pairs, kind)) return [];
  const model = modelOf(kind, side);
  const normal = normalise(pairs);
  const floor = LEAST_SCATTER_MM / normal.mmPerUnit;
  const trusted = trustedStart(model, normal.pairs);
  if (!trusted) return [];
  for (;;) {
    const outside = normal.pairs.flatMap((pair, index) => {
      if (trusted.has(index)) return [];
      const test = testAgainst(
        model,
        [...trusted].map((one) => normal.pairs[one]),
        pair,
        floor,
      );
      return [{ index, ...test }];
    });
    outside.sort((a, b) => b.chance - a.chance);
    const [next] = outside;
    if (!next) return [];
    const isBad = next.chance * pairs.length < CHANCE && next.distance * normal.mmPerUnit >= LEAST_OFF_MM;
    if (isBad)
      return outside
        .map(({ index, distance, times }) => ({ index, mm: distance * normal.mmPerUnit, times }))
        .filter(({ mm }) => mm >= LEAST_OFF_MM)
        .sort((a, b) => a.index - b.index);
    trusted.add(next.index);
  }
}

type Test = { chance: number; distance: number; times: number };

/** How likely an honest pair lies so far from where the trusted ones put it. */
function testAgainst(model: PhotoModel, trusted: readonly PlacePair[], pair: PlacePair, floor: number): Test {
  const solution = solveModel(model, trusted);
  const map = solution && model.map(solution.parameters);
  const spread = solution && predictionSpread(model, solution.parameters, trusted, pair.photo);
  if (!solution || !map || !spread) return { chance: 1, distance: 0, times: 0 };
  if (divisorAt(map, pair.photo) <= 0) return { chance: 0, distance: Infinity, times: Infinity };
  const freedom = 2 * trusted.length - solution.parameters.length;
  const variance = Math.max(solution.squares / Math.max(1, freedom), floor * floor);
  const { x, y } = leftOver(map, pair);
  const [xx, xy, yy] = [1 + spread[0], spread[1], 1 + spread[2]];
  const square = (yy * x * x - 2 * xy * x * y + xx * y * y) / (xx * yy - xy * xy);
  const ratio = square / (2 * variance);
  return {
    chance: (1 + (2 * ratio) / freedom) ** (-freedom / 2),
    distance: Math.hypot(x, y),
    times: Math.sqrt(ratio),
  };
}

/** The smallest set that still tests something, taken from the exact fit with the least median distance. */
function trustedStart(model: PhotoModel, pairs: readonly PlacePair[]): Set<number> | null {
  const size = Math.min(pairs.length - 1, Math.ceil((pairs.length + model.leastPairs + 1) / 2));
  let best: { median: number; order: number[] } | null = null;
  for (const chosen of trials(pairs.length, model.leastPairs)) {
    const few = chosen.map((index) => pairs[index]);
    const solution = spreadRefusal(few, model.kind) ? null : solveModel(model, few);
    if (!solution) continue;
    const map = model.map(solution.parameters);
    const squares = pairs.map((pair) => squaresOf(map, [pair]));
    const order = squares.map((_, index) => index).sort((a, b) => squares[a] - squares[b]);
    const median = squares[order[size - 1]];
    if (!best || median < best.median) best = { median, order };
  }
  return best && new Set(best.order.slice(0, size));
}

/** All choices of `size` out of `count`, or evenly spaced ones when there are too many: the same ones every time. */
function trials(count: number, size: number): number[][] {
  const all: number[][] = [];
  const chosen: number[] = [];
  const stride = Math.max(1, Math.floor(choices(count, size) / MOST_TRIALS));
  let place = 0;
  const grow = (from: number) => {
    if (chosen.length === size) {
      if (place++ % stride === 0) all.push([...chosen]);
      return;
    }
    for (let index = from; index <= count - (size - chosen.length); index++) {
      chosen.push(index);
      grow(index + 1);
      chosen.pop();
    }
  };
  grow(0);
  return all;
}

function choices(count: number, size: number): number {
  let number = 1;
  for (let index = 0; index < size; index++) number = (number * (count - index)) / (index + 1);
  return number;
}
