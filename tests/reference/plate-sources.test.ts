import { describe, expect, it } from 'vitest';
import { createPlate, fluxOnTop, type PlateWish, setFaces, storedHeat, upperAt } from '../support/heat/plate.ts';

/**
 * Thin infinite plates. One quarter is computed: the source stands in the corner (0, 0), whose borders pass no heat.
 * Plate of the tables: k 20 W/mK, 1.6 mm, rho c 2.28 MJ/m3K.
 */
const PLATE: PlateWish = {
  lengthM: 0.16,
  widthM: 0.16,
  cellM: 0.001,
  thicknessM: 0.0016,
  inPlane: 20,
  throughPlane: 1000,
  volumetricHeat: 2.28e6,
  upperFilm: 0,
  lowerFilm: 0,
  roomC: 0,
};

describe('sources on a thin plate', () => {
  it('disc source with loss: Bessel solution (Carslaw and Jaeger 2nd ed., 10.5; table recomputed in the figures)', () => {
    const plate = createPlate({ ...PLATE, lowerFilm: 25 });
    const radius = 0.0125;
    const flux = 10 / (Math.PI * radius ** 2);
    const { columns, cellM } = plate.state.grid;
    const share = (cell: number) => {
      let inside = 0;
      for (let a = 0; a < 8; a++) {
        for (let b = 0; b < 8; b++) {
          const x = ((cell % columns) + (a + 0.5) / 8) * cellM;
          const y = (Math.floor(cell / columns) + (b + 0.5) / 8) * cellM;
          if (Math.hypot(x, y) <= radius) inside++;
        }
      }
      return inside / 64;
    };
    const shares = Float64Array.from({ length: plate.state.grid.cellCount }, (_, cell) => share(cell));
    fluxOnTop(plate, (cell) => flux * shares[cell]!);
    plate.run(20, 40);
    const table: [r: number, kelvin: number][] = [
      [0, 84.78],
      [0.005, 81.21],
      [0.0125, 62.33],
      [0.0163, 50.62],
      [0.02, 42.09],
      [0.03, 26.93],
      [0.05, 12.34],
    ];
    for (const [r, kelvin] of table) expect(Math.abs(upperAt(plate.state, r) - kelvin), `r ${r}`).toBeLessThan(0.25);
  });

  /** A line source of `watts`: its quarter enters the corner cell. */
  function lineSource(watts: number, loss: number) {
    const plate = createPlate({ ...PLATE, lowerFilm: loss });
    const { cellM } = plate.state.grid;
    fluxOnTop(plate, (cell) => (cell === 0 ? watts / 4 / cellM ** 2 : 0));
    return plate;
  }

  it('line source without loss: E1 solution (Carslaw and Jaeger, 10.4)', () => {
    const plate = lineSource(10, 0);
    const expected: [seconds: number, kelvin: number][] = [
      [30, 18.33],
      [60, 31.45],
      [120, 46.49],
    ];
    let at = 0;
    for (const [seconds, kelvin] of expected) {
      plate.run(0.5, (seconds - at) * 2);
      at = seconds;
      expect(Math.abs(upperAt(plate.state, 0.02) - kelvin), `${seconds} s`).toBeLessThan(0.12);
    }
  });

  it("line source with loss: Hantush's leaky-aquifer function (Hantush 1956)", () => {
    // Loss and time are chosen so that u = r^2 / 4at and mr take the tabled arguments at r = 20 mm.
    const r = 0.02;
    const diffusivity = PLATE.inPlane / PLATE.volumetricHeat;
    const sheet = PLATE.inPlane * PLATE.thicknessM;
    const table: [u: number, mr: number, W: number][] = [
      [0.1, 0.5, 1.4422],
      [0.1, 1, 0.819],
      [1, 1, 0.1855],
    ];
    for (const [u, mr, W] of table) {
      const plate = lineSource(10, (mr / r) ** 2 * sheet);
      const seconds = r ** 2 / (4 * diffusivity * u);
      const steps = Math.round(seconds / 0.4);
      plate.run(seconds / steps, steps);
      const exact = (10 / (4 * Math.PI * sheet)) * W;
      expect(Math.abs(upperAt(plate.state, r) - exact), `W(${u}, ${mr})`).toBeLessThan(0.01 * exact + 0.02);
    }
  });

  it('instantaneous line source: Gaussian spread (Carslaw and Jaeger, 10.3), heat kept to 1e-9', () => {
    const plate = createPlate(PLATE);
    const { cellM, cellCount } = plate.state.grid;
    plate.state.temperature[0] = 25 / (PLATE.volumetricHeat * PLATE.thicknessM * cellM ** 2);
    plate.state.temperature[cellCount] = plate.state.temperature[0]!;
    const expected: [seconds: number, kelvin: number][] = [
      [30, 5.669],
      [60, 3.428],
      [120, 1.885],
    ];
    let at = 0;
    for (const [seconds, kelvin] of expected) {
      plate.run(0.25, (seconds - at) * 4);
      at = seconds;
      expect(Math.abs(upperAt(plate.state, 0.02) - kelvin), `${seconds} s`).toBeLessThan(0.01 * kelvin);
    }
    expect(Math.abs(storedHeat(plate.state, 0) / 25 - 1)).toBeLessThan(1e-9);
  });

  it('a Gaussian stays one: variance grows by 2 a t each way', () => {
    const plate = createPlate({ ...PLATE, lengthM: 0.12, widthM: 0.12 });
    const start = 0.01;
    const shape = (variance: number, x: number, y: number) =>
      ((100 * start ** 2) / variance) * Math.exp(-(x * x + y * y) / (2 * variance));
    setFaces(plate, (x, y) => shape(start ** 2, x, y));
    plate.run(0.5, 40);
    const variance = start ** 2 + 2 * (PLATE.inPlane / PLATE.volumetricHeat) * 20;
    for (const column of [0, 5, 12, 25, 40]) {
      const x = (column + 0.5) * 0.001;
      expect(Math.abs(plate.state.temperature[column]! - shape(variance, x, 0.0005))).toBeLessThan(0.05);
    }
  });
});
