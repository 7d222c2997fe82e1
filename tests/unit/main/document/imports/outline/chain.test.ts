import { expect, test } from 'vitest';
import { findLoops } from '../../../../../../main/document/imports/outline/chain.ts';
import { chooseOutline } from '../../../../../../main/document/imports/outline/choose.ts';
import { contourOf } from '../../../../../../main/document/imports/outline/contour.ts';
import type { PenStroke } from '../../../../../../main/document/imports/outline/graph.ts';
import type { Loop } from '../../../../../../main/document/imports/outline/loop.ts';
import { flattenContour, signedArea } from '../../../../../../shared-types/geometry.ts';

const PEN = 0.1;

function line(x1: number, y1: number, x2: number, y2: number, widthMm = PEN): PenStroke {
  return { widthMm, segment: { kind: 'line', from: { x: x1, y: y1 }, to: { x: x2, y: y2 } } };
}

function rectangle(x: number, y: number, width: number, height: number, widthMm = PEN): PenStroke[] {
  const [right, top] = [x + width, y + height];
  // Drawn in no order and not all the same way round.
  return [
    line(x, y, right, y, widthMm),
    line(x, top, x, y, widthMm),
    line(right, top, right, y, widthMm),
    line(x, top, right, top, widthMm),
  ];
}

function circle(x: number, y: number, radius: number, widthMm = PEN): PenStroke {
  const end = { x: x + radius, y };
  return { widthMm, segment: { kind: 'arc', from: end, to: end, centre: { x, y }, clockwise: true } };
}

const areas = (loops: readonly Loop[]) =>
  loops.map(({ areaMm2 }) => Math.round(areaMm2 * 100) / 100).sort((a, b) => a - b);

test('strokes in any order and direction close to one loop', () => {
  const loops = findLoops(rectangle(0, 0, 10, 5), 'a');
  expect(areas(loops)).toEqual([50]);
  expect(loops[0].gapMm).toBe(0);
});

test('ends that miss each other by less than 0.2 mm are joined, and the gap is told', () => {
  const open = [line(0, 0, 10, 0), line(10, 0.12, 10, 5), line(10, 5, 0, 5), line(0, 5, 0, 0)];
  const loops = findLoops(open, 'a');
  expect(loops).toHaveLength(1);
  expect(loops[0].gapMm).toBeCloseTo(0.12, 9);
  expect(findLoops([line(0, 0, 10, 0), line(10, 0.5, 10, 5), line(10, 5, 0, 5), line(0, 5, 0, 0)], 'a')).toEqual([]);
});

test('dimension lines, repeated strokes and specks fall away', () => {
  const noise = [
    line(0, 0, -5, 0),
    line(-5, 0, -5, 3),
    line(0, 0, 10, 0),
    line(10, 0, 0, 0),
    line(3, 3, 3, 3),
    line(10, 5, 12, 7),
  ];
  expect(areas(findLoops([...rectangle(0, 0, 10, 5), ...noise], 'a'))).toEqual([50]);
});

test('a dividing line makes both halves and their common border loops', () => {
  const halves = [...rectangle(0, 0, 10, 5), ...rectangle(10, 0, 10, 5)];
  expect(areas(findLoops(halves, 'a'))).toEqual([50, 50, 100]);
});

test('loops are counter-clockwise, full circles included', () => {
  for (const loop of findLoops([...rectangle(0, 0, 10, 5), circle(3, 2, 1)], 'a')) {
    expect(signedArea(contourOf(loop.segments, 0, 0).map(({ x, y }) => ({ x, y })))).toBeGreaterThanOrEqual(0);
    expect(signedArea(flattenContour(contourOf(loop.segments, 0, 0)))).toBeGreaterThan(0);
  }
});

test('arcs stay arcs: a slot with round ends has the exact area as a contour', () => {
  const arc = (x: number, fromY: number, toY: number): PenStroke => ({
    widthMm: PEN,
    segment: { kind: 'arc', from: { x, y: fromY }, to: { x, y: toY }, centre: { x, y: 0 }, clockwise: false },
  });
  const slot = [line(0, -1, 8, -1), arc(8, -1, 1), line(8, 1, 0, 1), arc(0, 1, -1)];
  const [loop] = findLoops(slot, 'a');
  const contour = contourOf(loop.segments, 2, 3);
  expect(contour.filter(({ bulge }) => bulge).map(({ bulge }) => Number(bulge?.toFixed(9)))).toEqual([1, 1]);
  expect(signedArea(flattenContour(contour, 1e-5))).toBeCloseTo(16 + Math.PI, 3);
  expect(loop.box).toEqual({ minX: -1, minY: -1, maxX: 9, maxY: 1 });
});

test('the smallest loop with 90 % of the parts wins; frames and part drawings lose', () => {
  const frame = rectangle(-50, -50, 300, 200);
  const board = rectangle(0, 0, 100, 60);
  const cutout = rectangle(20, 20, 10, 5);
  const drawing = rectangle(60, 20, 8, 8, 0.25);
  const loops = findLoops([...frame, ...board, ...cutout, ...drawing, circle(90, 50, 1.5)], 'mechanical');
  const parts = Array.from({ length: 40 }, (_, index) => ({
    x: 5 + (index % 10) * 9,
    y: 5 + Math.floor(index / 10) * 12,
  }));
  const choice = chooseOutline([{ file: 'mechanical', declared: false, loops }], [...parts, { x: 120, y: 5 }]);
  expect(choice?.outline.box).toEqual({ minX: 0, minY: 0, maxX: 100, maxY: 60 });
  expect(choice?.why).toBe('smallest');
  expect(choice?.others.map(({ loop }) => loop.box.maxX)).toEqual([250]);
  // The drawing has another pen; the hole's area is that of its polygon, chords within 0.01 mm.
  expect(areas(choice?.cutouts ?? [])).toEqual([7.01, 50]);
  expect(choice?.leftOut).toBe(1);
});

test('another candidate can be chosen by its rank', () => {
  const loops = findLoops([...rectangle(-50, -50, 300, 200), ...rectangle(0, 0, 100, 60)], 'a');
  const parts = [{ x: 10, y: 10 }];
  expect(chooseOutline([{ file: 'a', declared: false, loops }], parts, 1)).toMatchObject({
    why: 'chosen',
    outline: { box: { maxX: 250 } },
  });
});

test('a declared profile goes before smaller loops of other layers', () => {
  const profile = { file: 'profile', declared: true, loops: findLoops(rectangle(0, 0, 100, 60), 'profile') };
  const other = { file: 'other', declared: false, loops: findLoops(rectangle(2, 2, 96, 56), 'other') };
  expect(chooseOutline([other, profile], [{ x: 10, y: 10 }])?.outline.file).toBe('profile');
});

test('without a loop there is no choice', () => {
  expect(chooseOutline([{ file: 'a', declared: true, loops: [] }], [])).toBeNull();
});
