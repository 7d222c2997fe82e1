import { describe, expect, it } from 'vitest';
import { createSimulation } from '../../main/heat/simulation.ts';
import { apply, exponential, factorise, type Matrix, zeros } from '../support/heat/dense.ts';
import { createPlate, fluxOnTop, type Plate, type PlateWish, setFaces } from '../support/heat/plate.ts';
import { type Heading, verification } from '../support/verification/record.ts';
import { bareScene, body } from '../unit/main/heat/support.ts';

const PLATE: PlateWish = {
  lengthM: 0.048,
  widthM: 0.032,
  cellM: 0.002,
  thicknessM: 0.0016,
  inPlane: 30,
  throughPlane: 0.6,
  volumetricHeat: 2.28e6,
  upperFilm: 0,
  lowerFilm: 0,
  roomC: 0,
};

const exactly = (item: Heading['item'], problem: string, source: string) =>
  verification({ topic: 'Exact solutions', item, problem, source });
/** Order of convergence between two errors, the step halved. */
const order = (coarse: number, fine: number): number => Math.log2(coarse / fine);

/** dT/dt = A T + b of everything in a plate with constant films: faces, plain entries, metal bodies as one unknown. */
function wholeSystem(plate: Plate, upperFilm: number, lowerFilm: number, sourceC: number) {
  const { grid, entries, faceCapacity, through, linkRight, linkUp, roomC, zone } = plate.state;
  const cells = grid.cellCount;
  const metal = entries.metalEnd > entries.metalStart ? 1 : 0;
  const plain = entries.count - (entries.metalEnd - entries.metalStart);
  const size = cells * 2 + plain + metal;
  const unknownOf = (entry: number) => {
    if (entry < entries.metalStart) return cells * 2 + entry;
    return entry < entries.metalEnd ? size - 1 : cells * 2 + entry - (entries.metalEnd - entries.metalStart);
  };
  const a: Matrix = zeros(size);
  const capacity = new Float64Array(size).fill(faceCapacity, 0, cells * 2);
  const b = new Float64Array(size);
  const link = (i: number, j: number, g: number) => {
    a[i]![i]! -= g;
    a[j]![j]! -= g;
    a[i]![j]! += g;
    a[j]![i]! += g;
  };
  const film = (i: number, h: number, celsius: number) => {
    a[i]![i]! -= h;
    b[i]! += h * celsius;
  };
  for (let cell = 0; cell < cells; cell++) {
    link(cell, cell + cells, through);
    for (const layer of [0, cells]) {
      if (linkRight[cell]! > 0) link(cell + layer, cell + layer + 1, linkRight[cell]!);
      if (linkUp[cell]! > 0) link(cell + layer, cell + layer + grid.columns, linkUp[cell]!);
    }
    film(cell, entries.bare[cell]! * upperFilm, roomC);
    const heated = zone[cell] === 1;
    film(
      cell + cells,
      entries.bare[cell + cells]! * (heated ? plate.moment.preheaterFilm : lowerFilm),
      heated ? sourceC : roomC,
    );
  }
  for (let entry = 0; entry < entries.count; entry++) {
    const unknown = unknownOf(entry);
    capacity[unknown]! += entries.capacity[entry]!;
    link(entries.face[entry]!, unknown, entries.joint[entry]!);
    const upper = entry < entries.upperEnd;
    const heated = !upper && zone[entries.cell[entry]!] === 1;
    const h = heated ? plate.moment.preheaterFilm : upper ? upperFilm : lowerFilm;
    const row = entries.under.entry.indexOf(entry);
    const open = row < 0 ? 1 : 1 - entries.under.share[row]!;
    const seen = (open * entries.filmArea[entry]!) / (1 / h + entries.resistance[entry]!);
    film(unknown, seen, heated ? sourceC : roomC);
  }
  const { under } = entries;
  for (let row = 0; row < under.count; row++) {
    const through = entries.filmArea[under.entry[row]!]! * under.share[row]! * under.film[row]!;
    link(unknownOf(under.entry[row]!), unknownOf(under.cover[row]!), through);
  }
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < size; j++) a[i]![j]! /= capacity[i]!;
    b[i]! /= capacity[i]!;
  }
  return { a, b, size, unknownOf };
}

