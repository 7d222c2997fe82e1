import type { Board } from '../../shared-types/board.ts';
import { boxOf } from '../../shared-types/geometry.ts';
import type { HeatRun, Plan, Preheater, Station } from '../../shared-types/plan.ts';
import type { TermSteps } from '../../shared-types/uncertainty.ts';
import { type Presence, presences } from './presence.ts';
import { sceneOfTicket } from './scene-of-ticket.ts';
import { evenRows, type Series, valueAt } from './series.ts';
import { createSimulation } from './simulation.ts';
import { shiftScene } from './uncertainty/shift-scene.ts';

export type BoardReadings = NonNullable<Station['boardReadings']>;
export type PreheaterFigures = { filmWm2K: number; lagS: number };

/** The fit looks at one place over minutes: some thousand cells of 2 to 5 mm, steps of 2 s. */
const CELLS = 4000;
const CELL_M = { least: 0.002, most: 0.005 } as const;
const STEP_S = 2;

function cellFor(board: Board): number {
  const { minX, maxX, minY, maxY } = boxOf(board.outline);
  const metres2 = ((maxX - minX) * (maxY - minY)) / 1e6;
  return Math.min(CELL_M.most, Math.max(CELL_M.least, Math.sqrt(metres2 / CELLS)));
}

/**
 * The board at the readings' times, C (in their order, by time), with this film and lag, and with the model's terms moved
 * by `steps`. Read on its upper side over the middle of the heated zone; null: that is on no cell.
 */
export function boardOver(
  board: Board,
  plan: Plan,
  { sourceC, readings }: BoardReadings,
  { filmWm2K, lagS }: PreheaterFigures,
  steps: TermSteps = {},
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
  const simulation = createSimulation(shiftScene(scene.value, steps), cellFor(board), STEP_S, [
    { points: [xM, yM], of: { face: 'upper' } },
  ]);
  if (!simulation.probes.valid[0]) return null;
  simulation.advance(simulation.stepCount);
  simulation.release();
  const { times, rows } = simulation.tracking;
  const series: Series = { times, rows, at: evenRows(simulation.probes.high) };
  return readings.map(({ atS }) => valueAt(series, atS, plan.station.roomC));
}
