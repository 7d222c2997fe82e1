import type { Board } from '../../shared-types/board.ts';
import { preheaterById } from '../../shared-types/library/preheaters.ts';
import type { Plan } from '../../shared-types/plan.ts';
import { fail, type Result, succeed } from '../../shared-types/problem.ts';
import type { PreheaterFit } from '../../shared-types/station-fit.ts';
import { type BoardReadings, boardOver } from './board-over-preheater.ts';
import { filmDoubt, PREHEATER_PRIOR as PRIOR, READING_K } from './uncertainty/preheater-doubt.ts';
import { boardDoubt } from './uncertainty/priors.ts';

const ROUNDS = 8;
const NUDGE = 0.02;

type Fitted = { film: number; lag: number };

/**
 * Film and lag of the preheater from readings of the board over it after switch-on: regularised least squares
 * (Gauss-Newton on their logarithms) through the heat model itself, the parts of the board on it. The board is read on
 * its upper side over the middle of the heated zone. Errors: invalid-field (no readings, zone beside the board).
 */
export function fitPreheater(board: Board, plan: Plan, given: BoardReadings): Result<PreheaterFit> {
  const readings = [...given.readings].sort((a, b) => a.atS - b.atS);
  if (readings.length === 0) return refused('has no board readings', 'Read the board over the preheater first.');
  const kind = preheaterById(plan.station.preheater.kind);
  const predict = ({ film, lag }: Fitted) =>
    boardOver(board, plan, { ...given, readings }, { filmWm2K: Math.exp(film), lagS: Math.exp(lag) });
  const start: Fitted = { film: Math.log(kind.filmWm2K), lag: Math.log(kind.lagS) };
  let now = start;
  for (let round = 0; round < ROUNDS; round++) {
    const base = predict(now);
    if (!base) return refused('heats no place of the board', 'Put the heated zone under the board.');
    const nudged = [predict({ ...now, film: now.film + NUDGE }), predict({ ...now, lag: now.lag + NUDGE })] as const;
    now = improved(now, start, base, nudged, readings);
  }
  const found = { filmWm2K: Math.exp(now.film), lagS: Math.exp(now.lag) };
  const fitted = predict(now) ?? [];
  const misses = readings.map((reading, index) => reading.boardC - fitted[index]!);
  return succeed({
    ...found,
    filmSigma: filmDoubt(board, plan, { ...given, readings }, found, boardDoubt(board))?.sigma ?? PRIOR.film,
    residualK: Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / misses.length),
    readings: readings.map(({ atS, boardC }, index) => ({ atS, boardC, fittedC: fitted[index]! })),
  });
}

const refused = (reason: string, todo: string) =>
  fail('invalid-field', { where: 'station, preheater', detail: { reason, todo } });

/** One Gauss-Newton step on two unknowns, held within a factor of three. */
function improved(
  now: Fitted,
  start: Fitted,
  base: number[],
  [byFilm, byLag]: readonly [number[] | null, number[] | null],
  readings: BoardReadings['readings'],
): Fitted {
  if (!byFilm || !byLag) return now;
  let [a, b, d] = [1 / PRIOR.film ** 2, 0, 1 / PRIOR.lag ** 2];
  let [p, q] = [(start.film - now.film) * a, (start.lag - now.lag) * d];
  readings.forEach(({ boardC }, index) => {
    const film = (byFilm[index]! - base[index]!) / NUDGE / READING_K;
    const lag = (byLag[index]! - base[index]!) / NUDGE / READING_K;
    const miss = (boardC - base[index]!) / READING_K;
    a += film * film;
    b += film * lag;
    d += lag * lag;
    p += film * miss;
    q += lag * miss;
  });
  const determinant = a * d - b * b;
  const step = (value: number) => Math.min(1, Math.max(-1, value));
  const near = (value: number, middle: number) => Math.min(middle + Math.log(5), Math.max(middle - Math.log(5), value));
  return {
    film: near(now.film + step((p * d - q * b) / determinant), start.film),
    lag: near(now.lag + step((q * a - p * b) / determinant), start.lag),
  };
}
