import { describe, expect, it } from 'vitest';
import { buildGrid } from '../../../../main/heat/grid.ts';
import { jetStrength, nozzleFootprint, plateauShape } from '../../../../main/heat/nozzle.ts';
import type { SceneNozzle } from '../../../../main/heat/scene.ts';
import { bareScene } from './support.ts';

const grid = buildGrid(bareScene().board, 0.001);
const cell = (x: number, y: number) => Math.floor(y / 0.001) * grid.columns + Math.floor(x / 0.001);
const round: SceneNozzle = {
  mouth: { shape: 'round', diameterM: 0.004 },
  standOffM: 0.012,
  sweepRadiusM: 0,
  tiltDeg: 0,
  headingDeg: 0,
  hood: null,
};

describe('nozzle footprint', () => {
  it('is flat inside 2.5 diameters, falls outside, and the gas is diluted from 1.5 diameters on', () => {
    const { shape, dilution } = nozzleFootprint(round, [0.0305, 0.0205], grid);
    expect(shape[cell(0.0305, 0.0205)]).toBe(plateauShape(round));
    expect(shape[cell(0.0395, 0.0205)]).toBe(plateauShape(round));
    expect(shape[cell(0.0425, 0.0205)]!).toBeLessThan(shape[cell(0.0415, 0.0205)]!);
    expect(dilution[cell(0.0355, 0.0205)]).toBe(1);
    expect(dilution[cell(0.0405, 0.0205)]).toBeCloseTo(0.6 ** 0.9, 12);
  });

  it('moves with the tilt by H tan(tilt) along the heading', () => {
    const tilted = { ...round, tiltDeg: 45, headingDeg: 90 };
    const moved = nozzleFootprint(tilted, [0.0305, 0.0085], grid);
    const straight = nozzleFootprint(round, [0.0305, 0.0205], grid);
    for (const place of [cell(0.0305, 0.0205), cell(0.0455, 0.0305), cell(0.0105, 0.0105)]) {
      expect(moved.shape[place]).toBeCloseTo(straight.shape[place]!, 12);
      expect(moved.dilution[place]).toBeCloseTo(straight.dilution[place]!, 12);
    }
  });

  it('averages h and h T over the circle of a moved nozzle', () => {
    const swept = nozzleFootprint({ ...round, sweepRadiusM: 0.008 }, [0.0305, 0.0205], grid);
    const still = nozzleFootprint(round, [0.0305, 0.0205], grid);
    const far = cell(0.0475, 0.0205);
    expect(swept.shape[far]!).toBeGreaterThan(still.shape[far]!);
    let h = 0;
    let hot = 0;
    for (let point = 0; point < 32; point++) {
      const angle = (point / 32) * 2 * Math.PI;
      const one = nozzleFootprint(round, [0.0305 + 0.008 * Math.cos(angle), 0.0205 + 0.008 * Math.sin(angle)], grid);
      h += one.shape[far]! / 32;
      hot += (one.shape[far]! * one.dilution[far]!) / 32;
    }
    expect(swept.shape[far]).toBeCloseTo(h, 12);
    expect(swept.dilution[far]).toBeCloseTo(hot / h, 12);
  });

  it('a turned rectangle is 0 inside and D/2 plus the distance outside', () => {
    const rect: SceneNozzle = { ...round, mouth: { shape: 'rect', lengthM: 0.012, widthM: 0.006, turnDeg: 90 } };
    const { dilution } = nozzleFootprint(rect, [0.0305, 0.0205], grid);
    expect(dilution[cell(0.0305, 0.0255)]).toBe(1);
    // D = 8 mm; 14 mm beyond the short half width of 3 mm: r = 18 mm.
    expect(dilution[cell(0.0475, 0.0205)]).toBeCloseTo((12 / 18) ** 0.9, 12);
  });

  it('a hood leaks past its rim and is not swept', () => {
    const hood: SceneNozzle = {
      ...round,
      mouth: { shape: 'round', diameterM: 0.016 },
      sweepRadiusM: 0.01,
      hood: { filmAt30: 100, rimGapM: 0.001, leak: 0.4 },
    };
    const { shape, dilution } = nozzleFootprint(hood, [0.0305, 0.0205], grid);
    expect(shape[cell(0.0375, 0.0205)]).toBe(1);
    expect(dilution[cell(0.0375, 0.0205)]).toBe(1);
    expect(shape[cell(0.0485, 0.0205)]).toBeCloseTo(0.4 * (5 / 15) ** 0.8, 12);
    expect(dilution[cell(0.0485, 0.0205)]).toBeCloseTo((5 / 15) ** 0.5 * (8 / 18), 12);
    expect(jetStrength(hood, 300, 60).strength).toBeCloseTo(100 * 2 ** 0.6, 9);
  });
});
