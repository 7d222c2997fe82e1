import { type Result, succeed } from '../../../shared-types/problem.ts';
import type { SearchPoint } from '../../../shared-types/profile-search.ts';
import { type SearchSetting, type Tried, tryPoint } from './try-profile.ts';

/** Rounds in which the gas is corrected by what the fine map says. */
const MOST_ROUNDS = 4;
/** Profiles that are tried on the fine map at most, the best first. */
const MOST_CONFIRMED = 6;
/** Rise of a coldest joint near its peak, K/s; the corrections that follow come from the fine map's own figures. */
const RISE_K_PER_S = 0.7;

/**
 * Of the profiles that do their work on the coarse map the one with the largest margin that does so on the fine map
 * too; null: none of the best. What the fine map says otherwise of one is taken to hold for the next, so that those
 * that would fail the same way are passed over. Problems: as `evaluate`.
 */
export function bestOnFine(setting: SearchSetting, tried: readonly Tried[]): Result<SearchPoint | null> {
  const margin = ({ point }: Tried) => point.marginK ?? 0;
  const waiting = tried.filter(({ point }) => point.misses.length === 0).sort((a, b) => margin(b) - margin(a));
  let off: readonly number[] = [];
  for (let count = 0; count < MOST_CONFIRMED; count++) {
    const next = waiting.findIndex(({ slacks }) =>
      slacks.every(({ code, by }, index) => isSolved(code) || by + (off[index] ?? 0) <= 0),
    );
    if (next < 0) return succeed(null);
    const [coarse] = waiting.splice(next, 1);
    const fine = correctedOnFine(setting, coarse!.point);
    if (!fine.ok) return fine;
    if (fine.value.point.misses.length === 0) return succeed(fine.value.point);
    off = fine.value.slacks.map(({ by }, index) => by - coarse!.slacks[index]!.by);
  }
  return succeed(null);
}

/** What the seconds of gas are solved for, on either map. */
const isSolved = (code: Tried['slacks'][number]['code']): boolean => code === 'cold' || code === 'short';

/** The profile on the fine map: where a coldest joint misses its window there, its seconds of gas are corrected. */
function correctedOnFine(setting: SearchSetting, coarse: SearchPoint): Result<Tried> {
  const { from, to } = setting.bounds.gasS;
  let gasS = coarse.gasS;
  for (let round = 0; ; round++) {
    const fine = tryPoint(setting, { ...coarse, gasS }, 'fine');
    if (!fine.ok || fine.value.point.misses.length === 0 || round === MOST_ROUNDS) return fine;
    const corrected = gasS.map((seconds, place) => {
      const more = correctionS(fine.value.point, setting.shape.gas[place]!.siteId);
      return Math.min(Math.floor(to), Math.max(Math.ceil(from), seconds + more));
    });
    if (corrected.join() === gasS.join()) return fine;
    gasS = corrected;
  }
}

/** Seconds that the gas at a site is to be longer; negative: shorter. */
function correctionS({ misses, targets }: SearchPoint, siteId: string): number {
  const refdes = targets.find((target) => target.siteId === siteId)?.refdes;
  const missed = (code: SearchPoint['misses'][number]['code']) =>
    misses.find((miss) => miss.code === code && miss.refdes === refdes)?.by ?? 0;
  const more = Math.max(missed('cold') / RISE_K_PER_S, missed('short'));
  if (more > 0) return Math.ceil(more);
  return -Math.floor(Math.max(missed('hot') / RISE_K_PER_S, missed('long')) + 0.5);
}
