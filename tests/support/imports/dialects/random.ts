import { uniforms } from '../../heat/random.ts';

/** Draws of one seed: the same seed gives the same case on every machine. */
export interface Draws {
  /** 0 up to and without 1. */
  next(): number;
  /** A whole number from `least` to `most`. */
  whole(least: number, most: number): number;
  one<T>(choices: readonly T[]): T;
  /** True in `share` of all draws. */
  chance(share: number): boolean;
  shuffled<T>(items: readonly T[]): T[];
}

export function drawsOf(seed: number): Draws {
  const next = uniforms(seed);
  const whole = (least: number, most: number): number => least + Math.floor(next() * (most - least + 1));
  return {
    next,
    whole,
    one: (choices) => choices[whole(0, choices.length - 1)],
    chance: (share) => next() < share,
    shuffled(items) {
      const list = [...items];
      for (let at = list.length - 1; at > 0; at--) {
        const other = whole(0, at);
        [list[at], list[other]] = [list[other], list[at]];
      }
      return list;
    },
  };
}
