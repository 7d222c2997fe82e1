import { describe, it } from 'vitest';
import { createPlate, fluxOnTop, type PlateWish, setFaces, storedHeat, upperAt } from '../support/heat/plate.ts';
import { besselI0, besselI1, besselK0, besselK1, hantush } from '../support/verification/bessel.ts';
import { type Heading, verification } from '../support/verification/record.ts';

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

const problem = (item: Heading['item'], name: string, source: string) =>
  verification({ topic: 'Sources on a plate', item, problem: name, source });
const COMPUTED = 'Carslaw and Jaeger, Conduction of heat in solids, 2nd ed.';
const curve = (of: (x: number) => number, from: number, to: number): [number, number][] =>
  Array.from({ length: 60 }, (_, i) => from + ((to - from) * i) / 59).map((x) => [x, of(x)]);

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
    const verify = problem(
      'disc-source',
      'Disc of 10 W, radius 12.5 mm, on an infinite plate with loss, steady',
      `${COMPUTED}, 10.5 (from memory); table computed independently of the program, and again here from the Bessel integrals`,
    );
    const m = Math.sqrt(25 / (20 * 0.0016));
    const edge = m * radius;
    const exact = (r: number) =>
      (flux / 25) *
      (r < radius ? 1 - edge * besselK1(edge) * besselI0(m * r) : edge * besselI1(edge) * besselK0(m * r));
    for (const [r, kelvin] of table) {
      verify.near(`rise at r = ${Math.round(r * 1e4) / 10} mm`, 'K', upperAt(plate.state, r), kelvin, 0.25);
    }
    const spread = table.map(([r, kelvin]) => Math.abs(exact(r) - kelvin));
    verify.below('the table against the integrals, at worst', 'K', Math.max(...spread), 0.006);
    verify.chart({
      title: 'Rise over the room along the radius',
      x: 'r, mm',
      y: 'K',
      series: [
        { name: 'exact', style: 'line', points: curve((mm) => exact(mm / 1000), 0, 60) },
        {
          name: 'program, 1 mm cells',
          style: 'dots',
          points: curve((mm) => mm, 0.5, 60).map(([mm]) => [mm, upperAt(plate.state, mm / 1000)]),
        },
      ],
    });
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
    const verify = problem(
      'line-source',
      'Line source of 10 W without loss, at r = 20 mm',
      `${COMPUTED}, 10.4 (from memory); E1 computed independently`,
    );
    let at = 0;
    const seen: [number, number][] = [];
    for (const [seconds, kelvin] of expected) {
      while (at < seconds) {
        plate.run(0.5, 10);
        at += 5;
        seen.push([at, upperAt(plate.state, 0.02)]);
      }
      verify.near(`rise after ${seconds} s`, 'K', upperAt(plate.state, 0.02), kelvin, 0.12);
    }
    const diffusivity = PLATE.inPlane / PLATE.volumetricHeat;
    const scale = 10 / (4 * Math.PI * PLATE.inPlane * PLATE.thicknessM);
    verify.chart({
      title: 'Rise at 20 mm in time',
      x: 's',
      y: 'K',
      series: [
        {
          name: 'exact (E1)',
          style: 'line',
          points: curve((s) => scale * hantush(0.02 ** 2 / (4 * diffusivity * s), 0), 3, 120),
        },
        { name: 'program', style: 'dots', points: seen },
      ],
    });
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
    const verify = problem(
      'hantush',
      'Line source of 10 W with loss, at r = 20 mm',
      'Hantush 1956, well function of a leaky aquifer (the same equation); values computed independently and from the integral',
    );
    for (const [u, mr, W] of table) {
      verify.near(`W(${u}, ${mr}), table against integral`, '', hantush(u, mr), W, 1e-4);
      const plate = lineSource(10, (mr / r) ** 2 * sheet);
      const seconds = r ** 2 / (4 * diffusivity * u);
      const steps = Math.round(seconds / 0.4);
      plate.run(seconds / steps, steps);
      const exact = (10 / (4 * Math.PI * sheet)) * W;
      verify.near(`rise where W(${u}, ${mr})`, 'K', upperAt(plate.state, r), exact, 0.01 * exact + 0.02);
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
    const verify = problem(
      'gaussian',
      'Instantaneous line source of 100 J, at r = 20 mm',
      `${COMPUTED}, 10.3 (from memory)`,
    );
    let at = 0;
    for (const [seconds, kelvin] of expected) {
      plate.run(0.25, (seconds - at) * 4);
      at = seconds;
      verify.ratio(`rise after ${seconds} s`, 'K', upperAt(plate.state, 0.02), kelvin, 0.01);
    }
    verify.ratio('heat kept in a quarter', 'J', storedHeat(plate.state, 0), 25, 1e-9);
  });

  it('a Gaussian stays one: variance grows by 2 a t each way', () => {
    const plate = createPlate({ ...PLATE, lengthM: 0.12, widthM: 0.12 });
    const start = 0.01;
    const shape = (variance: number, x: number, y: number) =>
      ((100 * start ** 2) / variance) * Math.exp(-(x * x + y * y) / (2 * variance));
    setFaces(plate, (x, y) => shape(start ** 2, x, y));
    plate.run(0.5, 40);
    const variance = start ** 2 + 2 * (PLATE.inPlane / PLATE.volumetricHeat) * 20;
    const verify = problem(
      'gaussian',
      'A Gaussian of 10 mm spreads for 20 s',
      `${COMPUTED}, 10.3: variance grows by 2 a t`,
    );
    const places = Array.from({ length: 24 }, (_, i) => 2 * i);
    for (const column of [0, 5, 12, 25, 40]) {
      const x = (column + 0.5) * 0.001;
      verify.near(`at ${column + 0.5} mm`, 'K', plate.state.temperature[column]!, shape(variance, x, 0.0005), 0.05);
    }
    verify.chart({
      title: 'After 20 s, beside its start',
      x: 'mm',
      y: 'K',
      series: [
        { name: 'exact after 20 s', style: 'line', points: curve((mm) => shape(variance, mm / 1000, 0), 0, 50) },
        { name: 'start', style: 'line', points: curve((mm) => shape(start ** 2, mm / 1000, 0), 0, 50) },
        {
          name: 'program',
          style: 'dots',
          points: places.map((column) => [column + 0.5, plate.state.temperature[column]!]),
        },
      ],
    });
  });

  it('edge held hot: K0 decay of the excess (fin equation of a plate)', () => {
    const verify = problem(
      'edge-held',
      'Plate with loss outside an edge of radius 12.5 mm that is held',
      `${COMPUTED} (from memory): K0(mr)/K0(ma); table computed independently`,
    );
    const held = 0.0125;
    const boards: [name: string, k: number, t: number, h: number, shares: number[]][] = [
      ['k 10, 1.6 mm, h 20', 10, 0.0016, 20, [0.733, 0.554, 0.332, 0.207]],
      ['k 20, 1.6 mm, h 25', 20, 0.0016, 25, [0.764, 0.6, 0.39, 0.262]],
      ['k 60, 0.8 mm, h 25', 60, 0.0008, 25, [0.787, 0.636, 0.436, 0.31]],
    ];
    const series = boards.flatMap(([name, inPlane, thicknessM, loss, shares]) => {
      const plate = createPlate({ ...PLATE, inPlane, thicknessM, lowerFilm: 0, upperFilm: loss });
      const { columns, cellM, cellCount } = plate.state.grid;
      for (let cell = 0; cell < cellCount; cell++) {
        const [x, y] = [cell % columns, Math.floor(cell / columns)].map((n) => (n + 0.5) * cellM);
        if (Math.hypot(x!, y!) < held) plate.state.zone[cell] = 1;
      }
      plate.moment.preheaterFilm = 2e4;
      plate.moment.preheaterC = 100;
      plate.run(1.5, 600);
      // Cells make the edge a staircase; what is outside depends on where it lies: the excess at + 3 mm is the reference.
      const m = Math.sqrt(loss / (inPlane * thicknessM));
      const exact = (mm: number) => besselK0(m * (held + mm / 1000)) / besselK0(m * held);
      const scale = exact(3) / upperAt(plate.state, held + 0.003);
      [5, 10, 20, 30].forEach((mm, index) => {
        const share = upperAt(plate.state, held + mm / 1000) * scale;
        verify.near(`${name}: share left at + ${mm} mm`, '', share, shares[index]!, 0.006);
      });
      return [
        { name: `exact, ${name}`, style: 'line' as const, points: curve(exact, 0, 45) },
        {
          name: 'program',
          style: 'dots' as const,
          points: curve((mm) => mm, 1, 45)
            .filter((_, i) => i % 3 === 0)
            .map(([mm]): [number, number] => [mm, upperAt(plate.state, held + mm / 1000) * scale]),
        },
      ];
    });
    verify.chart({ title: 'Share of the excess left outside the edge', x: 'mm from the edge', y: '', series });
  });
});
