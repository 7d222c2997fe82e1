// Speed of the time stepping, as ratios within one run: npm run bench:heat. It prints, and never fails for wall time.
import { join, resolve } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { bundled } from './bundled.mjs';
import { dragFigures } from './drag.mjs';

const root = resolve(process.env.HEAT_ROOT ?? join(import.meta.dirname, '../..'));
const from = (file) => JSON.stringify(join(root, 'main/heat', file));
const { createState, createStepper, createSimulation, initialMoment, nozzleFootprint } = await bundled(`
export { createState } from ${from('heat-state.ts')};
export { createStepper } from ${from('stepping.ts')};
export { createSimulation } from ${from('simulation.ts')};
export { initialMoment } from ${from('moment.ts')};
export { nozzleFootprint } from ${from('nozzle.ts')};
`);

const CELL_M = 0.001;
const STEP_S = 0.5;
/** What the scheme must touch in a step: four layers in three sub-steps. */
const LAYERS = 4;
const PASSES = 3;

/** A body every 6 mm on both sides, an array part in the middle, two cans: about a third of the board is covered. */
function bodiesOf(widthM, heightM) {
  const plain = { turnDeg: 0, shape: 'rect', wallM: 0, gapConductance: 0, conductivity: 0.9, emissivity: 0.9 };
  const bare = { shieldResistance: 0, shieldArealHeat: 0, metal: false, volumetricHeat: 2e6, jointConductance: 20000 };
  const trialShield = { resistance: 0.02, arealHeat: 300, emissivity: 0.1 };
  const bodies = [];
  const put = (xM, yM, lengthM, widthOfIt, more) =>
    bodies.push({
      ...plain,
      ...bare,
      id: `B${bodies.length}`,
      side: 'top',
      xM,
      yM,
      lengthM,
      widthM: widthOfIt,
      heightM: 0.001,
      trialShield,
      ...more,
    });
  put(widthM / 2, heightM / 2, 0.021, 0.021, { heightM: 0.0016 });
  let place = 0;
  for (let yM = 0.004; yM < heightM - 0.002; yM += 0.006) {
    for (let xM = 0.004; xM < widthM - 0.002; xM += 0.006) {
      place++;
      const side = place % 2 ? 'top' : 'bottom';
      if (place % 97 === 5) put(xM, yM, 0.01, 0.008, { side, metal: true, trialShield: null, emissivity: 0.1 });
      else put(xM, yM, place % 5 ? 0.0032 : 0.006, place % 3 ? 0.0016 : 0.004, { side });
    }
  }
  return bodies;
}

function sceneOf(columns, rows) {
  const [widthM, heightM] = [columns * CELL_M, rows * CELL_M];
  const outline = [
    [0, 0],
    [widthM, 0],
    [widthM, heightM],
    [0, heightM],
  ];
  return {
    ...{ roomC: 23, entrainedC: 60, workedSide: 'top', fumeFilm: 3, bodies: bodiesOf(widthM, heightM) },
    board: {
      ...{ outlines: [outline], cutouts: [], thicknessM: 0.0016, volumetricHeat: 2.2e6 },
      ...{ inPlane: 18, throughPlane: 0.6, emissivity: 0.9 },
    },
    nozzle: {
      ...{ mouth: { shape: 'round', diameterM: 0.01 }, standOffM: 0.012, sweepRadiusM: 0.005 },
      ...{ tiltDeg: 0, headingDeg: 0, hood: null },
    },
    preheater: {
      ...{ xM: widthM / 2, yM: heightM / 2, lengthM: widthM / 2, widthM: heightM / 2, turnDeg: 0 },
      ...{ film: 25, lagS: 40, sensor: null },
    },
    segments: [
      {
        ...{ name: 'Gas', seconds: 600, preheaterStartC: 200, preheaterEndC: 220 },
        gas: { startC: 250, endC: 340, flowStart: 40, flowEnd: 40 },
        ...{ nozzleXM: widthM / 2, nozzleYM: heightM / 2 },
      },
    ],
  };
}

/** Least of some rounds: what disturbs a round only ever makes it longer. */
function least(rounds, work) {
  let best = Number.POSITIVE_INFINITY;
  for (let round = 0; round < rounds; round++) {
    const started = performance.now();
    work();
    best = Math.min(best, performance.now() - started);
  }
  return best;
}

const perCell = (ms, cells, steps) => (ms * 1e6) / cells / steps;

