import { describe, expect, it } from 'vitest';
import { bodyOfCover } from '../../../../main/heat/covers.ts';
import { presences } from '../../../../main/heat/presence.ts';
import { createSimulation } from '../../../../main/heat/simulation.ts';
import type { Cover } from '../../../../shared-types/board.ts';
import { bareScene, body, evaluated, exposure, run, site, smallBoard, smallPlan } from './support.ts';

const can: Cover = {
  id: 'CAN1',
  kind: 'can',
  side: 'top',
  x: 44,
  y: 22,
  lengthMm: 12,
  widthMm: 10,
  turn: 0,
  heightMm: 3,
  sheetMm: 0.2,
  material: 'nickel-silver',
  fixing: 'soldered',
};

describe('metal bodies', () => {
  it('have one temperature, whatever lies under them', () => {
    const stiffener = body('S', 0.03, 0.02, { lengthM: 0.05, widthM: 0.01, metal: true, volumetricHeat: 2.43e6 });
    const scene = bareScene({
      bodies: [stiffener],
      preheater: { xM: 0.01, yM: 0.02, lengthM: 0.02, widthM: 0.04, turnDeg: 0, film: 25, lagS: 5, sensor: null },
      segments: [
        { name: 'warm', seconds: 60, preheaterStartC: 300, preheaterEndC: 300, gas: null, nozzleXM: 0, nozzleYM: 0 },
      ],
    });
    const metal = createSimulation(scene, 0.002, 1);
    metal.advance(1000);
    const temperatures = metal.state.body.temperature;
    expect(Math.max(...temperatures) - Math.min(...temperatures)).toBeLessThan(1e-9);
    const plain = createSimulation({ ...scene, bodies: [{ ...stiffener, metal: false }] }, 0.002, 1);
    plain.advance(1000);
    const faces = (simulation: typeof metal) => simulation.state.peak.subarray(0, 600);
    const spread = (values: Float64Array) => Math.max(...values) - Math.min(...values);
    // Metal carries the heat to the far end: the board under it is more even.
    expect(spread(faces(metal))).toBeLessThan(spread(faces(plain)) - 5);
  });

  it('a cover keeps the whole heat of its metal', () => {
    const one = bodyOfCover(can);
    const metalM3 = 0.012 * 0.01 * 0.0002 + 2 * (0.012 + 0.01) * 0.003 * 0.0002;
    const heat = one.volumetricHeat * one.lengthM * one.widthM * one.heightM;
    expect(heat).toBeCloseTo(metalM3 * 3.4e6, 9);
    expect(one).toMatchObject({ shape: 'can', metal: true, emissivity: 0.1 });
  });

  it('a stiffener beside the target takes heat from it', () => {
    const board = smallBoard();
    const plate: Cover = {
      ...can,
      id: 'S1',
      kind: 'stiffener',
      side: 'bottom',
      x: 30,
      y: 22,
      lengthMm: 30,
      widthMm: 24,
      heightMm: 2,
      material: 'aluminium',
      fixing: 'bonded',
    };
    const without = exposure(evaluated({ ...board, parts: [board.parts[0]!] }, smallPlan(board)), 'U1');
    const withPlate = exposure(
      evaluated({ ...board, parts: [board.parts[0]!], covers: [plate] }, smallPlan(board)),
      'U1',
    );
    expect(withPlate.joint.minC).toBeLessThan(without.joint.minC - 10);
  });

  it('covers over a site are off once their own heat run is over', () => {
    const board = { ...smallBoard(), covers: [can] };
    const plan = smallPlan(board, {
      sites: [site(board, 'U1'), site(board, 'U2', 'site-2')],
      heatRuns: [run('cover-removal', 'can', { siteIds: ['site-2'] }), run('removal', 'off', { siteIds: ['site-2'] })],
    });
    expect(presences(board, plan).map((one) => one.covers.length)).toEqual([1, 0]);
    const elsewhere = {
      ...plan,
      heatRuns: [run('cover-removal', 'can', { siteIds: ['site-1'] }), run('removal', 'off')],
    };
    expect(presences(board, elsewhere).map((one) => one.covers.length)).toEqual([1, 1]);
  });
});
