import { expect, test } from 'vitest';
import { emptyHistory, record, redo, undo } from '../../../../renderer/editing/history.ts';
import {
  addPair,
  addPhoto,
  type NewPhoto,
  raisePhoto,
  removePair,
  removePhoto,
  setPair,
  setPairDistance,
  setPhoto,
} from '../../../../renderer/editing/photos.ts';
import { emptyBoard } from '../../../../shared-types/board.ts';
import type { MatchPair } from '../../../../shared-types/photo.ts';
import type { TicketDocument } from '../../../../shared-types/plan.ts';
import { boardFault } from '../../../../shared-types/rules/board-faults.ts';
import { emptyPlan } from '../../../../shared-types/rules/new-plan.ts';
import { placePhoto } from '../../../../shared-types/rules/photo-place.ts';
import { mapPoint } from '../../../../shared-types/rules/plane-maps.ts';

const start: TicketDocument = { board: emptyBoard('Invented board', 60, 40), plan: emptyPlan('T-1') };
const sha256 = 'c'.repeat(64);
const photo: NewPhoto = {
  ...{ side: 'top', name: 'bench.jpg', sha256, mediaType: 'image/jpeg', widthPx: 1200, heightPx: 800, orientation: 1 },
  working: { sha256, mediaType: 'image/jpeg', widthPx: 1200, heightPx: 800 },
};
const free = (photoAt: [number, number], boardAt: [number, number]): Omit<MatchPair, 'id'> => ({
  ...{ photo: { x: photoAt[0], y: photoAt[1] }, board: { x: boardAt[0], y: boardAt[1] }, anchor: 'free', refdes: null },
});
const withTwo = addPhoto(addPhoto(start, photo), { ...photo, name: 'closer.jpg' });
const ids = ({ board }: TicketDocument) => board.photos.map(({ id }) => id);

test('photos are added on top, put on top, and removed', () => {
  expect(ids(withTwo)).toEqual(['photo-1', 'photo-2']);
  expect(ids(raisePhoto(withTwo, 'photo-1'))).toEqual(['photo-2', 'photo-1']);
  expect(ids(removePhoto(withTwo, 'photo-1'))).toEqual(['photo-2']);
  expect(raisePhoto(withTwo, 'none')).toBe(withTwo);
  expect(setPhoto(withTwo, 'none', { shown: false })).toBe(withTwo);
  expect(boardFault(withTwo.board)).toBeNull();
});

test('every edit of photos and pairs is taken back whole and done again', () => {
  const edits: ((document: TicketDocument) => TicketDocument)[] = [
    (d) => addPhoto(d, photo),
    (d) => setPhoto(d, 'photo-1', { opacity: 0.4, side: 'bottom', fit: 'affine' }),
    (d) => addPair(d, 'photo-1', free([1, 2], [3, 4])),
    (d) => addPair(d, 'photo-1', free([500, 2], [30, 4])),
    (d) => setPair(d, 'photo-1', 'pair-1', { photo: { x: 9, y: 9 } }),
    (d) => setPairDistance(d, 'photo-1', 12),
    (d) => removePair(d, 'photo-1', 'pair-2'),
    (d) => addPhoto(d, { ...photo, name: 'closer.jpg' }),
    (d) => raisePhoto(d, 'photo-1'),
    (d) => removePhoto(d, 'photo-1'),
  ];
  const states = [start];
  let history = emptyHistory;
  for (const edit of edits) {
    const before = states[states.length - 1];
    states.push(edit(before));
    history = record(history, 'edit', before, states[states.length - 1]);
  }
  expect(history.done).toHaveLength(edits.length);
  let now = { history, document: states[states.length - 1] };
  for (let index = states.length - 2; index >= 0; index--) {
    now = undo(now.history, now.document)!;
    expect(now.document).toEqual(states[index]);
  }
  for (const state of states.slice(1)) {
    now = redo(now.history, now.document)!;
    expect(now.document).toEqual(state);
  }
});

test('places are kept to a tenth of a pixel and a micrometre; a board point that is typed leaves its anchor', () => {
  const anchored = addPair(withTwo, 'photo-1', {
    ...free([10.123, 20.456], [5.12345, 6.5]),
    ...{ anchor: 'part', refdes: 'U1' },
  });
  const [pair] = anchored.board.photos[0].pairs;
  expect(pair).toMatchObject({
    photo: { x: 10.1, y: 20.5 },
    board: { x: 5.123, y: 6.5 },
    anchor: 'part',
    refdes: 'U1',
  });
  const finer = setPair(anchored, 'photo-1', pair.id, { photo: { x: 11, y: 20 } }).board.photos[0].pairs[0];
  expect(finer).toMatchObject({ anchor: 'part', refdes: 'U1' });
  const moved = setPair(anchored, 'photo-1', pair.id, { board: { x: 1, y: 1 } }).board.photos[0].pairs[0];
  expect(moved).toMatchObject({ anchor: 'free', refdes: null, board: { x: 1, y: 1 } });
});

test('a photo without a drawing gets its scale from two points and their distance', () => {
  let document = addPhoto(start, photo);
  document = addPair(document, 'photo-1', free([200, 400], [10, 20]));
  document = addPair(document, 'photo-1', free([1000, 400], [50, 20]));
  document = setPairDistance(document, 'photo-1', 85.6);
  const { fit, toBoard } = placePhoto(document.board.photos[0], { minX: 0, minY: 0, maxX: 60, maxY: 40 });
  expect(fit).toMatchObject({ kind: 'similarity', turnedOver: false });
  expect(fit?.mmPerPixel).toBeCloseTo(85.6 / 800, 9);
  const [a, b] = [mapPoint(toBoard, { x: 200, y: 100 }), mapPoint(toBoard, { x: 200, y: 400 })];
  expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeCloseTo((300 * 85.6) / 800, 6);
  expect(document.board.photos[0].pairs[0].board).toEqual({ x: 10, y: 20 });
});