/** Nanoseconds per cell and step: the scheme alone with films on, the same with tracking, and copying what it touches. */
function costs(columns, rows, steps, rounds) {
  const scene = sceneOf(columns, rows);
  const cells = columns * rows;
  const state = createState(scene, CELL_M);
  const stepper = createStepper(state);
  const footprint = nozzleFootprint(
    scene.nozzle,
    [scene.segments[0].nozzleXM, scene.segments[0].nozzleYM],
    state.grid,
    null,
  );
  const blown = { ...initialMoment(scene), strength: 1500, strengthAtEnd: 1500, gasC: 300, gasAtEndC: 300, footprint };
  const moment = { ...blown, preheaterC: 210, sourceC: 210 };
  const sub = { dt: STEP_S, theta: 0.5, fresh: false };
  const run = (count) => {
    for (let step = 0; step < count; step++) stepper.step(moment, sub);
  };
  const touched = Array.from({ length: LAYERS }, () => [new Float64Array(cells), new Float64Array(cells).fill(20)]);
  const copy = (count) => {
    for (let pass = 0; pass < count * PASSES; pass++) for (const [into, out] of touched) into.set(out);
  };
  run(steps);
  copy(steps);
  let scheme = Number.POSITIVE_INFINITY;
  let copied = Number.POSITIVE_INFINITY;
  // Turn by turn, so that both see the machine in the same state.
  for (let round = 0; round < rounds; round++) {
    scheme = Math.min(
      scheme,
      least(1, () => run(steps)),
    );
    copied = Math.min(
      copied,
      least(1, () => copy(steps)),
    );
  }
  const simulation = createSimulation(scene, CELL_M, STEP_S);
  simulation.advance(steps);
  const whole = least(Math.min(rounds, Math.floor((simulation.stepCount - steps) / steps)), () =>
    simulation.advance(steps),
  );
  return {
    ...{ cells, entries: state.entries.count, scheme: perCell(scheme, cells, steps) },
    ...{ copied: perCell(copied, cells, steps), whole: perCell(whole, cells, steps) },
  };
}

function printCosts() {
  const sizes = [
    [100, 50, 120],
    [200, 100, 40],
    [400, 200, 12],
    [800, 500, 4],
  ];
  // So many rounds of the small ones that the kernels are compiled for good, in the background, before the last.
  const found = sizes.map(([columns, rows, steps]) => costs(columns, rows, steps, 9 + steps / 2));
  for (const { cells, entries, scheme, copied, whole } of found) {
    console.log(
      `${cells} cells, ${entries} entries: ${scheme.toFixed(1)} ns per cell and step, ${(scheme / copied).toFixed(1)} times ` +
        `copying what it touches (${copied.toFixed(2)} ns); with tracking ${whole.toFixed(1)} ns, ${(whole / copied).toFixed(1)} times`,
    );
  }
  const [first, last] = [found[0], found.at(-1)];
  const rise = (figure) => 1 + Math.log(last[figure] / first[figure]) / Math.log(last.cells / first.cells);
  console.log(
    `growth from ${first.cells} to ${last.cells} cells: exponent ${rise('scheme').toFixed(3)}, with tracking ${rise('whole').toFixed(3)} (goal 1.1)`,
  );
}

/** Bytes that the heap grows by in a step before any is collected: least of some rounds, what else goes on only adds to it. */
function printAllocation() {
  setFlagsFromString('--expose-gc');
  const collect = runInNewContext('gc');
  const simulation = createSimulation(sceneOf(100, 60), CELL_M, STEP_S);
  simulation.advance(200);
  const rounds = 8;
  const steps = 100;
  collect();
  const before = process.memoryUsage();
  let young = Number.POSITIVE_INFINITY;
  for (let round = 0; round < rounds; round++) {
    const { heapUsed } = process.memoryUsage();
    simulation.advance(steps);
    const grown = process.memoryUsage().heapUsed - heapUsed;
    if (grown >= 0) young = Math.min(young, grown);
  }
  collect();
  const after = process.memoryUsage();
  console.log(
    `allocation: ${(young / steps).toFixed(0)} bytes a step at best of ${rounds} rounds of ${steps} steps; ` +
      `${after.heapUsed - before.heapUsed} bytes kept, ${after.arrayBuffers - before.arrayBuffers} bytes of arrays`,
  );
}

printCosts();
printAllocation();
if (!process.argv.includes('--steps')) {
  console.log(`${await dragFigures('greenhouse-gateway')} (goal 300 ms)`);
  console.log(`${await dragFigures('signal-card')} (goal 1000 ms)`);
}
process.exit(0);
