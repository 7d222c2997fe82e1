import { expect, test } from 'vitest';
import type { Pad } from '../../../../../../main/document/imports/pads/collect.ts';
import { readPlacements } from '../../../../../../main/document/imports/placements/read-placements.ts';
import type { PlacementTable } from '../../../../../../main/document/imports/placements/types.ts';
import type { Point } from '../../../../../../main/document/imports/plane.ts';
import { type Anchors, register } from '../../../../../../main/document/imports/register/register.ts';

interface Spot extends Point {
  readonly refdes: string;
  readonly side: 'top' | 'bottom';
}

/** Sixty invented parts, half on each side, on no regular grid. */
const SPOTS: Spot[] = Array.from({ length: 60 }, (_, index) => ({
  refdes: `R${index + 1}`,
  side: index % 2 === 0 ? 'top' : 'bottom',
  x: Number((5 + ((index * 37) % 71) + (index % 7) * 0.13).toFixed(3)),
  y: Number((4 + ((index * 23) % 43) + (index % 5) * 0.29).toFixed(3)),
}));

function table(write: (spot: Spot) => { x: number; y: number }, heading = 'X,Y'): PlacementTable {
  const rows = SPOTS.map((spot) => {
    const { x, y } = write(spot);
    return `${spot.refdes},${x.toFixed(4)},${y.toFixed(4)},0,${spot.side}`;
  });
  const read = readPlacements([`Ref,${heading},Rot,Side`, ...rows].join('\n'), 'invented.csv');
  if (!read) throw new Error('no table');
  return read;
}

const OFFSET = { x: 107.5, y: -81.2 };

function anchors(kind: 'references' | 'pairs' | 'none'): Anchors {
  const onBoard = ({ x, y }: Point) => ({ x: x + OFFSET.x, y: y + OFFSET.y });
  const pads = new Map<string, Pad[]>();
  if (kind === 'references') {
    for (const spot of SPOTS) {
      const at = onBoard(spot);
      pads.set(spot.refdes, [{ pin: '1', side: spot.side, through: false, at, hull: [{ ...at, r: 0.2 }] }]);
    }
  }
  const side = (name: string) => (kind === 'pairs' ? SPOTS.filter((spot) => spot.side === name).map(onBoard) : []);
  return { pads, midpoints: { top: side('top'), bottom: side('bottom') } };
}

test.each(['references', 'pairs'] as const)('the offset is voted by %s', (kind) => {
  const found = register([table((spot) => spot, 'X (mm),Y (mm)')], anchors(kind), {});
  expect(found?.offset).toMatchObject({ by: kind, votes: 60, of: 60 });
  expect(found?.offset?.x).toBeCloseTo(OFFSET.x, 6);
  expect(found?.offset?.y).toBeCloseTo(OFFSET.y, 6);
});

test.each([
  ['mm', 1],
  ['mil', 0.0254],
  ['inch', 25.4],
] as const)('an unsaid unit is found by the pads: %s', (unit, mmPer) => {
  const found = register([table(({ x, y }) => ({ x: x / mmPer, y: y / mmPer }))], anchors('references'), {});
  expect(found).toMatchObject({ assumedUnit: unit, unitBy: 'pads' });
  expect(found?.placements[0].x).toBeCloseTo(SPOTS[0].x, 1);
});

test('bottom x negated in the file is found by the pads and turned back', () => {
  const negated = table(({ x, y, side }) => ({ x: side === 'bottom' ? -x : x, y }), 'X (mm),Y (mm)');
  const found = register([negated], anchors('pairs'), {});
  expect(found).toMatchObject({ bottomNegated: true, bottomBy: 'pads' });
  expect(found?.placements[1].x).toBeCloseTo(SPOTS[1].x, 6);
});

test('without pads the signs tell negated bottom x, and the size tells the unit', () => {
  const negated = table(({ x, y, side }) => ({ x: (side === 'bottom' ? -x : x) / 0.0254, y: y / 0.0254 }));
  expect(register([negated], anchors('none'), {})).toMatchObject({
    bottomNegated: true,
    bottomBy: 'signs',
    assumedUnit: 'mil',
    unitBy: 'size',
    offset: null,
  });
});

test('choices go before votes', () => {
  const found = register([table((spot) => spot)], anchors('none'), { unit: 'inch', bottomX: 'asSeenFromTop' });
  expect(found).toMatchObject({ assumedUnit: 'inch', unitBy: 'chosen', bottomNegated: false, bottomBy: 'chosen' });
});

test('a unit that nothing tells gives no registration', () => {
  expect(register([table(({ x, y }) => ({ x: x * 1e5, y: y * 1e5 }))], anchors('none'), {})).toBeNull();
});
