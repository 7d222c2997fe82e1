import { BAND_90, TERM_IDS } from '../../../shared-types/uncertainty.ts';
import { type Figures, isCount } from './figures.ts';
import type { Belief } from './priors.ts';

/** Per figure: what one standard deviation of each term moves it by, in the order of TERM_IDS. */
export type Sensitivities = Map<string, number[]>;

/** Two runs with one term a standard deviation down and up. */
export type TermPair = { down: Figures; up: Figures };

/**
 * Central differences over one standard deviation to each side. A figure that counts seconds takes the larger of the
 * two sides, with its sign; one that a run does not tell (the target never melts) has no sensitivity.
 */
export function sensitivitiesOf(base: Figures, pairs: readonly TermPair[]): Sensitivities {
  const all: Sensitivities = new Map();
  for (const [name, value] of base) {
    const moves: number[] = [];
    for (const { down, up } of pairs) {
      const low = down.get(name);
      const high = up.get(name);
      if (low === undefined || high === undefined) break;
      if (!isCount(name)) moves.push((high - low) / 2);
      else moves.push(Math.abs(high - value) >= Math.abs(value - low) ? high - value : value - low);
    }
    if (moves.length === pairs.length) all.set(name, moves);
  }
  return all;
}

/** Variance of a figure that moves so, under correlated terms. */
export function varianceOf(moves: readonly number[], correlation: readonly number[]): number {
  const count = moves.length;
  let variance = 0;
  for (let row = 0; row < count; row++) {
    for (let column = 0; column < count; column++) {
      variance += moves[row]! * correlation[row * count + column]! * moves[column]!;
    }
  }
  return Math.max(0, variance);
}

const OUTLET = TERM_IDS.indexOf('outlet');

/** A hand that repeats no better acts like an outlet that is off: by how many of the outlet's standard deviations. */
export function repeatInOutlets(targetMoves: readonly number[] | undefined, repeatK: number): number {
  const move = Math.abs(targetMoves?.[OUTLET] ?? 0);
  return move > 0 ? repeatK / move : 0;
}

/** Half width of the 90 % band: the terms with their correlations, and the hand's repeat, added in quadrature. */
export function bandOf(moves: readonly number[], belief: Belief, repeat: number): number {
  const hand = repeat * moves[OUTLET]!;
  return BAND_90 * Math.sqrt(varianceOf(moves, belief.correlation) + hand * hand);
}
