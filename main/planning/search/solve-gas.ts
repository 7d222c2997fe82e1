import { fail, type Result, succeed } from '../../../shared-types/problem.ts';
import type { SearchPoint } from '../../../shared-types/profile-search.ts';
import type { ProfilePoint } from '../../../shared-types/rules/profile-shape.ts';
import { type SearchSetting, type Tried, tryPoint } from './try-profile.ts';

/** A profile in figures that are smooth in those that the search moves. */
export type Smooth = Pick<Tried, 'margins' | 'slacks'> & { toPeakS: number };
export type Solved = Tried & { smooth: Smooth };

/** Usual rise of the coldest joint near its peak, K/s: where the first step goes. */
const USUAL_RISE_K_PER_S = 0.7;
const LEAST_RISE_K_PER_S = 0.1;
const MOST_ROUNDS = 16;

/**
 * The least whole number from `from` to `to` whose spare is not negative, for a spare that rises by about 1 a step;
 * null: there is none. Every step goes where the spare says, held between what failed and what sufficed.
 */
export function leastEnough(
  from: number,
  to: number,
  guess: number,
  spareAt: (seconds: number) => Result<number>,
): Result<number | null> {
  let fails = from - 1;
  let suffices = to + 1;
  let at = Math.min(to, Math.max(from, Math.round(guess)));
  for (let round = 0; suffices - fails > 1; round++) {
    const found = spareAt(at);
    if (!found.ok) return found;
    if (found.value < 0) fails = at;
    else suffices = at;
    const step = found.value < 0 ? Math.ceil(-found.value) : -Math.max(1, Math.floor(found.value));
    const halved = round < MOST_ROUNDS ? at + step : Math.round((fails + suffices) / 2);
    at = Math.min(suffices - 1, Math.max(fails + 1, halved));
  }
  return succeed(suffices > to ? null : suffices);
}

/**
 * The point with the fewest whole seconds of gas, site after site, at which each coldest joint is in its window and
 * molten long enough; where the bounds give too few seconds, the most. Problems: as `evaluate`.
 * @param guess seconds for each site from which the solution begins
 */
export function solveGas(
  setting: SearchSetting,
  at: Omit<ProfilePoint, 'gasS'>,
  guess: readonly number[],
): Result<Solved> {
  const [from, to] = [Math.ceil(setting.bounds.gasS.from), Math.floor(setting.bounds.gasS.to)];
  if (from > to) return fail('invalid-field', { where: 'gasS', detail: { reason: 'holds no whole second' } });
  const tried = new Map<string, Tried>();
  const trial = (gasS: readonly number[]): Result<Tried> => {
    const known = tried.get(gasS.join());
    if (known) return succeed(known);
    const made = tryPoint(setting, { ...at, gasS }, 'coarse');
    if (made.ok) tried.set(gasS.join(), made.value);
    return made;
  };
  let gasS = guess.map((seconds) => Math.min(to, Math.max(from, Math.round(seconds))));
  let spares = new Map<number, number>();
  for (const [place, { siteId }] of setting.shape.gas.entries()) {
    const spare = spareOf(siteId);
    spares = new Map();
    const found = leastEnough(from, to, gasS[place]!, (seconds) => {
      const made = trial(gasS.with(place, seconds));
      if (!made.ok) return made;
      spares.set(seconds, spare(made.value.point, seconds));
      return succeed(spares.get(seconds)!);
    });
    if (!found.ok) return found;
    gasS = gasS.with(place, found.value ?? to);
  }
  const solved = trial(gasS);
  if (!solved.ok) return solved;
  const last = gasS.length - 1;
  const shorter = tried.get(gasS.with(last, gasS[last]! - 1).join());
  return succeed({ ...solved.value, smooth: smoothOf(solved.value, shorter, spares) });
}

/**
 * What the profile would be with just enough gas, a part of a second less: run straight between the last second that
 * failed and the first that sufficed. Whole seconds alone would make steps of what is smooth.
 */
function smoothOf(solved: Tried, shorter: Tried | undefined, spares: ReadonlyMap<number, number>): Smooth {
  const at = solved.point.gasS.at(-1)!;
  const [spare, lack] = [spares.get(at) ?? 0, spares.get(at - 1) ?? 0];
  const back = shorter && spare > 0 && lack < 0 ? spare / (spare - lack) : 0;
  const between = (value: number, other: number | undefined) =>
    back > 0 && other !== undefined && Number.isFinite(value) ? value + back * (other - value) : value;
  return {
    margins: solved.margins.map((margin, index) => between(margin, shorter?.margins[index])),
    slacks: solved.slacks.map((slack, index) => ({ ...slack, by: between(slack.by, shorter?.slacks[index]?.by) })),
    toPeakS: solved.point.toPeakS - back,
  };
}

/** Seconds of gas that a site's target has to spare, by what its coldest joint has in K and in s above liquidus. */
function spareOf(siteId: string) {
  let before: { seconds: number; coldestC: number } | null = null;
  let riseKPerS = USUAL_RISE_K_PER_S;
  return ({ targets }: SearchPoint, seconds: number): number => {
    const target = targets.find((one) => one.siteId === siteId);
    if (!target) return 0;
    const { coldestC, leastC, allAboveS, leastAboveS } = target;
    if (before && before.seconds !== seconds)
      riseKPerS = Math.max(LEAST_RISE_K_PER_S, (coldestC - before.coldestC) / (seconds - before.seconds));
    before = { seconds, coldestC };
    return Math.min((coldestC - leastC) / riseKPerS, allAboveS - leastAboveS);
  };
}
