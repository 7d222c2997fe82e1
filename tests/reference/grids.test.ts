import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readBoard, readPlan } from '../../main/document/open-document.ts';
import { evaluate } from '../../main/heat/evaluate.ts';
import { bodyPeaks, createPeakScratch } from '../../main/heat/part-peaks.ts';
import type { HeatScene, PointM, RingM, SceneBody } from '../../main/heat/scene.ts';
import { createSimulation, type Simulation } from '../../main/heat/simulation.ts';
import { type Heading, type Verification, verification } from '../support/verification/record.ts';
import { bareScene, body } from '../unit/main/heat/support.ts';

const BODIES: SceneBody[] = [
  body('U1', 0.03, 0.02, { lengthM: 0.014, widthM: 0.012, heightM: 0.0014 }),
  body('U2', 0.045, 0.02, { lengthM: 0.008, widthM: 0.005, turnDeg: 15 }),
  body('L1', 0.014, 0.022, { lengthM: 0.006, widthM: 0.006, heightM: 0.003, jointConductance: 5000 }),
  body('J1', 0.03, 0.035, { lengthM: 0.024, widthM: 0.005, heightM: 0.004, jointConductance: 700, conductivity: 0.3 }),
  body('B9', 0.042, 0.014, { side: 'bottom', lengthM: 0.009, widthM: 0.009, jointConductance: 200, heightM: 0.003 }),
];

const CORNERS: RingM = [
  [0, 0],
  [0.06, 0],
  [0.06, 0.042],
  [0, 0.042],
];

/** The scene of these tests, everything in it moved by `place` and turned by `turn`. */
function scene(place: (point: PointM) => PointM, turn = 0, mirrored = false): HeatScene {
  const at = (x: number, y: number) => place([x, y]);
  const sense = mirrored ? -1 : 1;
  const segment = (seconds: number, gas: boolean) => ({
    name: gas ? 'gas' : 'warm',
    seconds,
    preheaterStartC: 320,
    preheaterEndC: 320,
    gas: gas ? { startC: 330, endC: 345, flowStart: 40, flowEnd: 40 } : null,
    nozzleXM: at(0.03, 0.02)[0],
    nozzleYM: at(0.03, 0.02)[1],
  });
  const board = bareScene().board;
  return bareScene({
    entrainedC: 50,
    board: { ...board, outlines: [CORNERS.map(place)] },
    bodies: BODIES.map((one) => {
      const [xM, yM] = at(one.xM, one.yM);
      return { ...one, xM, yM, turnDeg: sense * one.turnDeg + turn };
    }),
    nozzle: {
      mouth: { shape: 'rect', lengthM: 0.009, widthM: 0.007, turnDeg: sense * 20 + turn },
      standOffM: 0.012,
      sweepRadiusM: 0,
      tiltDeg: 12,
      headingDeg: sense * 35 + turn,
      hood: null,
    },
    preheater: {
      xM: at(0.033, 0.021)[0],
      yM: at(0.033, 0.021)[1],
      lengthM: 0.044,
      widthM: 0.034,
      turnDeg: turn,
      film: 25,
      lagS: 40,
      sensor: null,
    },
    segments: [segment(120, false), segment(60, true), segment(15, false)],
  });
}

function run(given: HeatScene, cellM: number, stepS: number): Simulation {
  const simulation = createSimulation(given, cellM, stepS);
  simulation.advance(simulation.stepCount);
  return simulation;
}

/** Mean of the body and highest joint of every body, as an evaluation gives them. */
function figures(given: HeatScene, simulation: Simulation) {
  const scratch = createPeakScratch();
  const found = new Map<string, { mean: number; jointMax: number }>();
  simulation.state.entries.bodyOfScene.forEach((index, order) => {
    const one = given.bodies[index]!;
    const peaks = bodyPeaks(simulation.state, scratch, one, order);
    found.set(one.id, { mean: peaks.body.meanC, jointMax: peaks.joint.maxC });
  });
  return found;
}

const onGrids = (item: Heading['item'], problem: string, source = 'the program against itself') =>
  verification({ topic: 'Grids', item, problem, source });

type Figures = { mean: number; jointMax: number };
/** The two worst differences over all bodies, as two rows. */
function within(verify: Verification, name: string, pairs: [Figures, Figures][], meanK: number, jointK: number): void {
  const worst = (key: keyof Figures) => Math.max(...pairs.map(([one, other]) => Math.abs(one[key] - other[key])));
  verify.below(`${name}: mean of a body, worst of ${pairs.length}`, 'K', worst('mean'), meanK);
  verify.below(`${name}: hottest joint, worst of ${pairs.length}`, 'K', worst('jointMax'), jointK);
}

function pairsOf(first: ReturnType<typeof figures>, second: ReturnType<typeof figures>): [Figures, Figures][] {
  expect([...first.keys()].sort()).toEqual([...second.keys()].sort());
  return [...first].map(([id, one]) => [one, second.get(id)!]);
}

const still = scene((point) => point);

