import { expect, test } from 'vitest';
import { addParts, copiesOf, deleteParts, refdesFault, renamePart } from '../../../../renderer/editing/add-parts.ts';
import { alignParts, distributeParts, spanOf } from '../../../../renderer/editing/arrange.ts';
import {
  addCover,
  coverOn,
  liftCover,
  liftedCover,
  removeCover,
  setCover,
} from '../../../../renderer/editing/covers.ts';
import { takeFit } from '../../../../renderer/editing/drawn-body.ts';
import {
  boundToSide,
  flipParts,
  moveParts,
  turnOverParts,
  turnParts,
} from '../../../../renderer/editing/move-parts.ts';
import { setPackage, setPin1 } from '../../../../renderer/editing/parts.ts';
import { chosen, nextRefdes, placedParts, readPlacing, startingPlacing } from '../../../../renderer/editing/placing.ts';
import { seenAxis } from '../../../../renderer/editing/seen-axis.ts';
import { addSiteOn } from '../../../../renderer/editing/sites.ts';
import { setTag, tagsOf } from '../../../../renderer/editing/tags.ts';
import { addWatchPoint, watchPointsOf } from '../../../../renderer/editing/watch-points.ts';
import { ownToBoard, type Part } from '../../../../shared-types/board.ts';
import type { TicketDocument } from '../../../../shared-types/plan.ts';
import { offerPackages } from '../../../../shared-types/rules/package-offers.ts';
import { nextPin1, pin1Places } from '../../../../shared-types/rules/pin1.ts';
import { suggestPackages } from '../../../../shared-types/rules/suggest-packages.ts';
import { part, smallDocument } from './sample-document.ts';

const named = (document: TicketDocument, refdes: string): Part => {
  const found = document.board.parts.find((one) => one.refdes === refdes);
  if (!found) throw new Error(`no ${refdes}`);
  return found;
};

test('a part with a taken designator is refused, and the next free one is offered', () => {
  const start = smallDocument();
  expect(addParts(start, [part('C1', 5, 5)])).toBe(start);
  expect(addParts(start, [part('C3', 5, 5)]).board.parts).toHaveLength(6);
  expect(refdesFault(start, 'C1', 'C2')).toEqual({ free: 'C3' });
  expect(refdesFault(start, 'C2', 'C2')).toBeNull();
});

test('a renamed part takes its tags, site and thermocouple along', () => {
  let next = setTag(addSiteOn(smallDocument(), 'U1'), ['C1'], 'shield');
  next = addWatchPoint(next, { x: 40, y: 30 }, 'top', 'U1');
  next = renamePart(renamePart(next, 'U1', 'U7'), 'C1', 'C9');
  expect(next.plan.sites[0]).toMatchObject({ target: 'U7', name: 'U7' });
  expect(tagsOf(next, 'U7').map((tag) => tag.kind)).toEqual(['replace']);
  expect(tagsOf(next, 'C9').map((tag) => tag.kind)).toEqual(['shield']);
  expect(watchPointsOf(next)[0].refdes).toBe('U7');
  expect(renamePart(next, 'U7', 'C9')).toBe(next);
});

test('a deleted part takes its tags and site along; its thermocouple stays on bare board', () => {
  let next = setTag(addSiteOn(smallDocument(), 'U1'), ['C1'], 'shield');
  next = addWatchPoint(next, { x: 40, y: 30 }, 'top', 'U1');
  next = deleteParts(next, ['U1', 'C1', 'NOPE']);
  expect(next.board.parts.map((one) => one.refdes)).toEqual(['C2', 'R1', 'U2']);
  expect(next.plan.sites).toEqual([]);
  expect(next.plan.heatRuns).toEqual([]);
  expect(next.plan.tags).toMatchObject([{ kind: 'watchPoint', refdes: null, x: 40, y: 30 }]);
});

test('what lies on a part moves and turns with it', () => {
  let next = addWatchPoint(addSiteOn(smallDocument(), 'U1'), { x: 44, y: 30 }, 'top', 'U1');
  next = turnParts(moveParts(next, ['U1'], { x: 2, y: -1 }), ['U1'], 90);
  expect(named(next, 'U1')).toMatchObject({ x: 42, y: 29, turn: 90 });
  expect(next.plan.sites[0].area).toMatchObject({ x: 42, y: 29, turnDeg: 90 });
  expect(watchPointsOf(next)[0]).toMatchObject({ x: 42, y: 33 });
});

