/** A source of random numbers that gives the same row for the same seed (mulberry32, public domain). */
export function createRandom(seed: number) {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  return {
    next,
    /** Between from and to. */
    between: (from: number, to: number): number => from + (to - from) * next(),
    /** A whole number from `from` to `to`, both included. */
    whole: (from: number, to: number): number => from + Math.floor((to - from + 1) * next()),
    pick: <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)],
    chance: (share: number): boolean => next() < share,
  };
}

export type Random = ReturnType<typeof createRandom>;