describe('grids', () => {
  it('a mirrored scene has mirrored temperatures', () => {
    const straight = run(still, 0.002, 1).state;
    const mirrored = run(
      scene(([x, y]) => [x, 0.042 - y], 0, true),
      0.002,
      1,
    ).state;
    const { columns, rows, cellCount } = straight.grid;
    let worst = 0;
    for (let cell = 0; cell < cellCount; cell++) {
      const other = (rows - 1 - Math.floor(cell / columns)) * columns + (cell % columns);
      for (const layer of [0, cellCount]) {
        worst = Math.max(worst, Math.abs(straight.peak[cell + layer]! - mirrored.peak[other + layer]!));
      }
    }
    const verify = onGrids('symmetry', 'A scene of tilted, rectangular nozzle and turned bodies, mirrored');
    verify.below('worst difference of peaks', 'K', worst, 1e-6);
  });

  it('a scene turned by a right angle agrees within 0.05 K: the splitting has no favourite axis', () => {
    const straight = run(still, 0.002, 1).state;
    const turned = run(
      scene(([x, y]) => [0.042 - y, x], 90),
      0.002,
      1,
    ).state;
    const { columns, cellCount } = straight.grid;
    let worst = 0;
    for (let cell = 0; cell < cellCount; cell++) {
      const x = cell % columns;
      const y = Math.floor(cell / columns);
      const other = x * turned.grid.columns + (turned.grid.columns - 1 - y);
      for (const layer of [0, cellCount]) {
        worst = Math.max(worst, Math.abs(straight.peak[cell + layer]! - turned.peak[other + layer]!));
      }
    }
    const verify = onGrids('symmetry', 'The same scene turned by a right angle: the splitting has no favourite axis');
    verify.below('worst difference of peaks', 'K', worst, 0.05);
  });

  it('a board clamped at an angle: means and highest joints within 1.5 K', () => {
    const given = scene((point) => point);
    const straight = figures(given, run(given, 0.001, 0.5));
    const verify = onGrids('turned-board', 'A board clamped at an angle, its cells cut differently');
    for (const degrees of [17, 45]) {
      const angle = (degrees * Math.PI) / 180;
      const turnedScene = scene(
        ([x, y]) => [x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle)],
        degrees,
      );
      const turned = figures(turnedScene, run(turnedScene, 0.001, 0.5));
      within(verify, `turned ${degrees}°`, pairsOf(turned, straight), 1.5, 1.5);
    }
  });

  it('2 mm against 1 mm: means within 2.5 K, highest joints within 4 K', () => {
    const [coarse, fine] = [figures(still, run(still, 0.002, 1)), figures(still, run(still, 0.001, 0.5))];
    within(onGrids('coarse-fine', '2 mm against 1 mm'), 'scene of these tests', pairsOf(coarse, fine), 2.5, 4);
  });

  it('a ticket of many small steps is the same however it is stepped', () => {
    const whole = run(still, 0.002, 1);
    const pieces = createSimulation(still, 0.002, 1);
    while (!pieces.advance(3));
    expect(pieces.state.peak).toEqual(whole.state.peak);
    expect(pieces.tracking.series).toEqual(whole.tracking.series);
  });
});

describe('sample boards: 2 mm against 1 mm', () => {
  const folder = new URL('../../sample-boards/', import.meta.url);
  const names = readdirSync(folder).filter((file) => file.endsWith('.board.json'));
  it('are there', () => expect(names.length).toBeGreaterThan(0));
  for (const name of names) {
    it(`${name}: means within 2.5 K and highest joints within 4 K`, () => {
      const board = readBoard(readFileSync(new URL(name, folder), 'utf8'), name);
      const planName = name.replace('.board.json', '.plan.json');
      const plan = readPlan(readFileSync(new URL(planName, folder), 'utf8'), planName);
      if (!board.ok || !plan.ok) throw new Error('cannot be read');
      const [coarse, fine] = (['coarse', 'fine'] as const).map((phase) => {
        const result = evaluate(board.value, plan.value, { phase });
        if (!result.ok) throw new Error(JSON.stringify(result.problem));
        return result.value.parts;
      });
      expect(coarse!.map((one) => one.refdes)).toEqual(fine!.map((one) => one.refdes));
      const of = ({ body: { meanC }, joint }: (typeof fine & object)[number]) => ({
        mean: meanC,
        jointMax: joint.maxC,
      });
      const verify = onGrids('coarse-fine', '2 mm against 1 mm');
      const ticket = name.replace('.board.json', '');
      within(
        verify,
        ticket,
        coarse!.map((one, index) => [of(one), of(fine![index]!)]),
        2.5,
        4,
      );
      const points = (key: keyof Figures) =>
        coarse!.map((one, index): [number, number] => [of(fine![index]!)[key], of(one)[key] - of(fine![index]!)[key]]);
      verify.chart({
        title: `${ticket}: 2 mm less 1 mm`,
        x: 'on 1 mm, °C',
        y: 'K',
        series: [
          { name: 'mean of body', style: 'dots', points: points('mean') },
          { name: 'hottest joint', style: 'dots', points: points('jointMax') },
        ],
      });
    });
  }
});
