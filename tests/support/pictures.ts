import { crc32, deflateSync } from 'node:zlib';

/** Pictures made byte by byte after their standards, so that headers can be tested without a decoder. */

const u16 = (value: number, little: boolean): number[] => {
  const bytes = [value >> 8, value & 255];
  return little ? bytes.reverse() : bytes;
};
const u32 = (value: number, little: boolean): number[] => {
  const bytes = [24, 16, 8, 0].map((shift) => (value >>> shift) & 255);
  return little ? bytes.reverse() : bytes;
};
const text = (letters: string): number[] => [...letters].map((letter) => letter.charCodeAt(0));

export function joined(pieces: readonly (Uint8Array | number[])[]): Uint8Array<ArrayBuffer> {
  return new Uint8Array(Buffer.concat(pieces.map((piece) => Buffer.from(piece))));
}

export type ExifBlock = { orientation: number; little: boolean };
export const exifBlock = (orientation: number, little: boolean): ExifBlock => ({ orientation, little });

/** A TIFF block of one directory: entries of tag, type (3: short, 4: long), value. TIFF 6.0, section 2. */
function directory(little: boolean, entries: [tag: number, type: number, value: number][]): number[] {
  const rows = entries.flatMap(([tag, type, value]) => [
    ...u16(tag, little),
    ...u16(type, little),
    ...u32(1, little),
    ...(type === 3 ? [...u16(value, little), 0, 0] : u32(value, little)),
  ]);
  const mark = little ? text('II') : text('MM');
  return [...mark, ...u16(42, little), ...u32(8, little), ...u16(entries.length, little), ...rows, 0, 0, 0, 0];
}

const exifBytes = ({ orientation, little }: ExifBlock): number[] => directory(little, [[274, 3, orientation]]);

/** The markers of a JPEG up to and with a scan of a few bytes; it decodes to nothing. */
export function jpegWith(widthPx: number, heightPx: number, exif: ExifBlock | null): Uint8Array<ArrayBuffer> {
  const segment = (marker: number, data: number[]) => [0xff, marker, ...u16(data.length + 2, false), ...data];
  return joined([
    [0xff, 0xd8],
    exif ? segment(0xe1, [...text('Exif\0\0'), ...exifBytes(exif)]) : [],
    segment(0xc0, [8, ...u16(heightPx, false), ...u16(widthPx, false), 1, 1, 0x11, 0]),
    segment(0xda, [1, 1, 0, 0, 63, 0]),
    [0x12, 0xff, 0x00, 0x34, 0xff, 0xd9],
  ]);
}

/** A PNG of rows of RGB pixels; a mid grey where none are given. */
export function pngWith(
  widthPx: number,
  heightPx: number,
  exif: ExifBlock | null,
  pixelAt: (x: number, y: number) => readonly [number, number, number] = () => [128, 128, 128],
): Uint8Array<ArrayBuffer> {
  const chunk = (type: string, data: Uint8Array | number[]) => {
    const body = joined([text(type), data]);
    return joined([u32(data.length, false), body, u32(crc32(body), false)]);
  };
  const rows = new Uint8Array(heightPx * (1 + 3 * widthPx));
  for (let y = 0; y < heightPx; y++)
    for (let x = 0; x < widthPx; x++) rows.set(pixelAt(x, y), y * (1 + 3 * widthPx) + 1 + 3 * x);
  return joined([
    [0x89, ...text('PNG\r\n'), 0x1a, 0x0a],
    chunk('IHDR', [...u32(widthPx, false), ...u32(heightPx, false), 8, 2, 0, 0, 0]),
    exif ? chunk('eXIf', exifBytes(exif)) : [],
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', []),
  ]);
}

/** A WebP with an extended header; its picture data decodes to nothing. */
export function webpWith(widthPx: number, heightPx: number, exif: ExifBlock | null): Uint8Array<ArrayBuffer> {
  const three = (value: number) => u32(value, true).slice(0, 3);
  const chunk = (type: string, data: number[]) => [
    ...text(type),
    ...u32(data.length, true),
    ...data,
    ...(data.length % 2 ? [0] : []),
  ];
  const body = [
    ...text('WEBP'),
    ...chunk('VP8X', [exif ? 8 : 0, 0, 0, 0, ...three(widthPx - 1), ...three(heightPx - 1)]),
    ...chunk('VP8 ', [0, 0, 0, 0x9d, 1, 0x2a, ...u16(widthPx, true), ...u16(heightPx, true)]),
    ...(exif ? chunk('EXIF', exifBytes(exif)) : []),
  ];
  return joined([text('RIFF'), u32(body.length, true), body]);
}

/** The directory of a TIFF without its strips. */
export function tiffWith(widthPx: number, heightPx: number, exif: ExifBlock | null): Uint8Array<ArrayBuffer> {
  const orientation: [number, number, number][] = exif ? [[274, 3, exif.orientation]] : [];
  return joined([directory(exif?.little ?? true, [[256, 4, widthPx], [257, 3, heightPx], ...orientation])]);
}

/** A JPEG that a browser encoded, with an EXIF block put in behind its start. */
export function jpegWithExif(jpeg: Uint8Array, exif: ExifBlock): Uint8Array<ArrayBuffer> {
  const data = [...text('Exif\0\0'), ...exifBytes(exif)];
  return joined([jpeg.subarray(0, 2), [0xff, 0xe1, ...u16(data.length + 2, false)], data, jpeg.subarray(2)]);
}

/** A whole grey TIFF of one uncompressed strip. */
export function greyTiffWith(
  widthPx: number,
  heightPx: number,
  orientation: number,
  greyAt: (x: number, y: number) => number,
): Uint8Array<ArrayBuffer> {
  const entries = 9;
  const strip = 8 + 2 + 12 * entries + 4;
  const head = directory(true, [
    [256, 4, widthPx],
    [257, 4, heightPx],
    [258, 3, 8],
    [259, 3, 1],
    [262, 3, 1],
    [273, 4, strip],
    [274, 3, orientation],
    [278, 4, heightPx],
    [279, 4, widthPx * heightPx],
  ]);
  const pixels = Array.from({ length: widthPx * heightPx }, (_, index) =>
    greyAt(index % widthPx, Math.floor(index / widthPx)),
  );
  return joined([head, pixels]);
}
