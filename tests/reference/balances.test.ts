import { describe, expect, it } from 'vitest';
import { createState } from '../../main/heat/heat-state.ts';
import { initialMoment, setMoment } from '../../main/heat/moment.ts';
import { nozzleFootprint } from '../../main/heat/nozzle.ts';
import type { HeatScene } from '../../main/heat/scene.ts';
import { planSteps } from '../../main/heat/step-plan.ts';
import { createStepper } from '../../main/heat/stepping.ts';
import { createPlate, setFaces, storedHeat } from '../support/heat/plate.ts';
import { verification } from '../support/verification/record.ts';
import { bareScene, body } from '../unit/main/heat/support.ts';

const BODIES = [
  body('U1', 0.03, 0.02, { lengthM: 0.012, widthM: 0.01, turnDeg: 30 }),
  body('C1', 0.0371, 0.0205, { lengthM: 0.0016, widthM: 0.0008, shieldResistance: 0.02, shieldArealHeat: 150 }),
  body('can', 0.045, 0.02, {
    lengthM: 0.012,
    widthM: 0.02,
    shape: 'can',
    wallM: 0.001,
    metal: true,
    heightM: 0.003,
    gapConductance: 12,
  }),
  body('under', 0.0455, 0.0203, { lengthM: 0.004, widthM: 0.003, heightM: 0.0012, shieldArealHeat: 50 }),
  body('frame', 0.043, 0.022, {
    lengthM: 0.01,
    widthM: 0.01,
    shape: 'frame',
    wallM: 0.001,
    metal: true,
    heightM: 0.002,
  }),
  body('C9', 0.031, 0.02, { side: 'bottom', lengthM: 0.003, widthM: 0.002 }),
  body('S9', 0.02, 0.02, {
    side: 'bottom',
    lengthM: 0.02,
    widthM: 0.02,
    metal: true,
    heightM: 0.001,
    jointConductance: 1500,
  }),
];

const SCENE: HeatScene = bareScene({
  bodies: BODIES,
  entrainedC: 50,
  nozzle: {
    mouth: { shape: 'round', diameterM: 0.008 },
    standOffM: 0.012,
    sweepRadiusM: 0.003,
    tiltDeg: 10,
    headingDeg: 40,
    hood: null,
  },
  preheater: { xM: 0.03, yM: 0.02, lengthM: 0.04, widthM: 0.03, turnDeg: 0, film: 25, lagS: 40, sensor: null },
  segments: [
    { name: 'warm', seconds: 40, preheaterStartC: 25, preheaterEndC: 300, gas: null, nozzleXM: 0.03, nozzleYM: 0.02 },
    {
      name: 'gas',
      seconds: 40,
      preheaterStartC: 300,
      preheaterEndC: 300,
      gas: { startC: 250, endC: 340, flowStart: 40, flowEnd: 40 },
      nozzleXM: 0.03,
      nozzleYM: 0.02,
    },
  ],
});

describe('energy', () => {
  it('is kept to 1e-9 with films off, through joints, metal bodies and between the faces', () => {
    const plate = createPlate({
      lengthM: 0.06,
      widthM: 0.04,
      cellM: 0.002,
      thicknessM: 0.0016,
      inPlane: 16,
      throughPlane: 0.6,
      volumetricHeat: 2.28e6,
      upperFilm: 0,
      lowerFilm: 0,
      roomC: 25,
      bodies: BODIES.map((one) => ({ ...one, shieldResistance: 0 })),
    });
    setFaces(plate, (x, y) => 25 + 200 * Math.exp(-((x - 0.02) ** 2 + (y - 0.01) ** 2) / 1e-4));
    const before = storedHeat(plate.state, 0);
    plate.run(1, 200);
    const verify = verification({
      ...{
        topic: 'Balances',
        item: 'energy-off',
        problem: 'Heat is kept with films off: joints, metal bodies, a part under a can, both faces',
      },
      source: 'conservation of energy',
    });
    verify.ratio('stored heat after 200 s', 'J', storedHeat(plate.state, 0), before, 1e-9);
    const { temperature, body: entries } = plate.state;
    const spread = Math.max(...temperature.subarray(0, 1200)) - Math.min(...temperature.subarray(0, 1200));
    expect(spread).toBeLessThan(40);
    expect(entries.temperature.every((celsius) => celsius > 25)).toBe(true);
  });

  it('stored equals the integral of the flows to 1e-6 with films on', () => {
    const state = createState(SCENE, 0.002);
    const { grid, entries, body: bodies } = state;
    const faces = grid.cellCount * 2;
    const bareFilm = new Float64Array(faces);
    let flows = 0;
    const stepper = createStepper(state, (sub) => {
      // In each cell's rate the lateral flows and those between faces cancel in the sum: films are left.
      for (let face = 0; face < faces; face++) {
        bareFilm[face] = state.diagonal[face]!;
        flows += sub.dt * state.rate[face]!;
      }
    });
    const moment = initialMoment(SCENE);
    const start = storedHeat(state, 0);
    for (const step of planSteps(SCENE, 1)) {
      const segment = SCENE.segments[step.segment]!;
      moment.footprint = segment.gas ? nozzleFootprint(SCENE.nozzle!, [0.03, 0.02], grid) : null;
      setMoment(moment, SCENE, state, segment, step.middleS, step.dt);
      stepper.step(moment, step);
      for (let face = 0; face < faces; face++) {
        flows -= step.dt * step.theta * bareFilm[face]! * (state.temperature[face]! - state.before[face]!);
      }
      for (let entry = 0; entry < entries.count; entry++) {
        const mean = bodies.before[entry]! + step.theta * (bodies.temperature[entry]! - bodies.before[entry]!);
        flows += step.dt * (bodies.outerSource[entry]! - bodies.outer[entry]! * mean);
      }
    }
    const stored = storedHeat(state, 0) - start;
    const verify = verification({
      ...{
        topic: 'Balances',
        item: 'energy-on',
        problem: 'Stored heat is the integral of the flows: jet, preheater, shield, can, idle films',
      },
      source: 'conservation of energy',
    });
    verify.ratio('integral of the flows against stored heat', 'J', flows * grid.cellM ** 2, stored, 1e-6);
    verify.above('stored heat', 'J', stored, 500);
  });

  it('flows from hot to cold: films heat a colder board and cool a hotter one', () => {
    const state = createState(bareScene(), 0.002);
    const stepper = createStepper(state);
    const moment = initialMoment(bareScene());
    const shift = (celsius: number) => {
      state.temperature.fill(celsius);
      state.before.fill(celsius);
      for (let step = 0; step < 5; step++) stepper.step(moment, { dt: 1, theta: 0.5, fresh: step === 0 });
      return [state.temperature[300]! - celsius, state.temperature[300 + 600]! - celsius];
    };
    for (const change of shift(200)) expect(change).toBeLessThan(-1);
    for (const change of shift(5)) expect(change).toBeGreaterThan(0.02);
    // The upper face of a hot board sheds more than the lower one; of a cold one the lower takes up more.
    expect(shift(200)[0]!).toBeLessThan(shift(200)[1]!);
    expect(shift(-30)[0]!).toBeLessThan(shift(-30)[1]!);
  });
});
