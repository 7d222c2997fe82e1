import { expect, test } from 'vitest';
import { startingStation } from '../../../../shared-types/rules/new-plan.ts';
import { measuredOutletC, outletIsKnown } from '../../../../shared-types/rules/outlet.ts';

const readings = [
  { settingC: 400, outletC: 350 },
  { settingC: 200, outletC: 190 },
  { settingC: 300, outletC: 275 },
];

test('measured settings give what was measured, those between lie on straight lines', () => {
  for (const { settingC, outletC } of readings) expect(measuredOutletC(readings, 25, settingC)).toBe(outletC);
  expect(measuredOutletC(readings, 25, 250)).toBeCloseTo(232.5, 9);
  expect(measuredOutletC(readings, 25, 112.5)).toBeCloseTo(107.5, 9);
});

test('beyond the last the rise keeps its share; at and below the room the dial is what it is', () => {
  expect(measuredOutletC(readings, 25, 475)).toBeCloseTo(25 + (325 / 375) * 450, 9);
  expect(measuredOutletC(readings, 25, 25)).toBe(25);
  expect(measuredOutletC([], 25, 300)).toBe(300);
});

test('an outlet is known when it was measured, in whatever way', () => {
  const station = startingStation();
  expect(outletIsKnown(station)).toBe(false);
  expect(outletIsKnown({ ...station, outletReadings: readings })).toBe(true);
  expect(outletIsKnown({ ...station, gasReads: 'outlet' })).toBe(true);
});
