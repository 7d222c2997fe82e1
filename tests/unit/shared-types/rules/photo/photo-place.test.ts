import { describe, expect, test } from 'vitest';
import type { BoardPhoto, MatchPair } from '../../../../../shared-types/photo.ts';
import { placePhoto } from '../../../../../shared-types/rules/photo-place.ts';
import { mapPoint } from '../../../../../shared-types/rules/plane-maps.ts';
import { at, pairsUnder, TILTED } from './made-up.ts';

const BOX = { minX: 10, minY: 20, maxX: 70, maxY: 60 };
const photo = (pairs: MatchPair[], rest: Partial<BoardPhoto> = {}) => ({
  ...{ side: 'top' as const, widthPx: 2000, heightPx: 1400, pairs, fit: null },
  ...rest,
});
const named = (pairs: ReturnType<typeof pairsUnder>): MatchPair[] =>
  pairs.map((pair, index) => ({ ...pair, id: `pair-${index + 1}`, anchor: 'free', refdes: null }));

describe('before there are pairs', () => {
  test('the photo covers the outline, upright, in the middle of it', () => {
    const { fit, refusal, toBoard, toPhoto } = placePhoto(photo([]), BOX);
    expect(fit).toBeNull();
    expect(refusal).toMatchObject({ code: 'too-few-pairs', needed: 2 });
    const [corner, other] = [mapPoint(toBoard, at(0, 0)), mapPoint(toBoard, at(2000, 1400))];
    // 60 x 40 mm under 2000 x 1400 pixels: the width decides, the height stands over by 1 mm on either side.
    expect(corner).toEqual({ x: expect.closeTo(10, 9), y: expect.closeTo(61, 9) });
    expect(other).toEqual({ x: expect.closeTo(70, 9), y: expect.closeTo(19, 9) });
    expect(mapPoint(toPhoto, corner)).toEqual({ x: expect.closeTo(0, 6), y: expect.closeTo(0, 6) });
  });

  test('a photo of the bottom lies as the board does when it is turned over', () => {
    const { toBoard } = placePhoto(photo([], { side: 'bottom' }), BOX);
    expect(mapPoint(toBoard, at(0, 0))).toEqual({ x: expect.closeTo(70, 9), y: expect.closeTo(61, 9) });
  });

  test('one pair moves it so that this pair meets', () => {
    const pairs = named([{ photo: at(300, 200), board: at(33, 44) }]);
    const { fit, toBoard } = placePhoto(photo(pairs), BOX);
    expect(fit).toBeNull();
    expect(mapPoint(toBoard, at(300, 200))).toEqual({ x: expect.closeTo(33, 9), y: expect.closeTo(44, 9) });
  });
});

test('a chosen kind that the pairs do not reach leaves the photo where the usual kind puts it, and says what is missing', () => {
  const pairs = named(pairsUnder(TILTED, [at(100, 100), at(1900, 200), at(1000, 1300)]));
  const { fit, refusal } = placePhoto(photo(pairs, { fit: 'projective' }), BOX);
  expect(fit?.kind).toBe('affine');
  expect(refusal).toMatchObject({ code: 'too-few-pairs', needed: 4 });
});

test('four pairs on the same line but one: the lower kind stays, with the reason', () => {
  const pairs = named(pairsUnder(TILTED, [at(0, 0), at(500, 400), at(1800, 100), at(1000, 800)]));
  const { fit, refusal } = placePhoto(photo(pairs), BOX);
  expect(fit?.kind).toBe('affine');
  expect(refusal?.code).toBe('all-but-one-on-one-line');
});
