import type { Board } from '../../shared-types/board.ts';
import { boxOf } from '../../shared-types/geometry.ts';
import { preheaterById } from '../../shared-types/library/preheaters.ts';
import type { HeatRun, Plan, Preheater, Station } from '../../shared-types/plan.ts';
import { fail, type Result, succeed } from '../../shared-types/problem.ts';
import type { PreheaterFit } from '../../shared-types/station-fit.ts';
import { type Presence, presences } from './presence.ts';
import { sceneOfTicket } from './scene-of-ticket.ts';
import { type Series, valueAt } from './series.ts';
import { createSimulation } from './simulation.ts';

/** The fit looks at one place over minutes: some thousand cells of 2 to 5 mm, steps of 2 s. */
const CELLS = 4000;
const CELL_M = { least: 0.002, most: 0.005 } as const;
const STEP_S = 2;

function cellFor(board: Board): number {
  const { minX, maxX, minY, maxY } = boxOf(board.outline);
  const metres2 = ((maxX - minX) * (maxY - minY)) / 1e6;
  return Math.min(CELL_M.most, Math.max(CELL_M.least, Math.sqrt(metres2 / CELLS)));
}

/** What a thermocouple taped on a board may be off by, K, and how far film and lag usually lie from the kind's (factor). */
const READING_K = 3;
const PRIOR = { film: Math.log(1.5), lag: Math.log(2) } as const;
const ROUNDS = 8;
const NUDGE = 0.02;

export type BoardReadings = NonNullable<Station['boardReadings']>;
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
    boardAt(board, plan, given.sourceC, readings, Math.exp(film), Math.exp(lag));
  const start: Fitted = { film: Math.log(kind.filmWm2K), lag: Math.log(kind.lagS) };
  let now = start;
  for (let round = 0; round < ROUNDS; round++) {
    const base = predict(now);
    if (!base) return refused('heats no place of the board', 'Put the heated zone under the board.');
    const nudged = [predict({ ...now, film: now.film + NUDGE }), predict({ ...now, lag: now.lag + NUDGE })] as const;
    now = improved(now, start, base, nudged, readings);
  }
  const fitted = predict(now) ?? [];
  const misses = readings.map((reading, index) => reading.boardC - fitted[index]!);
  return succeed({
    filmWm2K: Math.exp(now.film),
    lagS: Math.exp(now.lag),
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

/** The board at the readings' times with this film and lag; null: the zone's middle is on no cell. */
function boardAt(
  board: Board,
  plan: Plan,
  sourceC: number,
  readings: BoardReadings['readings'],
  filmWm2K: number,
  lagS: number,
): number[] | null {
  const seconds = readings.at(-1)!.atS;
  const segment = {
    name: 'on',
    seconds,
    preheater: { startC: sourceC, endC: sourceC },
    gas: null,
    flowLMin: 0,
    siteId: null,
  };
  const run: HeatRun = { id: 'fit', name: 'fit', kind: 'cover-removal', side: 'top', siteIds: [], segments: [segment] };
  const preheater: Preheater = { ...plan.station.preheater, filmWm2K, lagS, sensor: null, largestC: sourceC };
  const warmed: Plan = { ...plan, station: { ...plan.station, preheater }, heatRuns: [run], tags: [] };
  const [presence] = presences(board, warmed) as [Presence];
  const scene = sceneOfTicket(board, warmed, presence);
  if (!scene.ok || !scene.value.preheater) return null;
  const { xM, yM } = scene.value.preheater;
  const simulation = createSimulation(scene.value, cellFor(board), STEP_S, [
    { points: [xM, yM], of: { face: 'upper' } },
  ]);
  if (!simulation.probes.valid[0]) return null;
  simulation.advance(simulation.stepCount);
  const { times, rows } = simulation.tracking;
  const series: Series = { times, rows, values: simulation.probes.high, offset: 0, stride: 1 };
  return readings.map(({ atS }) => valueAt(series, atS, plan.station.roomC));
}
