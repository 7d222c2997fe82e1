import { expect, test } from 'vitest';
import type { Side } from '../../../../../shared-types/geometry.ts';
import { boardPhotoSchema, type PhotoFitKind } from '../../../../../shared-types/photo.ts';
import { fitPhoto, type PhotoFit, type PlacePair } from '../../../../../shared-types/rules/photo-fit.ts';
import { photoPatch } from '../../../../../shared-types/rules/photo-patch.ts';
import { chainMaps, divisorAt, invertMap, mapPoint } from '../../../../../shared-types/rules/plane-maps.ts';
import { at, noisyPairs, pairsUnder, randomFrom, TILTED } from './made-up.ts';

function fitted(pairs: PlacePair[], side: Side = 'top', kind: PhotoFitKind | null = null): PhotoFit {
  const result = fitPhoto(pairs, side, kind);
  if (!result.ok) throw new Error(result.refusal.code);
  return result.fit;
}
function refused(pairs: PlacePair[], kind: PhotoFitKind | null = null) {
  const result = fitPhoto(pairs, 'top', kind);
  if (result.ok) throw new Error('fitted');
  return result.refusal;
}

test('two pairs lay a top photo the right way up and a bottom photo mirrored, as it lies', () => {
  // 10 pixels a mm; the photo's y runs down. From above the board's x runs right on the photo, from below it runs left.
  const top = fitted([
    { photo: at(0, 400), board: at(0, 0) },
    { photo: at(600, 400), board: at(60, 0) },
  ]);
  expect(mapPoint(top.toBoard, at(0, 0))).toEqual({ x: expect.closeTo(0, 9), y: expect.closeTo(40, 9) });
  const bottom = fitted(
    [
      { photo: at(0, 400), board: at(60, 0) },
      { photo: at(600, 400), board: at(0, 0) },
    ],
    'bottom',
  );
  expect(mapPoint(bottom.toBoard, at(0, 0))).toEqual({ x: expect.closeTo(60, 9), y: expect.closeTo(40, 9) });
  for (const fit of [top, bottom])
    expect(fit).toMatchObject({ kind: 'similarity', spare: 0, leftOutRmsMm: null, turnedOver: false, mmPerPixel: 0.1 });
});

test('the kind goes with the number of pairs, and can be chosen', () => {
  const pairs = pairsUnder(TILTED, [at(100, 100), at(1900, 200), at(1700, 1300), at(200, 1200), at(900, 700)]);
  expect([2, 3, 4, 5].map((count) => fitted(pairs.slice(0, count)).kind)).toEqual([
    'similarity',
    'affine',
    'projective',
    'projective',
  ]);
  expect(fitted(pairs, 'top', 'affine').kind).toBe('affine');
  expect(fitted(pairs, 'top', 'affine').rmsMm).toBeGreaterThan(0.3);
  expect(fitted(pairs).rmsMm).toBeLessThan(1e-9);
});

test('a photo of the other side is told by its turn, once there are enough pairs to tell', () => {
  const pairs = pairsUnder(TILTED, [at(100, 100), at(1900, 200), at(1700, 1300), at(200, 1200)]);
  expect(fitted(pairs, 'top').turnedOver).toBe(false);
  expect(fitted(pairs, 'bottom').turnedOver).toBe(true);
  expect(fitted(pairs.slice(0, 3), 'bottom').turnedOver).toBe(true);
});

test('the left out distance is what a fit without the pair says, and the residual is smaller', () => {
  const pairs = noisyPairs(8, 0.1, randomFrom(3));
  const fit = fitted(pairs);
  const without = fitted(pairs.filter((_, index) => index !== 2));
  const there = mapPoint(without.toBoard, pairs[2].photo);
  expect(fit.leftOutMm[2]).toBeCloseTo(Math.hypot(there.x - pairs[2].board.x, there.y - pairs[2].board.y), 9);
  expect(fit.residuals[2].mm).toBeLessThan(fit.leftOutMm[2]!);
  const mean = fit.leftOutMm.reduce<number>((sum, mm) => sum + mm! ** 2, 0) / 8;
  expect(fit.leftOutRmsMm).toBeCloseTo(Math.sqrt(mean), 12);
});

test('the refined map lies nearer to the places than any small change of it', () => {
  const pairs = noisyPairs(9, 0.3, randomFrom(5));
  const { toBoard, rmsMm } = fitted(pairs);
  const rmsOf = (map: typeof toBoard) =>
    Math.sqrt(
      pairs.reduce((sum, { photo, board }) => {
        const there = mapPoint(map, photo);
        return sum + (there.x - board.x) ** 2 + (there.y - board.y) ** 2;
      }, 0) / 9,
    );
  expect(rmsOf(toBoard)).toBeCloseTo(rmsMm, 12);
  for (let cell = 0; cell < 8; cell++)
    for (const factor of [1 - 1e-4, 1 + 1e-4]) {
      const changed = toBoard.map((value, index) => (index === cell ? value * factor : value));
      expect(rmsOf(changed as unknown as typeof toBoard)).toBeGreaterThan(rmsMm);
    }
});

