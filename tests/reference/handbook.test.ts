import { describe, expect, it } from 'vitest';
import { airConductivity, airViscosity, ZERO_CELSIUS_K } from '../../main/heat/air.ts';
import { blackRadiation, buildIdleTable, naturalConvection } from '../../main/heat/idle-film.ts';
import { arealProperties } from '../../main/heat/layers.ts';
import { jetStrength, openJetShape, plateauShape } from '../../main/heat/nozzle.ts';
import type { SceneNozzle } from '../../main/heat/scene.ts';
import type { Laminate } from '../../shared-types/board.ts';
import { createPlate, upperAt } from '../support/heat/plate.ts';
import { body } from '../unit/main/heat/support.ts';

const nozzle = (diameterM: number, standOffM: number): SceneNozzle => ({
  mouth: { shape: 'round', diameterM },
  standOffM,
  sweepRadiusM: 0,
  tiltDeg: 0,
  headingDeg: 0,
  hood: null,
});

describe('worked examples of handbooks', () => {
  it('lumped body: thermocouple bead, Incropera and DeWitt 6th ed. example 5.1: 199 °C after 5.2 s (printed, from memory)', () => {
    // rho 8500, c 400, h 400, tau 1 s: a bead of 0.706 mm, V/A = D/6, 25 -> 199 in gas of 200 °C.
    const height = 7.059e-4 / 6;
    const bead = body('bead', 0.005, 0.005, { heightM: height, volumetricHeat: 8500 * 400, jointConductance: 0 });
    const plate = createPlate({
      lengthM: 0.01,
      widthM: 0.01,
      cellM: 0.01,
      thicknessM: 0.001,
      inPlane: 1,
      throughPlane: 1,
      volumetricHeat: 1e6,
      upperFilm: 400,
      lowerFilm: 0,
      roomC: 200,
      bodies: [bead],
    });
    plate.state.entries.filmArea[0] = 1; // the bead's whole surface counts in V/A: no side walls on top of it
    plate.state.body.temperature[0] = 25;
    let seconds = 0;
    while (plate.state.body.temperature[0]! < 199) {
      plate.run(0.01, 1);
      seconds += 0.01;
    }
    expect(seconds).toBeCloseTo(5.165, 1);
  });

  it('fin: infinite copper rod, Incropera 6th ed. example 3.9: 8.3 W (printed, from memory), m = 14.178 /m', () => {
    // A strip of thickness D/2 with h on both sides has the rod's m = sqrt(4 h / k D).
    const plate = createPlate({
      lengthM: 0.4,
      widthM: 0.001,
      cellM: 0.001,
      thicknessM: 0.0025,
      inPlane: 398,
      throughPlane: 1e5,
      volumetricHeat: 3.5e6,
      upperFilm: 100,
      lowerFilm: 100,
      roomC: 25,
    });
    plate.state.zone[0] = 1; // the base: heated through a strong film, its temperature read off the first cell
    plate.moment.preheaterFilm = 2e4;
    plate.moment.preheaterC = 130;
    plate.run(2, 800);
    const base = plate.state.temperature[0]! - 25;
    for (const x of [0.05, 0.1, 0.2]) {
      expect((upperAt(plate.state, x) - 25) / base).toBeCloseTo(Math.exp(-14.178 * (x - 0.0005)), 3);
    }
    const { temperature, grid } = plate.state;
    let watts = 0;
    for (let cell = 0; cell < grid.cellCount; cell++) {
      watts += 100 * 1e-6 * (temperature[cell]! + (cell > 0 ? temperature[cell + grid.cellCount]! : 25) - 50);
    }
    // Rod over strip: perimeter pi D against 2 mm; each sheds h P theta. Scaled to a base of 100 °C.
    expect(watts * ((Math.PI * 0.005) / 0.002) * (75 / base)).toBeCloseTo(8.31, 1);
  });

  it('slab: soil after 60 days, Incropera 6th ed. example 5.6: frost at 0.68 m (printed, from memory)', () => {
    const plate = createPlate({
      lengthM: 6,
      widthM: 0.02,
      cellM: 0.02,
      thicknessM: 0.02,
      inPlane: 0.52,
      throughPlane: 1,
      volumetricHeat: 2050 * 1840,
      upperFilm: 0,
      lowerFilm: 0,
      roomC: 20,
    });
    plate.state.zone[0] = 1;
    plate.moment.preheaterFilm = 1000;
    plate.moment.preheaterC = -15;
    plate.run(600, 60 * 24 * 6);
    let x = 0.01;
    while (upperAt(plate.state, x) < 0) x += 0.001;
    expect(x - 0.01).toBeCloseTo(0.677, 2);
  });

  it('two-layer wall: series of film, body, joint, board and film', () => {
    // Handbook rule (Incropera 3.1): q = difference / sum of resistances.
    const part = body('wall', 0.005, 0.005, { jointConductance: 700, shieldResistance: 0.03 });
    const plate = createPlate({
      lengthM: 0.01,
      widthM: 0.01,
      cellM: 0.01,
      thicknessM: 0.0016,
      inPlane: 10,
      throughPlane: 0.4,
      volumetricHeat: 2e6,
      upperFilm: 80,
      lowerFilm: 0,
      roomC: 20,
      bodies: [part],
    });
    plate.state.zone[0] = 1;
    plate.moment.preheaterFilm = 25;
    plate.moment.preheaterC = 300;
    plate.run(30, 400);
    const side = 1 + (0.5 * 0.04 * 0.001) / 1e-4;
    const outer = (1 / 80 + 0.03) / side;
    const flow = 280 / (1 / 25 + 0.0008 / 0.4 + 1 / 700 + outer);
    expect(plate.state.body.temperature[0]!).toBeCloseTo(20 + flow * outer, 3);
    expect(plate.state.temperature[1]!).toBeCloseTo(300 - flow / 25, 3);
    expect(plate.state.temperature[0]!).toBeCloseTo(300 - flow * (1 / 25 + 0.002), 3);
  });

  it('natural convection and radiation: 15 x 20 cm board of 8 W, Cengel: 42.6 up, 50.7 °C down (printed, from memory)', () => {
    const length = (0.15 * 0.2) / (2 * 0.35);
    const balance = (up: boolean) => {
      let low = 20;
      let high = 120;
      for (let round = 0; round < 60; round++) {
        const middle = (low + high) / 2;
        const film = naturalConvection(middle, 20, length, up) + 0.8 * blackRadiation(middle, 20);
        if (film * (middle - 20) * 0.03 < 8) low = middle;
        else high = middle;
      }
      return low;
    };
    expect(Math.abs(balance(true) - 42.6)).toBeLessThan(0.5);
    expect(Math.abs(balance(false) - 50.7)).toBeLessThan(0.7);
  });

  it('idle film of a board (figures, section E: McAdams, emissivity 0.9, A/P 50 mm, room 25 °C)', () => {
    const table: [celsius: number, up: number, down: number][] = [
      [100, 16.1, 12.0],
      [150, 19.1, 14.5],
      [200, 22.1, 17.2],
    ];
    for (const [celsius, up, down] of table) {
      const radiated = 0.9 * blackRadiation(celsius, 25);
      expect(Math.abs(naturalConvection(celsius, 25, 0.05, true) + radiated - up)).toBeLessThan(0.25);
      expect(Math.abs(naturalConvection(celsius, 25, 0.05, false) + radiated - down)).toBeLessThan(0.25);
    }
    // A surface colder than the room swaps the two laws.
    expect(naturalConvection(5, 25, 0.05, false)).toBeGreaterThan(naturalConvection(5, 25, 0.05, true));
    expect(naturalConvection(25.01, 25, 0.05, true)).toBe(2);
  });

  it("tables of the idle film read within 0.5 W/m2 of the law's flow", () => {
    const table = buildIdleTable(25, 0.03, 3);
    for (const celsius of [26.3, 40.9, 111, 259.7, 401.2]) {
      const place = (celsius - table.firstC) / 2;
      const row = Math.floor(place);
      const read = (column: number) => {
        const low = table.rows[row * 3 + column]!;
        return low + (place - row) * (table.rows[row * 3 + 3 + column]! - low);
      };
      const rise = celsius - 25;
      expect(Math.abs(read(0) - naturalConvection(celsius, 25, 0.03, true) - 3) * rise).toBeLessThan(0.5);
      expect(Math.abs(read(1) - naturalConvection(celsius, 25, 0.03, false) - 3) * rise).toBeLessThan(0.5);
      expect(Math.abs(read(2) - blackRadiation(celsius, 25)) * rise).toBeLessThan(0.5);
    }
  });

  it('air: Incropera table A.4 (from memory): 300 K 1.846e-5, 0.0263; 500 K 2.701e-5, 0.0407', () => {
    const table: [kelvin: number, viscosity: number, conductivity: number][] = [
      [300, 1.846e-5, 0.0263],
      [400, 2.301e-5, 0.0338],
      [500, 2.701e-5, 0.0407],
    ];
    for (const [kelvin, viscosity, conductivity] of table) {
      expect(Math.abs(airViscosity(kelvin) / viscosity - 1)).toBeLessThan(0.015);
      expect(Math.abs(airConductivity(kelvin) / conductivity - 1)).toBeLessThan(0.015);
    }
  });
});

