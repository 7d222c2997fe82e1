import { expect, test } from 'vitest';
import { createArrivals } from '../../../../main/files/arriving-pictures.ts';
import { contentHash } from '../../../../main/files/content-hash.ts';
import type { PicturePiece } from '../../../../shared-types/contract.ts';

const MB = 1024 * 1024;
const picture = new Uint8Array(1000).map((_, index) => (index < 3 ? [0xff, 0xd8, 0xff][index] : index % 251));
const piece = (arrival: string, at: number, end: number, bytes = picture): PicturePiece => ({
  ...{ id: 'ticket', arrival, size: bytes.byteLength, at, bytes: bytes.slice(at, end) },
});
const problemOf = (result: ReturnType<ReturnType<typeof createArrivals>['take']>) =>
  result.ok ? null : result.problem.code;

test('pieces of two pictures that come by turns: each is whole at its end, with its hash', () => {
  const arrivals = createArrivals();
  const other = picture.map((byte, index) => (index > 3 ? 255 - byte : byte));
  for (let at = 0; at < 900; at += 300) {
    expect(arrivals.take(piece('one', at, at + 300))).toEqual({ ok: true, value: null });
    expect(arrivals.take(piece('two', at, at + 300, other))).toEqual({ ok: true, value: null });
  }
  const ends = [arrivals.take(piece('two', 900, 1000, other)), arrivals.take(piece('one', 900, 1000))];
  expect(ends).toEqual([other, picture].map((bytes) => ({ ok: true, value: { bytes, sha256: contentHash(bytes) } })));
});

test('a piece that is missing, comes twice, is empty, reaches over the end or tells another size breaks the picture off', () => {
  const over = { ...piece('one', 300, 1000), bytes: picture.slice(0, 701) };
  const otherSize = { ...piece('one', 300, 600), size: 2000 };
  for (const wrong of [piece('one', 600, 900), piece('one', 0, 300), piece('one', 300, 300), over, otherSize]) {
    const arrivals = createArrivals();
    arrivals.take(piece('one', 0, 300));
    const later = wrong.at === 0 ? { ...wrong, at: 299 } : wrong;
    expect(problemOf(arrivals.take(later))).toBe('invalid-field');
    expect(problemOf(arrivals.take(piece('one', 300, 600)))).toBe('invalid-field');
  }
  const tooMuch = { ...piece('one', 0, 1000), size: 999 };
  expect(problemOf(createArrivals().take(tooMuch))).toBe('invalid-field');
});

test('what is no picture or too large is refused with its first piece', () => {
  const text = new TextEncoder().encode('a picture, honestly');
  expect(problemOf(createArrivals().take(piece('one', 0, 10, text)))).toBe('not-a-picture');
  expect(problemOf(createArrivals().take({ ...piece('one', 0, 300), size: 161 * MB }))).toBe('too-large');
});

test('pictures that were begun and left take room for three, the newest', () => {
  const arrivals = createArrivals();
  for (const name of ['a', 'b', 'c', 'd']) arrivals.take(piece(name, 0, 300));
  expect(problemOf(arrivals.take(piece('a', 300, 600)))).toBe('invalid-field');
  expect(problemOf(arrivals.take(piece('b', 300, 600)))).toBeNull();
});
