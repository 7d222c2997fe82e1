import { expect, it } from 'vitest';
import { createState } from '../../../../main/heat/heat-state.ts';
import { bodyPeaks, createPeakScratch } from '../../../../main/heat/part-peaks.ts';
import { bareScene, body } from './support.ts';

const TRIAL = { resistance: 0.01, arealHeat: 100, emissivity: 0.1 };

it('an even temperature is the peak everywhere, also over the edge of the board and turned', () => {
  const chip = body('U1', 0.001, 0.013, { lengthM: 0.007, widthM: 0.004, turnDeg: 30, trialShield: TRIAL });
  const state = createState(bareScene({ bodies: [chip] }), 0.002);
  const { peak, peakSkin, shadowPeak, shadowPeakSkin } = state.body;
  for (const [array, celsius] of [
    ...([
      [peak, 100],
      [peakSkin, 110],
      [shadowPeak, 90],
      [shadowPeakSkin, 95],
    ] as const),
    [state.peak, 80] as const,
  ])
    array.fill(celsius);
  const found = bodyPeaks(state, createPeakScratch(), chip, 0);
  const even = [found.body, found.skin, found.joint].map(({ maxC, minC, meanC }) => [maxC, minC, meanC]);
  for (const [index, celsius] of [100, 110, 80].entries())
    for (const one of even[index]!) expect(one).toBeCloseTo(celsius, 9);
  expect(found.shieldedBodyC).toBeCloseTo(90, 9);
  expect(found.shieldedSkinC).toBeCloseTo(95, 9);
});

it('a slope is read at the outermost of the 16 x 16 points, between the cells’ centres', () => {
  const chip = body('U1', 0.03, 0.02, { lengthM: 0.012, widthM: 0.008 });
  const state = createState(bareScene({ bodies: [chip] }), 0.002);
  const { cell, count } = state.entries;
  const xOf = (index: number) => ((index % state.grid.columns) + 0.5) * 0.002;
  for (let entry = 0; entry < count; entry++) state.body.peak[entry] = 1000 * xOf(cell[entry]!);
  for (let face = 0; face < state.grid.cellCount; face++) state.peak[face] = 2000 * xOf(face);
  const { joint, body: own } = bodyPeaks(state, createPeakScratch(), chip, 0);
  const outermost = 0.03 + (0.012 * 7.5) / 16;
  expect(joint.maxC).toBeCloseTo(2000 * outermost, 6);
  // The body ends with the cells that it covers: beyond their last centre its value is held.
  expect(own.maxC).toBeCloseTo(1000 * 0.035, 6);
});
