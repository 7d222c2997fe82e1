import { expect, test } from 'vitest';
import { narrowed, startCovariance, varianceUnder } from '../../../../main/heat/uncertainty/narrowing.ts';
import { assessFully, bandRunsOf } from '../../../../main/planning/band-numbers.ts';
import { openPlaces, placeThermocouples } from '../../../../renderer/editing/thermocouples.ts';
import { evaluated, smallBoard, smallPlan } from '../heat/support.ts';

const board = smallBoard();
const plan = smallPlan(board);
const runs = bandRunsOf(board, plan);
if (!runs.ok) throw new Error(runs.problem.code);
const { places } = runs.value;

test('one reading of one term narrows it as the formula of a single Gaussian update says', () => {
  const start = startCovariance([1], 1, 0);
  const after = narrowed(start, { moves: [[3]], biasK: 4, noiseK: 1 });
  // 1 / (1 + m2 / (bias2 + noise2)), m = 3: by hand.
  expect(after[0]).toBeCloseTo(17 / 26, 12);
});

test('readings that share a bias tell no more of it together; of a difference they tell all', () => {
  const start = startCovariance([1, 0, 0, 1], 2, 0);
  const twice = narrowed(start, {
    moves: [
      [3, 0],
      [3, 0],
    ],
    biasK: 4,
    noiseK: 1e-6,
  });
  expect(twice[0], 'the second repeats the first').toBeCloseTo(16 / 25, 5);
  const apart = narrowed(start, {
    moves: [
      [3, 0],
      [3, 2],
    ],
    biasK: 4,
    noiseK: 1e-6,
  });
  expect(varianceUnder(apart, [0, 1])).toBeLessThan(1e-6);
});

test('the coldest corner of the target comes first, then what narrows most', () => {
  const [first, ...others] = places;
  expect(first).toMatchObject({ refdes: null, siteId: 'site-1', side: 'top' });
  expect(Math.abs(first!.x - 30)).toBeCloseTo(6.5, 9);
  expect(Math.abs(first!.y - 22)).toBeCloseTo(6.5, 9);
  expect(others.length).toBeGreaterThanOrEqual(2);
  for (let next = 1; next < places.length; next++) {
    expect(places[next]!.targetBandK).toBeLessThanOrEqual(places[next - 1]!.targetBandK + 1e-9);
  }
  const unread = runs.ok ? runs.value.base.runs[0]!.targets[0]!.coldestJointC : 0;
  expect(first!.expectedC, 'its reading is that of the coldest joint, nearly').toBeGreaterThan(unread - 15);
});

test('of the four corners it is the one that stays coldest', () => {
  const corners = [
    [23.5, 15.5],
    [36.5, 15.5],
    [36.5, 28.5],
    [23.5, 28.5],
  ];
  const tags = corners.map(([x, y], index) => ({
    ...{ id: `t${index}`, kind: 'watchPoint' as const, name: `W${index}`, order: null, note: '', refdes: null },
    ...{ side: 'top' as const, x: x!, y: y! },
  }));
  const peaks = evaluated(board, { ...plan, tags }).runs[0]!.watch.map(({ peakC }) => peakC);
  expect(Math.max(...peaks)).toBeGreaterThan(Math.min(...peaks) + 0.1);
  expect(places[0]!.expectedC).toBeCloseTo(Math.min(...peaks), 6);
});

test('places are the same every time, and what the assessment tells', () => {
  const again = assessFully(board, plan, evaluated(board, plan));
  expect(again.ok && again.value.thermocouples).toEqual(places);
});

test('placing them makes watch points; what stands is not offered again', () => {
  const document = { board, plan };
  const three = openPlaces(document, places).slice(0, 3);
  const placed = placeThermocouples(document, three);
  const points = placed.plan.tags.filter((tag) => tag.kind === 'watchPoint');
  expect(points.map(({ x, y, refdes }) => ({ x, y, refdes }))).toEqual(
    three.map(({ x, y, refdes }) => ({ x, y, refdes })),
  );
  expect(openPlaces(placed, places)).toEqual(places.slice(3));
});