describe('one cell with entries', () => {
  it('follows the matrix exponential of its four equations, to second order in the step', () => {
    const bodies = [
      body('tall', 0.0004, 0.001, { lengthM: 0.0008, widthM: 0.002, heightM: 0.006, jointConductance: 300 }),
      body('chip', 0.0015, 0.001, { lengthM: 0.001, widthM: 0.002, heightM: 0.0005, shieldResistance: 0.01 }),
    ];
    const wish = { ...PLATE, lengthM: 0.002, widthM: 0.002, upperFilm: 140, lowerFilm: 12, roomC: 25, bodies };
    const error = (dt: number) => {
      const plate = createPlate(wish);
      plate.state.zone[0] = 1;
      plate.moment.preheaterFilm = 25;
      plate.moment.preheaterC = 300;
      const { a, b, size } = wholeSystem(plate, 140, 12, 300);
      const solution = factorise(a)(b.map((value) => -value));
      const spread = exponential(a.map((row) => row.map((value) => value * 20)));
      const from = Float64Array.from({ length: size }, (_, i) => 25 - solution[i]!);
      const exact = apply(spread, from).map((value, i) => value + solution[i]!);
      plate.run(dt, 20 / dt);
      const found = [...plate.state.temperature.subarray(0, 2), ...plate.state.body.temperature];
      return Math.max(...found.map((value, i) => Math.abs(value - exact[i]!)));
    };
    const [coarse, fine] = [error(0.5), error(0.25)];
    const verify = exactly(
      'matrix-exponential',
      'One cell with a tall and a shielded part, preheater and film: four coupled equations after 20 s',
      'matrix exponential by scaling and squaring, own dense code of the tests',
    );
    verify.below('worst error, steps of 0.5 s', 'K', coarse, 0.02);
    verify.between('order in the step', '', order(coarse, fine), 1.8, 2.3);
  });
});

