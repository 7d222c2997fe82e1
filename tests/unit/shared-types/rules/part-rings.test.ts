import { expect, test } from 'vitest';
import { arrayShifts, ringPlaces } from '../../../../shared-types/rules/part-rings.ts';

const body = { x: 50, y: 30, turn: 0, package: { shape: 'rectangle' as const, lengthMm: 17, widthMm: 17 } };
const chip = { lengthMm: 1, widthMm: 0.5 };

/** Distance from a ring part's body to the square, by hand: its outer extent along the edge normal. */
const gap = (x: number, y: number, deep: number) => Math.max(Math.abs(x - 50), Math.abs(y - 30)) - 8.5 - deep / 2;

test('sixteen across: four before each edge, a millimetre off, 4.25 mm apart', () => {
  const places = ringPlaces(body, { by: { count: 16 }, distanceMm: 1, lies: 'across' }, chip);
  expect(places).toHaveLength(16);
  for (const { x, y } of places) expect(gap(x, y, 1)).toBeCloseTo(1, 6);
  const lower = places.slice(0, 4);
  expect(lower.map(({ x }) => x)).toEqual([43.625, 47.875, 52.125, 56.375]);
  expect(new Set(lower.map(({ y }) => y))).toEqual(new Set([20]));
  expect(lower[0].turn).toBe(90);
  expect(places[4]).toMatchObject({ x: 60, turn: 180 });
});

test('along by pitch: as many as the edge holds, their flat side to it', () => {
  const places = ringPlaces(body, { by: { pitchMm: 2 }, distanceMm: 0.5, lies: 'along' }, chip);
  // (17 - 1) / 2 + 1 = 9 on each edge.
  expect(places).toHaveLength(36);
  expect(places[0].turn).toBe(0);
  for (const { x, y } of places) expect(gap(x, y, 0.5)).toBeCloseTo(0.5, 6);
});

test('a count that does not divide is spread, a turned body turns its ring, a round one gets a circle', () => {
  expect(ringPlaces(body, { by: { count: 7 }, distanceMm: 1, lies: 'across' }, chip)).toHaveLength(7);
  const [first] = ringPlaces({ ...body, turn: 90 }, { by: { count: 4 }, distanceMm: 1, lies: 'along' }, chip);
  expect(first).toMatchObject({ x: 59.75, y: 30, turn: 90 });
  const round = { ...body, package: { shape: 'round' as const, lengthMm: 10, widthMm: 10 } };
  for (const { x, y } of ringPlaces(round, { by: { count: 8 }, distanceMm: 1, lies: 'along' }, chip))
    expect(Math.hypot(x - 50, y - 30)).toBeCloseTo(6.25, 2);
});

test('an array leaves out the place of the original', () => {
  expect(arrayShifts(3, 2, 2, 1.5)).toEqual([
    { x: 2, y: 0 },
    { x: 4, y: 0 },
    { x: 0, y: 1.5 },
    { x: 2, y: 1.5 },
    { x: 4, y: 1.5 },
  ]);
  expect(arrayShifts(1, 1, 2, 2)).toEqual([]);
});
