import { expect, test } from 'vitest';
import { fitPreheater } from '../../main/heat/preheater-fit.ts';
import { presences } from '../../main/heat/presence.ts';
import { sceneOfTicket } from '../../main/heat/scene-of-ticket.ts';
import { evenRows, valueAt } from '../../main/heat/series.ts';
import { createSimulation } from '../../main/heat/simulation.ts';
import type { Plan } from '../../shared-types/plan.ts';
import { verification } from '../support/verification/record.ts';
import { run, segment, smallBoard, smallPlan } from '../unit/main/heat/support.ts';

const TIMES_S = [60, 120, 240];
const board = smallBoard();

/** Readings made on the fine grid, twice as fine as the fit's, with a film and a lag that the fit does not know. */
function readingsOf(filmWm2K: number, lagS: number, offK: readonly number[]) {
  const plan = smallPlan(board);
  const preheater = { ...plan.station.preheater, filmWm2K, lagS };
  const warm: Plan = {
    ...{ ...plan, station: { ...plan.station, preheater } },
    heatRuns: [run('cover-removal', 'warm', { siteIds: [], segments: [segment('on', 240, [320, 320], null)] })],
  };
  const scene = sceneOfTicket(board, warm, presences(board, warm)[0]!);
  if (!scene.ok) throw new Error(scene.problem.code);
  const simulation = createSimulation(scene.value, 0.001, 0.5, [{ points: [0.03, 0.022], of: { face: 'upper' } }]);
  simulation.advance(1e6);
  const { times, rows } = simulation.tracking;
  const series = { times, rows, at: evenRows(simulation.probes.high) };
  const readings = TIMES_S.map((atS, index) => ({ atS, boardC: valueAt(series, atS, 25) + offK[index]! }));
  return { sourceC: 320, readings };
}

const station = (problem: string) =>
  verification({
    ...{ topic: 'Station fits', item: 'station-fit', problem },
    source: 'readings made by the model on the fine grid with a film and a lag that the fit does not know',
  });

test('film and lag that made the readings are found again', () => {
  const found = fitPreheater(board, smallPlan(board), readingsOf(34, 60, [0, 0, 0]));
  if (!found.ok) throw new Error(found.problem.code);
  const verify = station('Preheater from board readings after 60, 120 and 240 s');
  verify.ratio('film', 'W/m2K', found.value.filmWm2K, 34, 0.08);
  verify.ratio('lag', 's', found.value.lagS, 60, 0.12);
  verify.below('residual', 'K', found.value.residualK, 1);
});

test('readings that are off leave a residual and do not throw the fit', () => {
  const found = fitPreheater(board, smallPlan(board), readingsOf(25, 40, [4, -4, 3]));
  if (!found.ok) throw new Error(found.problem.code);
  const verify = station('Readings that are off by 4, -4 and 3 K');
  verify.above('residual that is shown', 'K', found.value.residualK, 1);
  verify.ratio('film', 'W/m2K', found.value.filmWm2K, 25, 0.2);
  const off = found.value.readings.map(({ boardC, fittedC }) => (boardC - fittedC) ** 2);
  expect(found.value.residualK).toBeCloseTo(Math.sqrt(off.reduce((sum, one) => sum + one, 0) / 3), 9);
});

test('one reading moves the film and keeps the lag near the usual', () => {
  const all = readingsOf(34, 40, [0, 0, 0]);
  const found = fitPreheater(board, smallPlan(board), { ...all, readings: all.readings.slice(2) });
  if (!found.ok) throw new Error(found.problem.code);
  const verify = station('One reading after 240 s: the lag stays near the usual');
  verify.above('film', 'W/m2K', found.value.filmWm2K, 30);
  verify.ratio('lag', 's', found.value.lagS, 40, 0.2);
});

test('no readings, and a zone beside the board, are refused with what to do', () => {
  const plan = smallPlan(board);
  expect(fitPreheater(board, plan, { sourceC: 300, readings: [] })).toMatchObject({
    ok: false,
    problem: { code: 'invalid-field' },
  });
  const preheater = { ...plan.station.preheater, centre: { x: 900, y: 900 } };
  const beside = { ...plan, station: { ...plan.station, preheater } };
  const refused = fitPreheater(board, beside, { sourceC: 300, readings: [{ atS: 60, boardC: 80 }] });
  expect(refused).toMatchObject({ ok: false, problem: { detail: { todo: 'Put the heated zone under the board.' } } });
});