describe('whole plate by dense elimination', () => {
  it('24 x 16 cells with bodies on both sides and a can: within 0.2 K all along', () => {
    const bodies = [
      body('U1', 0.02, 0.016, { lengthM: 0.012, widthM: 0.01, turnDeg: 20 }),
      body('C1', 0.0351, 0.0163, { lengthM: 0.0016, widthM: 0.0008, heightM: 0.0008 }),
      body('E1', 0.04, 0.006, { lengthM: 0.006, widthM: 0.006, heightM: 0.008, jointConductance: 300, shape: 'round' }),
      body('can', 0.034, 0.019, {
        lengthM: 0.016,
        widthM: 0.014,
        shape: 'can',
        wallM: 0.0008,
        metal: true,
        heightM: 0.003,
        volumetricHeat: 4e5,
        gapConductance: 12,
      }),
      body('C9', 0.02, 0.016, { side: 'bottom', lengthM: 0.003, widthM: 0.002 }),
      body('J9', 0.01, 0.008, { side: 'bottom', lengthM: 0.009, widthM: 0.005, heightM: 0.004, jointConductance: 700 }),
    ];
    const plate = createPlate({ ...PLATE, upperFilm: 60, lowerFilm: 14, roomC: 25, bodies });
    const { grid, entries, zone } = plate.state;
    expect([grid.columns, grid.rows]).toEqual([24, 16]);
    for (let cell = 0; cell < grid.cellCount; cell++) if (cell % 24 < 15) zone[cell] = 1;
    plate.moment.preheaterFilm = 30;
    plate.moment.preheaterC = 320;
    const { a, b: hot, size, unknownOf } = wholeSystem(plate, 60, 14, 320);
    const { b: cold } = wholeSystem(plate, 60, 14, 25);
    // The source climbs from the room's 25 to 320 °C in 30 s, as a preheater's lag would let it.
    const warmth = (seconds: number) => Math.min(1, seconds / 30);
    const drive = (seconds: number, i: number) => cold[i]! + warmth(seconds) * (hot[i]! - cold[i]!);
    // L-stable two-stage scheme (Alexander 1977) with small steps: one factorisation serves all stages.
    const gamma = 1 - Math.SQRT1_2;
    const dt = 0.25;
    const solve = factorise(a.map((row, i) => row.map((value, j) => (i === j ? 1 : 0) - gamma * dt * value)));
    let exact = new Float64Array(size).fill(25);
    let worst = 0;
    const advance = (from: number, length: number, theta: number, fresh: boolean) => {
      plate.moment.preheaterC = 25 + 295 * warmth(from + length / 2);
      plate.step({ dt: length, theta, fresh });
    };
    for (let second = 0; second < 60; second++) {
      if (second < 2) {
        advance(second, 0.5, 1, second === 0);
        advance(second + 0.5, 0.5, 1, false);
      } else advance(second, 1, 0.5, false);
      for (let step = 0; step < 1 / dt; step++) {
        const at = second + step * dt;
        const before = exact;
        const first = solve(before.map((value, i) => value + gamma * dt * drive(at + gamma * dt, i)));
        const base = before.map((value, i) => value + ((1 - gamma) / gamma) * (first[i]! - value));
        exact = Float64Array.from(solve(base.map((value, i) => value + gamma * dt * drive(at + dt, i))));
      }
      for (let face = 0; face < grid.cellCount * 2; face++) {
        worst = Math.max(worst, Math.abs(plate.state.temperature[face]! - exact[face]!));
      }
      for (let entry = 0; entry < entries.count; entry++) {
        worst = Math.max(worst, Math.abs(plate.state.body.temperature[entry]! - exact[unknownOf(entry)]!));
      }
    }
    const verify = exactly(
      'dense-solve',
      '24 x 16 cells with bodies on both sides and a can, source climbing to 320 °C in 30 s: the whole system at once',
      'dense elimination in an L-stable two-stage scheme (Alexander 1977), steps of 0.25 s',
    );
    verify.below('worst difference of any face or body in 60 s', 'K', worst, 0.2);
    verify.above('spread over the plate at the end', 'K', Math.max(...exact) - Math.min(...exact), 30);
  });
});

/** Faces along one half of a plate's rows and columns: cos(pi x / L) cos(pi y / W), the slowest mode. */
function mode(plate: Plate, scale: number): void {
  const { lengthM, widthM } = PLATE;
  setFaces(plate, (x, y) => scale * Math.cos((Math.PI * x) / lengthM) * Math.cos((Math.PI * y) / widthM));
}

const FOURIER =
  'Carslaw and Jaeger 2nd ed., ch. 5 (from memory): product of cosines that fades as exp(-(a k2 + loss) t)';

/** Errors over the step on logarithmic axes, beside a line of order two through the last. */
function orderChart(title: string, x: string, points: [number, number][]) {
  const [lastX, lastError] = points.at(-1)!;
  const two = points.map(([at]): [number, number] => [at, lastError * (at / lastX) ** 2]);
  return {
    ...{ title, x, y: 'K', log: true },
    series: [
      { name: 'order 2', style: 'line' as const, points: two },
      { name: 'program', style: 'dots' as const, points },
    ],
  };
}

