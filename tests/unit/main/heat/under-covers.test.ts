import { describe, expect, it } from 'vitest';
import type { HeatScene, SceneBody } from '../../../../main/heat/scene.ts';
import { createSimulation } from '../../../../main/heat/simulation.ts';
import type { Cover } from '../../../../shared-types/board.ts';
import { bareScene, body, evaluated, exposure, part, run, site, smallBoard, smallPlan } from './support.ts';

const CAN = body('can', 0.03, 0.02, {
  ...{ lengthM: 0.016, widthM: 0.016, heightM: 0.0025, shape: 'can', wallM: 0.001, metal: true, emissivity: 0.1 },
  ...{ volumetricHeat: 3e5, jointConductance: 1000, gapConductance: 14, trialShield: null },
});
const CHIP = body('U1', 0.03, 0.02, { lengthM: 0.006, widthM: 0.006, heightM: 0.001, trialShield: null });

/** A jet of 350 °C from room temperature over what stands at the middle of a board of little copper. */
function blown(bodies: SceneBody[], more: Partial<HeatScene> = {}) {
  const scene = bareScene({
    board: { ...bareScene().board, inPlane: 2, throughPlane: 0.3 },
    bodies,
    nozzle: {
      mouth: { shape: 'round', diameterM: 0.012 },
      ...{ standOffM: 0.03, sweepRadiusM: 0, tiltDeg: 0, headingDeg: 0, hood: null },
    },
    segments: [
      {
        ...{ name: 'gas', seconds: 40, preheaterStartC: 25, preheaterEndC: 25, nozzleXM: 0.03, nozzleYM: 0.02 },
        gas: { startC: 350, endC: 350, flowStart: 40, flowEnd: 40 },
      },
    ],
    ...more,
  });
  const simulation = createSimulation(scene, 0.001, 0.5);
  simulation.advance(1e6);
  const { entries, body: state } = simulation.state;
  const of = (id: string) => {
    const order = entries.bodyOfScene.findIndex((index) => bodies[index]!.id === id);
    const values = state.temperature.subarray(entries.bodyStart[order]!, entries.bodyStart[order + 1]!);
    return { min: Math.min(...values), max: Math.max(...values) };
  };
  return { of };
}

describe('a can over a chip in the jet', () => {
  const bare = blown([CHIP]);
  const covered = blown([CHIP, CAN]);

  it('is one temperature, and takes the gas in the place of the chip', () => {
    const can = covered.of('can');
    expect(can.max - can.min).toBeLessThan(1e-9);
    expect(can.max).toBeGreaterThan(80);
    expect(covered.of('U1').max).toBeLessThan(bare.of('U1').max - 50);
    expect(covered.of('U1').max).toBeLessThan(can.max - 5);
    expect(covered.of('U1').min).toBeGreaterThan(26);
  });

  it('warms a part that nearly reaches its lid more than a low one, through the air between', () => {
    const tall = blown([{ ...CHIP, heightM: 0.0022, volumetricHeat: CHIP.volumetricHeat / 2.2 }, CAN]);
    expect(tall.of('U1').max).toBeGreaterThan(covered.of('U1').max + 5);
    expect(tall.of('U1').max).toBeLessThan(tall.of('can').max);
  });

  it('leaves what stands beside it to the jet; a frame covers nothing', () => {
    const beside = { ...CHIP, id: 'U2', xM: 0.045 };
    const [free, near] = [blown([beside]), blown([beside, CAN])];
    expect(Math.abs(near.of('U2').max - free.of('U2').max)).toBeLessThan(4);
    const framed = blown([CHIP, { ...CAN, shape: 'frame' }]);
    expect(Math.abs(framed.of('U1').max - bare.of('U1').max)).toBeLessThan(15);
  });

  it('covers by share: half a chip under the can lies between', () => {
    const half = blown([{ ...CHIP, xM: 0.038 }, CAN]);
    const open = blown([{ ...CHIP, xM: 0.038 }]);
    expect(half.of('U1').max).toBeLessThan(open.of('U1').max);
    expect(half.of('U1').min).toBeLessThan(half.of('U1').max - 20);
  });
});

describe('a ticket with a can over two chips', () => {
  const base = smallBoard();
  const board = {
    ...base,
    parts: [
      ...base.parts.filter((one) => one.refdes === 'U1'),
      part('U2', 41, 24, [5, 5, 1], { class: 'qfn' }),
      part('U3', 47, 19, [5, 4, 1], { class: 'so' }),
    ],
  };
  const can: Cover = {
    ...{
      id: 'SH1',
      kind: 'can',
      side: 'top',
      x: 44,
      y: 22,
      lengthMm: 14,
      widthMm: 16,
      heightMm: 2.5,
      sheetMm: 0.2,
      turn: 0,
    },
    ...{ material: 'tinned-steel', fixing: 'clipped' },
  };
  const covered = { ...board, covers: [can] };
  const plan = smallPlan(board);
  const off = {
    id: 'o',
    kind: 'remove',
    refdes: 'SH1',
    order: null,
    note: '',
    goesBack: true,
    traySlot: 'A1',
  } as const;

  it('keeps the gas off both beside the target: what they get comes through the board', () => {
    const [on, without] = [evaluated(covered, plan), evaluated(board, plan)];
    expect(exposure(on, 'U2').body.maxC).toBeLessThan(exposure(without, 'U2').body.maxC - 2);
    for (const refdes of ['U2', 'U3']) {
      const { shares, skin, body: peak } = exposure(on, refdes);
      expect(exposure(without, refdes).shares.gas).toBeGreaterThan(0.9);
      expect(shares.joints).toBeGreaterThan(0.6);
      expect(shares.joints + shares.gas + shares.preheater).toBeCloseTo(1, 1);
      expect(skin.maxC).toBeLessThan(peak.maxC + 1);
    }
  });

  it('is off where it is tagged, and off after a heat run of its own', () => {
    const tagged = evaluated(covered, { ...plan, tags: [off] });
    expect(exposure(tagged, 'U2').body.maxC).toBeCloseTo(exposure(evaluated(board, plan), 'U2').body.maxC, 6);
    const over = { ...plan, sites: [site(board, 'U2')] };
    const heatRuns = [run('cover-removal', 'run-0'), run('removal', 'run-1')];
    const [closed, own] = [evaluated(covered, over), evaluated(covered, { ...over, heatRuns })];
    const bare = evaluated(board, over);
    const target = (evaluation: typeof own, at: number) => evaluation.runs[at]!.targets[0]!;
    expect(target(closed, 0).skinMaxC).toBeLessThan(target(bare, 0).skinMaxC);
    expect(target(own, 1).skinMaxC).toBeCloseTo(target(bare, 0).skinMaxC, 6);
  });
});
