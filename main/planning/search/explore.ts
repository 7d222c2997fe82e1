import { type Result, succeed } from '../../../shared-types/problem.ts';
import type { MissCode, SearchBounds, SearchPoint } from '../../../shared-types/profile-search.ts';
import { weighedMiss } from './judge-profile.ts';
import { type Axis, firstPlaces, type Place, placeBeside, placesAbout, scaled } from './lattice.ts';
import { type Solved, solveGas } from './solve-gas.ts';
import { quadraticsOf, type Sample } from './surrogate.ts';
import type { SearchSetting, Tried } from './try-profile.ts';

/** Figures of neighbours that are foreseen: those that came nearest to their limits anywhere. */
const MOST_FORESEEN = 24;
/** The search about a best place ends when it finds no better one within this share of half the bounds. */
const LEAST_REACH = 0.06;
const MOST_ROUNDS = 28;
const FAILS_A_REACH = 2;
/** Shares of the time between the quickest profile and the best one at which quicker ones are looked for. */
const QUICKER_AT = [0, 0.25, 0.5, 0.75] as const;
const QUICKER_ROUNDS = 3;

/** Worse than any margin can be: profiles that do not do their work come after all that do. */
const NOT_WORKING = 1000;

type Foreseen = { misses: number; marginK: number; toPeakS: number };
type Score = (one: Foreseen) => number;

/** The lower the better: first how far it is from doing its work, then its worst margin. */
const byMargin: Score = ({ misses, marginK }) => (misses > 0 ? NOT_WORKING * (1 + misses) : -marginK);
const within =
  (mostS: number): Score =>
  (one) =>
    one.toPeakS > mostS ? NOT_WORKING * 1e3 * (1 + one.toPeakS - mostS) : byMargin(one);

const seenAs = ({ point, slacks }: Tried): Foreseen => ({
  ...{ misses: weighedMiss(slacks), marginK: point.marginK ?? 0, toPeakS: point.toPeakS },
});

/** Kept between what is foreseen and a wish: whole seconds of gas overshoot by half of one on average, K, s. */
const SPARE: Partial<Record<MissCode, number>> = { hot: 0.4, long: 0.5, rise: 0.02, skin: 0.3 };

const bestBy = (all: readonly Solved[], score: Score): Solved =>
  all.reduce((a, b) => (score(seenAs(b)) < score(seenAs(a)) ? b : a));

/** Moves along one of the three figures, in halves of its bounds. */
const POLLS = [0.5, 0.2, 0.07].flatMap((length) =>
  [0, 1, 2].flatMap((axis) => [1, -1].map((sign) => ({ axis, by: sign * length }))),
);
/** A gain smaller than this is not worth another round, K. */
const LEAST_GAIN_K = 0.1;

const axesOf = ({ belowC, leadS, gasC }: SearchBounds): Axis[] =>
  [belowC, leadS, gasC].map(({ from, to }) => ({ from: Math.ceil(from), to: Math.floor(to) }));
const placeOf = ({ point: { belowC, leadS, gasC } }: Tried): Place => [belowC, leadS, gasC];

/**
 * Profiles tried in the bounds: first their middle, faces and corners, then where quadratics through what was found
 * foresee the best, near the best so far and nearer; then the same for quicker profiles. Every one is a run of the
 * model; what is foreseen only says where to look. Problems: as `evaluate`.
 */
export function explore(setting: SearchSetting): Result<Solved[]> {
  const axes = axesOf(setting.bounds);
  const { present } = setting.shape;
  const tried = new Map<string, Solved>();
  const all = () => [...tried.values()];
  const tryAt = (place: Place, guess: readonly number[]): Result<Solved> => {
    const [belowC, leadS, gasC] = place as [number, number, number];
    const found = solveGas(setting, { belowC, leadS, gasC }, guess);
    if (found.ok) tried.set(place.join(), found.value);
    return found;
  };
  const start = [present.belowC, present.leadS, present.gasC].map((value, axis) =>
    Math.min(axes[axis]!.to, Math.max(axes[axis]!.from, Math.round(value))),
  );
  let guess: readonly number[] = present.gasS;
  for (const place of [start, ...firstPlaces(axes)]) {
    if (tried.has(place.join())) continue;
    const found = tryAt(place, guess);
    if (!found.ok) return found;
    guess = found.value.point.gasS;
  }
  /** Looks for a better place about the best one so far, until the reach is used up. */
  const lookFor = (score: Score, firstReach: number, rounds: number): Result<null> => {
    let reach = firstReach;
    let failed = 0;
    for (let round = 0; round < rounds && reach >= LEAST_REACH; round++) {
      const best = bestBy(all(), score);
      const next = foreseen(all(), best, axes, reach, score, tried);
      const found = next && tryAt(next.place, next.gasS);
      if (found && !found.ok) return found;
      const isBetter = found && score(seenAs(found.value)) < score(seenAs(best));
      // A place that was foreseen wrongly corrects what is foreseen: once more, then nearer.
      failed = isBetter ? 0 : failed + 1;
      if (failed < FAILS_A_REACH && found) continue;
      failed = 0;
      reach /= 2;
    }
    return succeed(null);
  };
  /** Moves the best place along one figure at a time, far before near, for as long as that helps. */
  const feelAlong = (score: Score): Result<boolean> => {
    let best = bestBy(all(), score);
    const from = best;
    for (let move = 0; move < POLLS.length; move++) {
      const place = placeBeside(placeOf(best), axes, POLLS[move]!);
      const known = tried.get(place.join());
      const found = known ? succeed(known) : tryAt(place, best.point.gasS);
      if (!found.ok) return found;
      if (score(seenAs(found.value)) >= score(seenAs(best)) - LEAST_GAIN_K) continue;
      best = found.value;
      move = -1;
    }
    return succeed(best !== from);
  };
  for (let reach = 1, more = true; more; reach = 0.25) {
    const looked = lookFor(byMargin, reach, MOST_ROUNDS);
    if (!looked.ok) return looked;
    const felt = feelAlong(byMargin);
    if (!felt.ok) return felt;
    more = felt.value;
  }
  const working = all().filter(({ point }) => point.misses.length === 0);
  if (working.length === 0) return succeed(all());
  const times = working.map(({ point }) => point.toPeakS);
  const slowest = working.reduce((a, b) => ((b.point.marginK ?? 0) > (a.point.marginK ?? 0) ? b : a));
  const quickestS = Math.min(...times);
  for (const share of QUICKER_AT) {
    const mostS = quickestS + share * (slowest.point.toPeakS - quickestS);
    const found = lookFor(within(mostS), 0.5, QUICKER_ROUNDS);
    if (!found.ok) return found;
  }
  return succeed(all());
}