describe('Fourier modes of a rectangle (Carslaw and Jaeger 2nd ed., ch. 5)', () => {
  const diffusivity = PLATE.inPlane / PLATE.volumetricHeat;
  const waves = (Math.PI / PLATE.lengthM) ** 2 + (Math.PI / PLATE.widthM) ** 2;
  const loss = 40 / (PLATE.volumetricHeat * PLATE.thicknessM);

  /** Worst error after 10 s against the exact decay, films on both sides. */
  function errorOnGrid(cellM: number, dt: number): number {
    const plate = createPlate({ ...PLATE, cellM, upperFilm: 20, lowerFilm: 20 });
    mode(plate, 100);
    const from = plate.state.temperature.slice();
    plate.run(dt, 10 / dt);
    const decay = Math.exp(-(diffusivity * waves + loss) * 10);
    let worst = 0;
    for (let face = 0; face < plate.state.grid.cellCount * 2; face++) {
      worst = Math.max(worst, Math.abs(plate.state.temperature[face]! - decay * from[face]!));
    }
    return worst;
  }

  it('space: order 2.0 +- 0.1, and 0.05 K of 100 on 1 mm', () => {
    const [four, two, one] = [errorOnGrid(0.004, 0.02), errorOnGrid(0.002, 0.02), errorOnGrid(0.001, 0.02)];
    const verify = exactly('fourier', 'Slowest mode of a rectangle with loss: order in space', FOURIER);
    verify.near('order, 4 mm to 2 mm', '', order(four!, two!), 2, 0.1);
    verify.near('order, 2 mm to 1 mm', '', order(two!, one!), 2, 0.1);
    verify.below('worst error of 100 K on 1 mm', 'K', one!, 0.05);
    verify.chart(
      orderChart('Error over the size of a cell', 'mm', [
        [4, four!],
        [2, two!],
        [1, one!],
      ]),
    );
  });

  it('time: order 2.0 +- 0.1 against the decay on the same grid, and 0.1 K of 100 at 0.5 s', () => {
    const { cellM, lengthM, widthM } = PLATE;
    const onGrid = (length: number) => ((2 / cellM) * Math.sin((Math.PI * cellM) / (2 * length))) ** 2;
    const decay = Math.exp(-(diffusivity * (onGrid(lengthM) + onGrid(widthM)) + loss) * 10);
    const error = (dt: number) => {
      const plate = createPlate({ ...PLATE, upperFilm: 20, lowerFilm: 20 });
      mode(plate, 100);
      const corner = plate.state.temperature[0]!;
      plate.run(dt, 10 / dt);
      return Math.abs(plate.state.temperature[0]! - decay * corner);
    };
    const errors = [0.5, 0.25, 0.125].map(error);
    const verify = exactly('fourier', 'Slowest mode of a rectangle with loss: order in time', FOURIER);
    verify.near('order, 0.5 s to 0.25 s', '', order(errors[0]!, errors[1]!), 2, 0.1);
    verify.near('order, 0.25 s to 0.125 s', '', order(errors[1]!, errors[2]!), 2, 0.1);
    verify.below('error of 100 K at steps of 0.5 s', 'K', errors[0]!, 0.1);
    verify.chart(
      orderChart('Error over the step', 's', [
        [0.5, errors[0]!],
        [0.25, errors[1]!],
        [0.125, errors[2]!],
      ]),
    );
  });
});