describe('jet law', () => {
  it('round jet on a disc: Incropera ch. 7 problem (from memory): Re 2198, G 0.2333, Nu 21.9', () => {
    const jet = nozzle(0.002, 0.01);
    expect(plateauShape(jet)).toBeCloseTo(0.2333, 4);
    // Flow that gives Re 2198 with the model's own air; the law's factor is then Nu / Pr^0.42 without the geometry.
    const flow = (30 * 2198) / jetStrength(jet, 150, 30).reynolds;
    const { reynolds, strength } = jetStrength(jet, 150, flow);
    expect(reynolds).toBeCloseTo(2198, 6);
    const kelvin = 150 + ZERO_CELSIUS_K;
    const conductivity = airConductivity(kelvin);
    const prandtl = (1006 * airViscosity(kelvin)) / conductivity;
    const nusselt = ((strength * plateauShape(jet) * 0.002) / conductivity / prandtl ** 0.42) * 0.704 ** 0.42;
    expect(nusselt).toBeCloseTo(21.9, 1);
  });

  it("the local film is the one whose mean over the disc is Martin's average (Martin 1977)", () => {
    const diameter = 0.01;
    for (const ratio of [2, 6, 12]) {
      const c = 0.1 * (ratio - 6);
      const average = (r: number) => ((diameter / r) * (1 - (1.1 * diameter) / r)) / (1 + (c * diameter) / r);
      let sum = average(2.5 * diameter) * (2.5 * diameter) ** 2;
      const pieces = 20000;
      const outer = 7.5 * diameter;
      for (let piece = 0; piece < pieces; piece++) {
        const r = 2.5 * diameter + ((piece + 0.5) / pieces) * (outer - 2.5 * diameter);
        sum += (openJetShape(r, diameter, c) * 2 * r * (outer - 2.5 * diameter)) / pieces;
      }
      expect(sum / outer ** 2).toBeCloseTo(average(outer), 6);
    }
  });
});

