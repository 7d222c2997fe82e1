import { expect, test } from 'vitest';
import { bandRuns } from '../../../../../main/heat/uncertainty/band-runs.ts';
import { beliefOf } from '../../../../../main/heat/uncertainty/calibrated.ts';
import { figureName, figuresOf } from '../../../../../main/heat/uncertainty/figures.ts';
import { priorSigma } from '../../../../../main/heat/uncertainty/priors.ts';
import {
  bandOf,
  repeatInOutlets,
  sensitivitiesOf,
  varianceOf,
} from '../../../../../main/heat/uncertainty/sensitivities.ts';
import { shiftScene } from '../../../../../main/heat/uncertainty/shift-scene.ts';
import { stateOf, withBands } from '../../../../../main/heat/uncertainty/with-bands.ts';
import { TERM_IDS } from '../../../../../shared-types/uncertainty.ts';
import { normals } from '../../../../support/heat/random.ts';
import { bareScene, evaluated, exposure, smallBoard, smallPlan } from '../support.ts';

const board = smallBoard();
const plan = smallPlan(board);
const runsOf = (more = {}) => {
  const runs = bandRuns(board, plan, beliefOf(board, plan), more);
  if (!runs.ok) throw new Error(runs.problem.code);
  return runs.value;
};

test('priors are those of the model page: outlet and copper by what is known of them', () => {
  const { sigma } = beliefOf(board, plan);
  expect(sigma.map((one) => Math.round(one * 1000) / 1000)).toEqual([
    ...[Math.log(1.3), 0.15, 8, Math.log(1.25)].map((one) => Math.round(one * 1000) / 1000),
    ...[board.laminate.layersKnown ? 1.25 : 1.6, 1.5, 1.25].map((factor) => Math.round(Math.log(factor) * 1000) / 1000),
  ]);
  const dial = { ...plan, station: { ...plan.station, gasReads: 'setting' as const } };
  expect(priorSigma(board, dial).outlet).toBe(25);
  const weak = plan.heatRuns.map((run) => ({
    ...run,
    segments: run.segments.map((one) => ({ ...one, flowLMin: one.gas ? 5 : 0 })),
  }));
  const below = priorSigma(board, { ...plan, heatRuns: weak }).nozzle;
  expect(below, 'a jet below the range of its law is less sure').toBeCloseTo(1.5 * Math.log(1.3), 12);
});

test('bands are exact where the figures are linear in the terms', () => {
  const count = TERM_IDS.length;
  const sigma = TERM_IDS.map((_, index) => 0.5 + index);
  const slope = TERM_IDS.map((_, index) => 3 - index);
  const base = new Map([['line', 40]]);
  const at = (steps: number[]) =>
    new Map([['line', 40 + steps.reduce((sum, step, term) => sum + step * slope[term]!, 0)]]);
  const pairs = TERM_IDS.map((_, term) => {
    const steps = (sign: number) => TERM_IDS.map((_, other) => (other === term ? sign * sigma[term]! : 0));
    return { down: at(steps(-1)), up: at(steps(1)) };
  });
  const moves = sensitivitiesOf(base, pairs).get('line')!;
  const identity = Array.from({ length: count * count }, (_, index) => (index % (count + 1) === 0 ? 1 : 0));
  const expected = Math.sqrt(sigma.reduce((sum, one, term) => sum + (one * slope[term]!) ** 2, 0));
  const belief = { sigma, correlation: identity, calibrated: [] };
  expect(bandOf(moves, belief, 0)).toBeCloseTo(1.645 * expected, 10);
  const repeat = repeatInOutlets(moves, 8);
  expect(bandOf(moves, belief, repeat), 'the hand adds its 8 K in quadrature').toBeCloseTo(
    1.645 * Math.hypot(expected, 8),
    10,
  );
  const together = identity.map((one, index) => (index === 1 || index === count ? -1 : one));
  const pair = (sigma[0]! * slope[0]! - sigma[1]! * slope[1]!) ** 2;
  const rest = sigma.slice(2).reduce((sum, one, term) => sum + (one * slope[term + 2]!) ** 2, 0);
  expect(varianceOf(moves, together), 'terms that cancel').toBeCloseTo(pair + rest, 9);
});

test('a figure that counts seconds takes its larger side', () => {
  const same = TERM_IDS.map(() => ({ down: new Map([['a/over', 0]]), up: new Map([['a/over', 0]]) }));
  const pairs = [{ down: new Map([['a/over', 0]]), up: new Map([['a/over', 12]]) }, ...same.slice(1)];
  expect(sensitivitiesOf(new Map([['a/over', 0]]), pairs).get('a/over')![0]).toBe(12);
});