describe('manufactured solution with a source', () => {
  /** T = t cos(pi x / L) on both faces needs the flux C dT/dt - k t d2T/dx2 + h T; the flux is renewed in mid-step. */
  function error(cellM: number, dt: number): number {
    const { lengthM, inPlane, thicknessM, volumetricHeat } = PLATE;
    const plate = createPlate({ ...PLATE, widthM: 0.004, cellM, throughPlane: 1e6, lowerFilm: 30 });
    const { columns } = plate.state.grid;
    const wave = Math.PI / lengthM;
    const capacity = volumetricHeat * thicknessM;
    const shape = (cell: number) => Math.cos(wave * ((cell % columns) + 0.5) * cellM);
    const steps = 12 / dt;
    for (let step = 0; step < steps; step++) {
      const middle = (step + 0.5) * dt;
      const flux = capacity + (inPlane * thicknessM * wave ** 2 + 30) * middle;
      // Shifted by a constant so that the flux is positive everywhere; the shift is taken off again below.
      fluxOnTop(plate, (cell) => 1e6 + flux * shape(cell));
      plate.step({ dt, theta: 0.5, fresh: step === 0 });
    }
    const even = createPlate({ ...PLATE, widthM: 0.004, cellM, throughPlane: 1e6, lowerFilm: 30 });
    fluxOnTop(even, () => 1e6);
    for (let step = 0; step < steps; step++) even.step({ dt, theta: 0.5, fresh: step === 0 });
    let worst = 0;
    for (let cell = 0; cell < columns; cell++) {
      const found = plate.state.temperature[cell]! - even.state.temperature[cell]!;
      worst = Math.max(worst, Math.abs(found - 12 * shape(cell)));
    }
    return worst;
  }

  it('converges at order 2.0 +- 0.1 to within 0.03 K of 12', () => {
    const errors = [error(0.002, 0.2), error(0.001, 0.1), error(0.0005, 0.05)];
    const verify = exactly(
      'manufactured',
      'T = t cos(pi x / L) with the source it needs, cell and step halved together',
      'method of manufactured solutions',
    );
    verify.below('worst error of 12 K, 1 mm and 0.1 s', 'K', errors[1]!, 0.03);
    verify.near('order, 2 mm to 1 mm', '', order(errors[0]!, errors[1]!), 2, 0.1);
    verify.near('order, 1 mm to 0.5 mm', '', order(errors[1]!, errors[2]!), 2, 0.1);
    verify.chart(
      orderChart('Error over the size of a cell', 'mm', [
        [2, errors[0]!],
        [1, errors[1]!],
        [0.5, errors[2]!],
      ]),
    );
  });
});

describe('the whole model with its films', () => {
  it('converges at order 2.0 +- 0.15 in the step (self-convergence, jet, preheater, bodies)', () => {
    const bodies = [
      body('U1', 0.03, 0.02, { lengthM: 0.012, widthM: 0.012 }),
      body('C1', 0.042, 0.02, { lengthM: 0.003, widthM: 0.003, heightM: 0.004, jointConductance: 300 }),
    ];
    const scene = bareScene({
      bodies,
      entrainedC: 50,
      nozzle: {
        mouth: { shape: 'round', diameterM: 0.008 },
        standOffM: 0.012,
        sweepRadiusM: 0,
        tiltDeg: 0,
        headingDeg: 0,
        hood: null,
      },
      preheater: { xM: 0.03, yM: 0.02, lengthM: 0.05, widthM: 0.03, turnDeg: 0, film: 25, lagS: 40, sensor: null },
      segments: [
        {
          name: 'gas',
          seconds: 16,
          preheaterStartC: 200,
          preheaterEndC: 300,
          gas: { startC: 250, endC: 340, flowStart: 40, flowEnd: 40 },
          nozzleXM: 0.03,
          nozzleYM: 0.02,
        },
      ],
    });
    const end = (stepS: number) => {
      const simulation = createSimulation(scene, 0.002, stepS);
      simulation.advance(simulation.stepCount);
      const { temperature, body: entries } = simulation.state;
      return [...temperature.subarray(0, 1200), ...entries.temperature];
    };
    const runs = [1, 0.5, 0.25, 0.125].map(end);
    const difference = (i: number) => Math.hypot(...runs[i]!.map((value, k) => value - runs[i + 1]![k]!));
    const verify = exactly(
      'manufactured',
      'The whole model (jet, preheater, films of the moment, bodies) against itself with finer steps',
      'self-convergence',
    );
    verify.near('order in the step', '', order(difference(1), difference(2)), 2, 0.15);
    const off = Math.max(...runs[1]!.map((value, k) => Math.abs(value - runs[3]![k]!)));
    verify.below('0.5 s against 0.125 s, at worst', 'K', off, 0.1);
  });
});
