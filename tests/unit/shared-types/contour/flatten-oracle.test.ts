import Flatten from '@flatten-js/core';
import { expect, test } from 'vitest';
import { type Edge, edgeBetween } from '../../../../shared-types/contour/edges.ts';
import { meetingsOf } from '../../../../shared-types/contour/meetings.ts';
import type { Point } from '../../../../shared-types/geometry.ts';

/** A general-purpose geometry library as the second opinion. Seeded: the same edges in every run. */

type Bent = { from: Point; to: Point; bulge: number };

function randomly(seed: number): (least: number, most: number) => number {
  let state = seed;
  return (least, most) => {
    state = (state * 1664525 + 1013904223) >>> 0;
    return least + (state / 2 ** 32) * (most - least);
  };
}

const ours = ({ from, to, bulge }: Bent): Edge => edgeBetween(from, to, bulge);

/** The same edge for the library: centre and radius straight from what a bulge means, the tangent of a quarter of the sweep. */
function theirs({ from, to, bulge }: Bent): Flatten.Segment | Flatten.Arc {
  const [a, b] = [Flatten.point(from.x, from.y), Flatten.point(to.x, to.y)];
  if (bulge === 0) return Flatten.segment(a, b);
  const sweep = 4 * Math.atan(bulge);
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  const rise = chord / (2 * Math.tan(sweep / 2));
  const centre = {
    x: (from.x + to.x) / 2 - (rise * (to.y - from.y)) / chord,
    y: (from.y + to.y) / 2 + (rise * (to.x - from.x)) / chord,
  };
  const angle = (point: Point) => Math.atan2(point.y - centre.y, point.x - centre.x);
  const radius = chord / (2 * Math.abs(Math.sin(sweep / 2)));
  return Flatten.arc(Flatten.point(centre.x, centre.y), radius, angle(from), angle(to), bulge > 0);
}

const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
const byPlace = (a: Point, b: Point): number => a.x - b.x || a.y - b.y;

function randomEdge(pick: (least: number, most: number) => number, bent: boolean): Bent {
  const place = () => ({ x: pick(0, 50), y: pick(0, 50) });
  return { from: place(), to: place(), bulge: bent ? pick(-2.2, 2.2) : 0 };
}

/** True when a place lies so near to an end of an edge that rounding decides. */
const nearAnEnd = (at: Point, edges: readonly Bent[]): boolean =>
  edges.some(({ from, to }) => Math.min(apart(at, from), apart(at, to)) < 1e-4);

test.each([
  ['lines', false, false],
  ['a line and an arc', false, true],
  ['arcs', true, true],
] as const)('%s meet where a general-purpose library finds that they do', (_name, firstBent, secondBent) => {
  const pick = randomly(firstBent ? 71 : secondBent ? 53 : 29);
  let met = 0;
  let unsettled = 0;
  for (let round = 0; round < 1500; round++) {
    const pair = [randomEdge(pick, firstBent), randomEdge(pick, secondBent)];
    const found = meetingsOf(ours(pair[0]), ours(pair[1]));
    const expected = theirs(pair[0]).intersect(theirs(pair[1])).sort(byPlace);
    if ([...expected, ...found.map(({ at }) => at)].some((at) => nearAnEnd(at, pair))) {
      unsettled++;
      continue;
    }
    expect(found, JSON.stringify(pair)).toHaveLength(expected.length);
    for (const [index, { at, crosses }] of found.sort((a, b) => byPlace(a.at, b.at)).entries()) {
      expect(crosses).toBe(true);
      expect(apart(at, expected[index]), JSON.stringify(pair)).toBeLessThan(1e-6);
    }
    met += found.length;
  }
  expect(met).toBeGreaterThan(300);
  expect(unsettled).toBeLessThan(5);
});

/** Half a circle round a middle, its own middle in a direction. */
function halfCircle(middle: Point, radius: number, way: number): Bent {
  const end = (turn: number) => ({ x: middle.x + radius * Math.cos(turn), y: middle.y + radius * Math.sin(turn) });
  return { from: end(way - Math.PI / 2), to: end(way + Math.PI / 2), bulge: 1 };
}

test('arcs and lines that only touch: both find the one place, and it is no crossing', () => {
  const pick = randomly(97);
  for (let round = 0; round < 300; round++) {
    const [radius, other, way] = [pick(2, 20), pick(2, 20), pick(0, 2 * Math.PI)];
    const middle = { x: pick(0, 50), y: pick(0, 50) };
    const along = (far: number) => ({ x: middle.x + far * Math.cos(way), y: middle.y + far * Math.sin(way) });
    const touch = along(radius);
    const across = (far: number) => ({ x: touch.x - far * Math.sin(way), y: touch.y + far * Math.cos(way) });
    const arc = halfCircle(middle, radius, way);
    for (const second of [
      { from: across(-pick(3, 9)), to: across(pick(3, 9)), bulge: 0 },
      halfCircle(along(radius + other), other, way + Math.PI),
    ]) {
      const found = meetingsOf(ours(arc), ours(second));
      const expected = theirs(arc).intersect(theirs(second));
      expect(expected.length, JSON.stringify([arc, second])).toBeGreaterThan(0);
      // Within a micrometre of each other the two curves run side by side for some: a place may be told twice.
      expect(found.length).toBeGreaterThan(0);
      for (const { at, crosses } of found) {
        expect(crosses).toBe(false);
        expect(apart(at, touch), JSON.stringify([arc, second])).toBeLessThan(0.01);
      }
      for (const at of expected) expect(apart(at, touch)).toBeLessThan(1e-2);
    }
  }
});

test('moved apart by a hundredth of a millimetre they do not meet, moved together they cross twice', () => {
  const pick = randomly(11);
  for (let round = 0; round < 200; round++) {
    const [radius, other, way] = [pick(2, 20), pick(2, 20), pick(0, 2 * Math.PI)];
    const middle = { x: pick(0, 50), y: pick(0, 50) };
    for (const [off, times] of [
      [0.01, 0],
      [-0.01, 2],
    ]) {
      const far = radius + other + off;
      const second = { x: middle.x + far * Math.cos(way), y: middle.y + far * Math.sin(way) };
      const pair = [halfCircle(middle, radius, way), halfCircle(second, other, way + Math.PI)];
      expect(meetingsOf(ours(pair[0]), ours(pair[1]))).toHaveLength(times);
      expect(theirs(pair[0]).intersect(theirs(pair[1]))).toHaveLength(times);
    }
  }
});
