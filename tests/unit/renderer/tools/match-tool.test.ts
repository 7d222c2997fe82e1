import { describe, expect, test } from 'vitest';
import { placeOf } from '../../../../renderer/photos/place-of.ts';
import type { BoardPhoto, MatchPair } from '../../../../shared-types/photo.ts';
import { mapPoint } from '../../../../shared-types/rules/plane-maps.ts';
import { photoEdits } from '../../../../shared-types/words/window/photo.ts';
import { benchModel } from './bench.ts';
import { drive } from './driver.ts';

/** A photo of 1000 x 600 pixels, laid over the board of 100 x 60 mm by guess: ten pixels a mm. */
function photoWith(pairs: MatchPair[] = [], rest: Partial<BoardPhoto> = {}): BoardPhoto {
  const sha256 = 'a'.repeat(64);
  return {
    ...{ id: 'photo-1', side: 'top', name: 'bench.jpg', sha256, mediaType: 'image/jpeg', orientation: 1 },
    ...{ widthPx: 1000, heightPx: 600, pairs, fit: null, opacity: 0.7, shown: true },
    working: { sha256, mediaType: 'image/jpeg', widthPx: 1000, heightPx: 600 },
    ...rest,
  };
}

function bench(photo: BoardPhoto) {
  const model = benchModel({ photoId: photo.id });
  const board = { ...model.document.board, photos: [photo] };
  const driver = drive({ ...model, document: { ...model.document, board } }).use('match');
  const now = () => driver.model().document.board.photos[0];
  return { driver, now };
}

const pair = (id: string, photo: [number, number], board: [number, number]): MatchPair => ({
  ...{ id, photo: { x: photo[0], y: photo[1] }, board: { x: board[0], y: board[1] }, anchor: 'free', refdes: null },
});
const PAIRS = [pair('pair-1', [100, 500], [10, 10]), pair('pair-2', [900, 100], [90, 50])];

describe('matching', () => {
  test('a click in the photo and one near a part make a pair with the part, in one step', () => {
    const { driver, now } = bench(photoWith());
    driver.click({ x: 47, y: 33 });
    expect(driver.sketch()).toMatchObject({ kind: 'pair', from: { x: 47, y: 33 } });
    driver.click({ x: 50.4, y: 30.3 });
    expect(now().pairs).toEqual([
      { id: 'pair-1', photo: { x: 470, y: 270 }, board: { x: 50, y: 30 }, anchor: 'part', refdes: 'U1' },
    ]);
    driver.expectSteps(photoEdits.addPair);
    expect(driver.sketch()).toBeNull();
  });

  test('Alt suspends snapping; Enter leaves the point where it lies; Esc takes back the half of a pair', () => {
    const { driver, now } = bench(photoWith());
    driver.click({ x: 47, y: 33 }).hold({ alt: true }).click({ x: 50.4, y: 30.3 }).hold({});
    expect(now().pairs[0]).toMatchObject({ anchor: 'free', board: { x: 50.4, y: 30.3 } });
    driver.click({ x: 70, y: 20 });
    const lying = driver.sketch();
    expect(driver.keyDown('Enter')).toBe(true);
    expect(lying).toMatchObject({ from: { x: 70, y: 20 } });
    expect(now().pairs[1]).toMatchObject({ anchor: 'free', board: { x: 70, y: 20 } });
    driver.click({ x: 30, y: 20 });
    driver.keyDown('Escape');
    expect(now().pairs).toHaveLength(2);
    expect(driver.model().tool).toBe('match');
    driver.keyDown('Escape');
    expect(driver.model().tool).toBe('select');
  });

  test('a click beside the photo takes no point', () => {
    const { driver, now } = bench(photoWith(PAIRS));
    driver.click({ x: -20, y: 30 }).click({ x: 50, y: 30 });
    expect(now().pairs).toHaveLength(2);
  });

  test('the drawing is met at part centres, corners, and nowhere beyond reach', () => {
    const { driver, now } = bench(photoWith());
    driver.click({ x: 20, y: 25 }).click({ x: 0.5, y: 0.4 });
    driver.click({ x: 60, y: 25 }).click({ x: 60, y: 52 });
    expect(now().pairs.map(({ anchor, board }) => [anchor, board.x, board.y])).toEqual([
      ['corner', 0, 0],
      ['free', 60, 52],
    ]);
  });

  test('the ring is dragged: the photo lies still meanwhile, and the point under it is taken', () => {
    const { driver, now } = bench(photoWith(PAIRS));
    const before = placeOf(now(), driver.model().document.board);
    driver.pointerDown({ x: 10, y: 10 }).pointerMove({ x: 11, y: 12 }).pointerMove({ x: 12, y: 14 });
    expect(now().pairs).toBe(PAIRS);
    expect(driver.sketch()).toMatchObject({ kind: 'pair', to: { x: 10, y: 10 }, lens: { photoId: 'photo-1' } });
    driver.pointerUp({ x: 12, y: 14 });
    const there = mapPoint(before.toPhoto, { x: 12, y: 14 });
    expect(now().pairs[0].photo.x).toBeCloseTo(there.x, 0);
    expect(now().pairs[0].photo.y).toBeCloseTo(there.y, 0);
    driver.expectSteps(photoEdits.movePair);
    expect(driver.model().pairId).toBe('pair-1');
  });

  test('the chosen pair moves by arrow keys, ten with Shift, and goes with Delete', () => {
    const { driver, now } = bench(photoWith(PAIRS));
    driver.click({ x: 10, y: 10 });
    expect(driver.model().pairId).toBe('pair-1');
    driver.keyDown('ArrowRight');
    driver.hold({ shift: true }).keyDown('ArrowUp');
    expect(now().pairs[0].photo).toEqual({ x: 101, y: 490 });
    driver.hold({}).keyDown('Delete');
    expect(now().pairs.map(({ id }) => id)).toEqual(['pair-2']);
  });

  test('a photo of the other side is out of reach', () => {
    const { driver, now } = bench(photoWith([], { side: 'bottom' }));
    driver.click({ x: 47, y: 33 }).click({ x: 50, y: 30 });
    expect(now().pairs).toEqual([]);
  });
});

test('a finger may slide while it looks for the place: what counts is where it lifts, for both points', () => {
  const { driver, now } = bench(photoWith());
  driver.byTouch();
  driver.pointerDown({ x: 40, y: 33 }).pointerMove({ x: 44, y: 33 }).pointerUp({ x: 47, y: 33 });
  driver.pointerDown({ x: 55, y: 25 }).pointerMove({ x: 52, y: 28 }).pointerUp({ x: 50.5, y: 30.2 });
  expect(now().pairs).toMatchObject([{ photo: { x: 470, y: 270 }, anchor: 'part', refdes: 'U1' }]);
});