/** Where the best untried place about a tried one is foreseen, with its seconds of gas; null: all are tried. */
function foreseen(
  all: readonly Solved[],
  best: Solved,
  axes: readonly Axis[],
  reach: number,
  score: Score,
  tried: ReadonlyMap<string, unknown>,
): { place: Place; gasS: number[] } | null {
  const figures = tightFigures(all);
  const { slacks, point } = best;
  const samples: Sample[] = all.map((one) => ({
    at: scaled(placeOf(one), axes),
    values: [
      ...one.slacks.map(({ by }) => by),
      one.point.toPeakS,
      ...one.point.gasS,
      ...figures.map((index) => one.margins[index]!),
    ],
  }));
  const centre = scaled(placeOf(best), axes);
  const expect = quadraticsOf(samples, centre, Math.max(0.5, 1.5 * reach));
  let found: { place: Place; gasS: number[]; score: number } | null = null;
  for (const place of placesAbout(placeOf(best), axes, reach)) {
    if (tried.has(place.join())) continue;
    const values = expect(scaled(place, axes));
    const [times, margins] = [slacks.length, slacks.length + 1 + point.gasS.length];
    const own = score({
      misses: weighedMiss(slacks.map(({ code }, index) => ({ code, by: foreseenBy(code, values[index]!) }))),
      marginK: Math.min(...values.slice(margins)),
      toPeakS: values[times]!,
    });
    if (!found || own < found.score) found = { place, gasS: values.slice(times + 1, margins), score: own };
  }
  return found;
}

/** Cold and short are met by the gas's seconds, unless they run out: what is just met counts as met. */
const foreseenBy = (code: MissCode, by: number): number =>
  code === 'cold' || code === 'short' ? by - 0.5 : by + (SPARE[code] ?? 0);

/** Which figures came nearest to their limits in any of the tried profiles. */
function tightFigures(all: readonly Solved[]): number[] {
  const count = all[0]!.margins.length;
  const least = Array.from({ length: count }, (_, index) => Math.min(...all.map(({ margins }) => margins[index]!)));
  return least
    .map((margin, index) => ({ margin, index }))
    .filter(({ margin }) => Number.isFinite(margin))
    .sort((a, b) => a.margin - b.margin || a.index - b.index)
    .slice(0, MOST_FORESEEN)
    .map(({ index }) => index);
}

/** Profiles of the front lie at least this far apart in margin: less is no choice, K. */
const APART_K = 0.3;

/**
 * Profiles that do their work and that no other beats in both time and margin, quickest first; of those that are nearly
 * alike the quickest, and the one with the largest margin always.
 */
export function frontOf(all: readonly Tried[]): SearchPoint[] {
  const margin = ({ marginK }: SearchPoint) => marginK ?? 0;
  const sorted = all
    .flatMap(({ point }) => (point.misses.length === 0 ? [point] : []))
    .sort((a, b) => a.toPeakS - b.toPeakS || margin(b) - margin(a));
  const front: SearchPoint[] = [];
  for (const point of sorted) if (front.every((other) => margin(point) > margin(other))) front.push(point);
  const apart: SearchPoint[] = [];
  for (const point of front) {
    const before = apart.at(-1);
    if (!before || margin(point) >= margin(before) + APART_K) apart.push(point);
  }
  const last = front.at(-1);
  if (!last || apart.at(-1) === last) return apart;
  return apart.length > 1 ? [...apart.slice(0, -1), last] : [...apart, last];
}