test('bands agree with runs of all terms drawn at once from their priors', () => {
  const runs = runsOf();
  const banded = withBands(runs.base, runs);
  const belief = runs.belief;
  const draw = normals(7);
  const names = ['U2', 'C1', 'C2', 'E1'].map((refdes) => figureName.part(refdes, 'body'));
  names.push(figureName.target('run-1', 'site-1', 'coldest'));
  const seen = names.map((): number[] => []);
  for (let round = 0; round < 150; round++) {
    const steps = Object.fromEntries(TERM_IDS.map((term, index) => [term, belief.sigma[index]! * draw()]));
    const figures = figuresOf(evaluated(board, plan, { steps }));
    names.forEach((name, index) => {
      seen[index]!.push(figures.get(name)!);
    });
  }
  names.forEach((name, index) => {
    const values = seen[index]!;
    const mean = values.reduce((sum, one) => sum + one, 0) / values.length;
    const spread = Math.sqrt(values.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (values.length - 1));
    const ratio = bandOf(runs.sensitivities.get(name)!, belief, 0) / (1.645 * spread);
    // 150 draws tell a spread within some 6 % (one standard deviation); the model bends a little too.
    expect(ratio, name).toBeGreaterThan(0.82);
    expect(ratio, name).toBeLessThan(1.2);
  });
  expect(exposure(banded, 'U2').bands!.bodyK).toBeGreaterThan(bandOf(runs.sensitivities.get(names[0]!)!, belief, 0));
}, 120_000);

test('a bare point of the map has the band of a thermocouple that sits there', () => {
  const at = { x: 41, y: 33 };
  const watch = { id: 'w', kind: 'watchPoint' as const, name: 'W1', order: null, note: '', refdes: null };
  const watched = { ...plan, tags: [...plan.tags, { ...watch, side: 'top' as const, ...at }] };
  const runs = bandRuns(board, watched, beliefOf(board, watched));
  if (!runs.ok) throw new Error(runs.problem.code);
  const { base, fields } = runs.value;
  const { columns, cellMm, originX, originY } = fields.grid;
  const cell = Math.floor((at.y - originY) / cellMm) * columns + Math.floor((at.x - originX) / cellMm);
  const peak = base.runs[0]!.watch[0]!;
  const told = withBands(base, runs.value).runs[0]!.watch[0]!.peakBandK!;
  expect(fields.worst.top[cell]).toBeCloseTo(told, 2);
  expect(fields.runs[0]!.fields.top[cell]).toBeCloseTo(told, 2);
  expect(base.fields.top[cell]).toBeCloseTo(peak.peakC, 2);
  expect(fields.worst.top.some(Number.isNaN)).toBe(base.fields.top.some(Number.isNaN));
});

test('the same ticket gives the same bands; a cancelled one gives none', () => {
  const strip = (runs: ReturnType<typeof runsOf>) => JSON.stringify(withBands(runs.base, runs));
  const shares: number[] = [];
  expect(strip(runsOf({ onProgress: (share: number) => shares.push(share) }))).toBe(strip(runsOf()));
  expect(shares).toEqual([...shares].sort((a, b) => a - b));
  expect(shares.at(-1)).toBeCloseTo(1, 9);
  let asked = 0;
  const stopped = bandRuns(board, plan, beliefOf(board, plan), { isCancelled: () => ++asked > 50 });
  expect(stopped).toMatchObject({ ok: false, problem: { code: 'cancelled' } });
});

test('states follow margin and band, and every figure of an evaluation is told its band', () => {
  expect([stateOf(11, 10), stateOf(10, 10), stateOf(-10, 10), stateOf(-11, 10)]).toEqual([
    ...['clear', 'unsure', 'unsure', 'over'],
  ]);
  const runs = runsOf();
  const banded = withBands(runs.base, runs);
  expect(banded.bands).toBe('computed');
  for (const part of banded.parts) {
    expect(part.bandK).toBe(part.bands![`${part.governedBy}K`]);
    expect(part.bandK).toBeGreaterThan(0);
    expect(part.state).toBe(stateOf(part.marginK, part.bandK!));
  }
  expect(banded.runs[0]!.targets[0]!.bands!.coldestK).toBeGreaterThan(5);
  expect(banded.runs[0]!.segments.every((segment) => segment.siteBandK! > 0)).toBe(true);
  expect(exposure(banded, 'C1').bandK, 'beside the nozzle less is sure than far off').toBeGreaterThan(
    exposure(banded, 'C2').bandK!,
  );
});

test('without steps a scene stays as it is; each step moves its own term', () => {
  const scene = bareScene({
    nozzle: {
      mouth: { shape: 'round', diameterM: 0.01 },
      ...{ standOffM: 0.01, sweepRadiusM: 0, tiltDeg: 0, headingDeg: 0, hood: null },
    },
    preheater: { xM: 0, yM: 0, lengthM: 1, widthM: 1, turnDeg: 0, film: 25, lagS: 40, sensor: null },
  });
  expect(JSON.stringify(shiftScene(scene, {}))).toBe(JSON.stringify(scene));
  const moved = shiftScene(scene, { nozzle: Math.log(2), dilution: 0.1, preheater: Math.log(2), inPlane: Math.log(3) });
  expect(moved.nozzle!.filmFactor).toBeCloseTo(2, 12);
  expect(moved.nozzle!.dilutionExponent).toBeCloseTo(1, 12);
  expect(moved.preheater!.film).toBeCloseTo(50, 12);
  expect(moved.board.inPlane).toBeCloseTo(48, 12);
});