test('the answer does not depend on the units: metres for mm, a photo a million pixels off', () => {
  const pairs = noisyPairs(6, 0.1, randomFrom(9));
  const far = pairs.map(({ photo, board }) => ({
    photo: at(photo.x + 1e6, photo.y - 1e6),
    board: at(board.x * 1e-3, board.y * 1e-3),
  }));
  expect(fitted(far).rmsMm).toBeCloseTo(fitted(pairs).rmsMm * 1e-3, 9);
});

test('pairs that settle no map are refused with what is wrong', () => {
  const one = { photo: at(10, 10), board: at(1, 1) };
  expect(refused([one])).toMatchObject({ code: 'too-few-pairs', needed: 2 });
  expect(refused([one, { photo: at(10, 10), board: at(5, 1) }])).toMatchObject({
    code: 'same-place',
    on: 'photo',
    pairs: [0, 1],
  });
  expect(refused([one, { photo: at(90, 10), board: at(1, 1) }])).toMatchObject({ code: 'same-place', on: 'board' });
  const line = pairsUnder(TILTED, [at(0, 0), at(500, 400), at(1000, 800)]);
  expect(refused(line, 'affine')).toMatchObject({ code: 'on-one-line', on: 'photo', pairs: [0, 1, 2] });
  const lone = pairsUnder(TILTED, [at(0, 0), at(500, 400), at(1800, 100), at(1000, 800)]);
  expect(refused(lone, 'projective')).toMatchObject({ code: 'all-but-one-on-one-line', pairs: [0, 1, 3] });
});

test('a fourth pair on a line with two others does not take the picture away: a lower kind stays and says why', () => {
  const lone = pairsUnder(TILTED, [at(0, 0), at(500, 400), at(1800, 100), at(1000, 800)]);
  const fit = fitted(lone);
  expect(fit.kind).toBe('affine');
  expect(fit.heldBack).toMatchObject({ code: 'all-but-one-on-one-line', pairs: [0, 1, 3] });
});

test('a projective map that would fold the board is refused: corners given crosswise', () => {
  const photos = [at(0, 0), at(1000, 0), at(1000, 1000), at(0, 1000)];
  const boards = [at(0, 0), at(60, 40), at(60, 0), at(0, 40)];
  const crossed = photos.map((photo, index) => ({ photo, board: boards[index] }));
  expect(refused(crossed, 'projective').code).toBe('folded');
});

test('maps chain and turn back', () => {
  const back = invertMap(TILTED)!;
  const there = mapPoint(TILTED, at(123, 456));
  expect(mapPoint(back, there)).toEqual({ x: expect.closeTo(123, 8), y: expect.closeTo(456, 8) });
  const once = chainMaps(back, TILTED);
  expect(once.map((value) => value / once[8])).toEqual([1, 0, 0, 0, 1, 0, 0, 0, 1].map((v) => expect.closeTo(v, 9)));
  expect(invertMap([1, 2, 0, 2, 4, 0, 0, 0, 1])).toBeNull();
});

test('the corners of the photo on the board; a photo up to the horizon is cut before it', () => {
  const plain = fitted(pairsUnder(TILTED, [at(100, 100), at(1900, 200), at(1700, 1300), at(200, 1200)]));
  const patch = photoPatch(plain, 2000, 1400);
  expect(patch.photo).toEqual([at(0, 0), at(2000, 0), at(2000, 1400), at(0, 1400)]);
  const corner = mapPoint(TILTED, at(2000, 1400));
  expect(patch.board[2]).toEqual({ x: expect.closeTo(corner.x, 6), y: expect.closeTo(corner.y, 6) });

  // The divisor falls to 0 at y = 200: the upper edge of this photo lies beyond the horizon.
  const shifted = pairsUnder(
    [0.05, 0, 0, 0, -0.05, 60, 0, 5e-4, -0.1],
    [at(300, 600), at(1700, 600), at(1500, 1300), at(400, 1200)],
  );
  const horizon = fitted(shifted);
  const clipped = photoPatch(horizon, 2000, 1400);
  expect(Math.min(...clipped.photo.map(({ y }) => y))).toBeGreaterThan(200);
  for (const point of clipped.photo) expect(divisorAt(horizon.toBoard, point)).toBeGreaterThan(0.0999);
});

test('a photo as the board keeps it passes its schema; an unknown field or a bad hash does not', () => {
  const photo = {
    id: 'photo-1',
    side: 'top',
    name: 'bench.jpg',
    sha256: 'a'.repeat(64),
    mediaType: 'image/jpeg',
    widthPx: 2000,
    heightPx: 1400,
    orientation: 6,
    working: { sha256: 'b'.repeat(64), mediaType: 'image/jpeg', widthPx: 1000, heightPx: 700 },
    pairs: [{ id: 'pair-1', photo: at(1, 2), board: at(3, 4), anchor: 'free', refdes: null }],
    fit: null,
    opacity: 0.6,
    shown: true,
  };
  expect(boardPhotoSchema.safeParse(photo).success).toBe(true);
  expect(boardPhotoSchema.safeParse({ ...photo, sha256: 'abc' }).success).toBe(false);
  expect(boardPhotoSchema.safeParse({ ...photo, orientation: 9 }).success).toBe(false);
  expect(boardPhotoSchema.safeParse({ ...photo, matrix: [] }).success).toBe(false);
});
