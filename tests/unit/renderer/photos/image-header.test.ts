import { describe, expect, test } from 'vitest';
import { type ImageHeader, readImageHeader } from '../../../../renderer/photos/image-header.ts';
import { isHeif } from '../../../../shared-types/rules/image-type.ts';
import { exifBlock, joined, jpegWith, pngWith, tiffWith, webpWith } from '../../../support/pictures.ts';

const makers = { jpeg: jpegWith, png: pngWith, webp: webpWith, tiff: tiffWith };
const kinds = Object.keys(makers) as (keyof typeof makers)[];
const read = (bytes: Uint8Array<ArrayBuffer>): ImageHeader => {
  const header = readImageHeader(bytes);
  if (header === null || header === 'cut-off') throw new Error(String(header));
  return header;
};

describe.each(kinds)('%s', (kind) => {
  test.each([1, 2, 3, 4, 5, 6, 7, 8] as const)('with orientation %i: size as stored, and the tag', (orientation) => {
    for (const little of [true, false]) {
      const header = read(makers[kind](40, 30, exifBlock(orientation, little)));
      expect(header).toMatchObject({ type: `image/${kind}`, widthPx: 40, heightPx: 30, orientation });
      // What is handed to the decoder says nothing of an orientation any more.
      expect(read(joined(header.unturned)).orientation).toBe(1);
    }
  });

  test('without a tag counts as upright', () => {
    expect(read(makers[kind](40, 30, null)).orientation).toBe(1);
  });
});

test.each(['jpeg', 'png', 'webp'] as const)('a %s cut off anywhere is noticed', (kind) => {
  const whole = makers[kind](40, 30, exifBlock(6, true));
  for (let length = 16; length < whole.length; length++)
    expect(readImageHeader(whole.slice(0, length)), `after ${length} bytes`).toBe('cut-off');
});

test('other files are no pictures; the form of phones is told apart', () => {
  const text = new TextEncoder();
  expect(readImageHeader(text.encode('%PDF-1.7'))).toBeNull();
  expect(readImageHeader(new Uint8Array())).toBeNull();
  const heic = text.encode('\0\0\0\x18ftypheic\0\0\0\0mif1heic');
  expect(readImageHeader(heic)).toBeNull();
  expect(isHeif(heic)).toBe(true);
  expect(isHeif(jpegWith(4, 4, null))).toBe(false);
});