test('parts turn together about their middle', () => {
  const next = turnParts(smallDocument(), ['C1', 'C2'], 90);
  expect(named(next, 'C1')).toMatchObject({ x: 40, y: 40, turn: 90 });
  expect(named(next, 'C2')).toMatchObject({ x: 40, y: 20, turn: 90 });
});

test('turning over twice is nothing, and pin 1 is seen from below where it was seen from above', () => {
  const start = setPin1(smallDocument(), ['U1'], nextPin1);
  const over = turnOverParts(start, ['U1', 'C1']);
  expect(named(over, 'U1').side).toBe('bottom');
  expect(turnOverParts(over, ['U1', 'C1'])).toEqual(start);
  // Seen from below, x runs the other way: a mark left of the middle is left of it again.
  const seen = (document: TicketDocument) => {
    const one = named(document, 'U1');
    const at = ownToBoard(one, one.pin1 ?? { x: 0, y: 0 });
    return { x: (one.side === 'bottom' ? -1 : 1) * (at.x - one.x), y: at.y - one.y };
  };
  expect(seen(over).x).toBeCloseTo(seen(start).x, 6);
  expect(seen(over).y).toBeCloseTo(seen(start).y, 6);
});

test('the target of a site does not change its side', () => {
  const next = addSiteOn(smallDocument(), 'U1');
  expect(boundToSide(next, ['C1', 'U1'])).toEqual(['U1']);
  expect(flipParts(next, ['C1', 'U1'])).toBe(next);
  expect(named(flipParts(next, ['C1']), 'C1').side).toBe('bottom');
});

test('edges come on one line, gaps become equal', () => {
  const start = addParts(smallDocument(), [part('C5', 20, 12), part('C6', 33, 14, { turn: 90 })]);
  const level = alignParts(start, ['R1', 'C5', 'C6'], 'y', 'most');
  for (const refdes of ['R1', 'C5', 'C6']) expect(spanOf(named(level, refdes), 'y').most).toBeCloseTo(15, 6);
  const spaced = distributeParts(level, ['R1', 'C5', 'C6'], 'x');
  const [a, b, c] = ['R1', 'C5', 'C6'].map((refdes) => spanOf(named(spaced, refdes), 'x'));
  expect(b.least - a.most).toBeCloseTo(c.least - b.most, 3);
  expect([a.least, c.most]).toEqual([9, 33.5]);
});

test('left is what the eye sees, on the bottom and in a turned view too', () => {
  expect(seenAxis('left', { shownSide: 'top', viewTurnDeg: 0 })).toEqual({ axis: 'x', edge: 'least' });
  expect(seenAxis('left', { shownSide: 'bottom', viewTurnDeg: 0 })).toEqual({ axis: 'x', edge: 'most' });
  // Turned by 90 degrees counter-clockwise, the board's +y points to the left.
  expect(seenAxis('left', { shownSide: 'top', viewTurnDeg: 90 })).toEqual({ axis: 'y', edge: 'most' });
});

test('copies get the next free designators, also on the other side', () => {
  const copies = copiesOf(
    smallDocument(),
    ['C1', 'R1'],
    [{ by: { x: 0, y: -2 } }, { by: { x: 0, y: 0 }, otherSide: true }],
  );
  expect(copies.parts.map((one) => `${one.refdes} ${one.side} ${one.y}`)).toEqual([
    'C3 top 28',
    'R2 top 8',
    'C4 bottom 30',
    'R3 bottom 10',
  ]);
});

