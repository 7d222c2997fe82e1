import type { Point } from '../../../../../shared-types/geometry.ts';
import type { PlacePair } from '../../../../../shared-types/rules/photo-fit.ts';
import { mapPoint, type PlaneMap } from '../../../../../shared-types/rules/plane-maps.ts';

/** A linear congruential generator (Numerical Recipes' constants), so that every run sees the same noise. */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state * 1664525 + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

export const gauss = (random: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** A top photo of 2000 x 1400 pixels, about 20 pixels a mm, tilted by about 10 degrees. */
export const TILTED: PlaneMap = [0.05, 0.004, -3, 0.003, -0.052, 60, 1e-5, 8e-5, 1];

export const pairsUnder = (map: PlaneMap, photos: readonly Point[]): PlacePair[] =>
  photos.map((photo) => ({ photo, board: mapPoint(map, photo) }));

/** Pairs spread over the photo, the board places off by so much noise (standard deviation of each coordinate, mm). */
export function noisyPairs(count: number, noiseMm: number, random: () => number, map = TILTED): PlacePair[] {
  const photos = Array.from({ length: count }, () => ({ x: 2000 * random(), y: 1400 * random() }));
  return pairsUnder(map, photos).map(({ photo, board }) => ({
    photo,
    board: { x: board.x + noiseMm * gauss(random), y: board.y + noiseMm * gauss(random) },
  }));
}

export const at = (x: number, y: number): Point => ({ x, y });