describe('laminate', () => {
  const laminate = (thicknessMm: number, layers: Laminate['layers']): Laminate => ({
    thicknessMm,
    layers,
    layersKnown: true,
  });

  it("Azar and Graebner's published example: 50 mm with 7 um of copper: 0.849 along, 0.592 through", () => {
    const found = arealProperties(laminate(50 - 1e-9, [{ kind: 'plane', copperUm: 7, coverPercent: 100 }]));
    expect(found.inPlane).toBeCloseTo(0.849, 3);
    expect(found.throughPlane).toBeCloseTo(0.5918, 3);
  });

  it('four layers of 35 um on 1.6 mm at 20/80/80/20 % (figures, E2): 16.1 W/mK along', () => {
    const copper = (kind: 'signal' | 'plane') => ({ kind, copperUm: 35 });
    const found = arealProperties(
      laminate(1.6, [copper('signal'), copper('plane'), copper('plane'), copper('signal')]),
    );
    expect(found.inPlane).toBeCloseTo(16.1, 1);
    const solid = [1, 2, 3, 4].map(() => ({ kind: 'plane' as const, copperUm: 35, coverPercent: 100 }));
    expect(arealProperties(laminate(1.6, solid)).inPlane).toBeCloseTo(31.4, 1);
  });
});