test('a chosen package brings its letters; a line may begin with the designator', () => {
  const bga = offerPackages('BGA 17x17 0.8')[0];
  const first = { ...startingPlacing, ...chosen(startingPlacing, bga, null) };
  expect(nextRefdes(first, smallDocument())).toBe('U3');
  const named45 = readPlacing('c45 0402', [], '');
  expect(named45).toMatchObject({ refdes: 'C45', offers: [{ name: 'C 0402' }, {}, {}, {}, {}] });
  expect(readPlacing('sot23 5', [], '').refdes).toBeNull();
  expect(readPlacing('sc70 5', [{ ...bga, name: 'SC-70-5' }], '').refdes).toBeNull();
  expect(readPlacing('l1 1206', [], '')).toMatchObject({ refdes: 'L1', offers: [{ name: 'L 1206' }, {}, {}, {}, {}] });
  expect(readPlacing('d1 sma', [], '').offers[0].name).toBe('SMA');
  const parts = [
    ...smallDocument().board.parts,
    { ...smallDocument().board.parts[0], refdes: 'U8', pin1: { x: 1, y: 2 }, package: { ...bga, name: 'Own 9x9' } },
  ];
  expect(readPlacing('u9', [], '', parts)).toMatchObject({ refdes: 'U9', offers: [{ name: 'Own 9x9' }, {}] });
  expect(readPlacing('xq9', [], '', parts).refdes).toBeNull();
  expect(chosen({ ...first, turn: 33 }, bga, null).turn).toBe(0);
  expect(chosen({ ...first, turn: 270 }, bga, null).turn).toBe(270);
  expect(chosen(first, { ...bga, name: 'Own 9x9' }, null, parts).pin1).toEqual({ x: 1, y: 2 });
  expect(nextRefdes({ ...first, ...chosen(first, named45.offers[0], 'C45') }, smallDocument())).toBe('C45');
  const two = placedParts(first, smallDocument(), [
    { x: 1, y: 2, turn: 30, side: 'top' },
    { x: 3, y: 4, turn: 0, side: 'bottom' },
  ]);
  expect(two.map((one) => [one.refdes, one.side, one.turn])).toEqual([
    ['U3', 'top', 30],
    ['U4', 'bottom', 0],
  ]);
});

test('another package keeps a confirmed class and the corner of pin 1', () => {
  const start = setPin1(smallDocument(), ['U1'], (one) => pin1Places(one)[2]);
  const next = setPackage(start, ['U1', 'C1'], offerPackages('SOIC-8')[0]);
  expect(named(next, 'U1')).toMatchObject({ class: 'so', package: { lengthMm: 4.9, widthMm: 3.9 }, pinCount: 8 });
  expect(named(next, 'U1').pin1).toEqual({ x: (0.84 * 4.9) / 2, y: (-0.84 * 3.9) / 2 });
  const confirmed = {
    ...start,
    board: { ...start.board, parts: start.board.parts.map((one) => ({ ...one, classGuessed: false })) },
  };
  expect(named(setPackage(confirmed, ['U1'], offerPackages('SOIC-8')[0]), 'U1').class).toBe('bga');
});

test('the drawn body takes another package, turned the way that fits it', () => {
  const drawn = { refdes: 'U1', lengthMm: 4, widthMm: 5, turn: 0 };
  const fit = suggestPackages(4, 5).find((one) => one.offer.name === 'SOIC-8');
  if (!fit) throw new Error('SOIC-8 is not near');
  expect(named(takeFit(smallDocument(), drawn, fit), 'U1')).toMatchObject({ turn: 90, package: { name: 'SOIC-8' } });
});

test('pin 1 goes round the corners by a key, and away', () => {
  let next = smallDocument();
  const seen = Array.from({ length: 5 }, () => {
    next = setPin1(next, ['U1'], nextPin1);
    return named(next, 'U1').pin1;
  });
  expect(seen.map((at) => at && [Math.sign(at.x), Math.sign(at.y)])).toEqual([
    [-1, 1],
    [-1, -1],
    [1, -1],
    [1, 1],
    undefined,
  ]);
});

test('a cover has a name of its own, is lifted by a tag and takes it along', () => {
  const area = { x: 40, y: 30, lengthMm: 20, widthMm: 18, turnDeg: 0 };
  let next = addCover(smallDocument(), coverOn('SH1', 'can', 'top', area));
  next = liftCover(next, 'SH1', true);
  expect(liftedCover(next, 'SH1')).toBe(true);
  next = setCover(next, 'SH1', { id: 'U1', heightMm: 5 });
  expect(next.board.covers[0]).toMatchObject({ id: 'SH1', heightMm: 5 });
  next = setCover(next, 'SH1', { id: 'SH7' });
  expect(liftedCover(next, 'SH7')).toBe(true);
  expect(removeCover(next, 'SH7').plan.tags).toEqual([]);
});
