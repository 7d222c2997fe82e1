import type { ImageType, Orientation } from '../../shared-types/photo.ts';
import { imageTypeOf } from '../../shared-types/rules/image-type.ts';
import { type Directory, readDirectory } from './exif-orientation.ts';

/** What the first look at a picture's bytes tells. Sizes are those of the stored rows and columns. */
export type ImageHeader = {
  type: ImageType;
  widthPx: number;
  heightPx: number;
  orientation: Orientation;
  /**
   * The bytes with the orientation taken out of them, in pieces: browsers turn what they decode by it, and not all kinds alike, so
   * that it is taken away and applied by our own rule once.
   */
  unturned: Uint8Array<ArrayBuffer>[];
};

type Found = { widthPx: number; heightPx: number; directory: Directory | null; whole: boolean };

/** Null: not a picture of a known kind. 'cut-off': its end is missing, or it makes no sense. */
export function readImageHeader(bytes: Uint8Array<ArrayBuffer>): ImageHeader | 'cut-off' | null {
  const type = imageTypeOf(bytes);
  if (type === null) return null;
  try {
    const { found, unturned } = readers[type](bytes);
    if (!found?.whole || found.widthPx < 1 || found.heightPx < 1) return 'cut-off';
    const { widthPx, heightPx, directory } = found;
    return { type, widthPx, heightPx, orientation: directory?.orientation ?? 1, unturned };
  } catch (error) {
    if (error instanceof RangeError) return 'cut-off';
    throw error;
  }
}

type Reading = { found: Found | null; unturned: Uint8Array<ArrayBuffer>[] };
const readers: Record<ImageType, (bytes: Uint8Array<ArrayBuffer>) => Reading> = {
  'image/jpeg': (bytes) => overwritten(bytes, readJpeg(bytes)),
  'image/png': readPng,
  'image/webp': (bytes) => overwritten(bytes, readWebp(bytes)),
  'image/tiff'(bytes) {
    const directory = readDirectory(bytes, 0);
    if (!directory?.widthPx || !directory.heightPx) return { found: null, unturned: [] };
    const { widthPx, heightPx } = directory;
    return overwritten(bytes, { widthPx, heightPx, directory, whole: true });
  },
};

/** The picture with orientation 1 written over its tag. */
function overwritten(bytes: Uint8Array<ArrayBuffer>, found: Found | null): Reading {
  const place = found?.directory?.orientationAt;
  if (!place || found?.directory?.orientation === 1) return { found, unturned: [bytes] };
  const patch = new Uint8Array(place.bytes);
  return { found, unturned: [bytes.subarray(0, place.at), patch, bytes.subarray(place.at + patch.length)] };
}

const viewOf = (bytes: Uint8Array) => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
const textAt = (bytes: Uint8Array, at: number, length: number) =>
  String.fromCharCode(...bytes.subarray(at, at + length));

const START_OF_SCAN = 0xda;
const APP1 = 0xe1;
const EXIF = 'Exif\0\0';
/** Start-of-frame markers: C0 to CF without the tables C4, C8 and CC. ITU-T T.81, table B.1. */
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;

/** ITU-T T.81, annex B: markers FF xx, each with its length, up to the first scan; the end marker FF D9 must follow it. */
function readJpeg(bytes: Uint8Array): Found | null {
  const view = viewOf(bytes);
  let size: { widthPx: number; heightPx: number } | null = null;
  let directory: Directory | null = null;
  for (let at = 2; at + 4 <= bytes.length; ) {
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1];
    if (marker === 0xff) {
      at++;
      continue;
    }
    if (isFrame(marker)) size = { heightPx: view.getUint16(at + 5), widthPx: view.getUint16(at + 7) };
    if (marker === APP1 && textAt(bytes, at + 4, 6) === EXIF) directory ??= readDirectory(bytes, at + 10);
    if (marker === START_OF_SCAN) return size && { ...size, directory, whole: endsAfter(bytes, at) };
    at += 2 + view.getUint16(at + 2);
  }
  return null;
}

/** Inside a scan FF is always followed by a stuffed 0 or a restart mark, so FF D9 after it can only be the end. */
function endsAfter(bytes: Uint8Array, scan: number): boolean {
  for (let at = bytes.length - 2; at > scan; at--) if (bytes[at] === 0xff && bytes[at + 1] === 0xd9) return true;
  return false;
}

/** PNG (ISO/IEC 15948): chunks of length, type, data, checksum, up to IEND. The chunk with the orientation is left out. */
function readPng(bytes: Uint8Array<ArrayBuffer>): Reading {
  const view = viewOf(bytes);
  const size = { widthPx: view.getUint32(16), heightPx: view.getUint32(20) };
  let directory: Directory | null = null;
  let unturned = [bytes];
  for (let at = 8; at + 12 <= bytes.length; ) {
    const end = at + 12 + view.getUint32(at);
    const type = textAt(bytes, at + 4, 4);
    if (end > bytes.length) break;
    if (type === 'IEND') return { found: { ...size, directory, whole: true }, unturned };
    if (type === 'eXIf') {
      directory = readDirectory(bytes, at + 8);
      unturned = [bytes.subarray(0, at), bytes.subarray(end)];
    }
    at = end;
  }
  return { found: { ...size, directory, whole: false }, unturned };
}

/** WebP (RFC 9649): a RIFF of chunks; the size stands in the first one, whichever of three it is. */
function readWebp(bytes: Uint8Array): Found | null {
  const view = viewOf(bytes);
  const whole = 8 + view.getUint32(4, true) <= bytes.length;
  let size: { widthPx: number; heightPx: number } | null = null;
  let directory: Directory | null = null;
  for (let at = 12; at + 8 <= bytes.length; ) {
    const type = textAt(bytes, at, 4);
    const data = at + 8;
    size ??= webpSize(view, type, data);
    if (type === 'EXIF') directory = readDirectory(bytes, textAt(bytes, data, 6) === EXIF ? data + 6 : data);
    const length = view.getUint32(at + 4, true);
    at = data + length + (length % 2);
  }
  return size && { ...size, directory, whole };
}

function webpSize(view: DataView, type: string, data: number): { widthPx: number; heightPx: number } | null {
  const three = (at: number) => view.getUint16(at, true) + 65536 * view.getUint8(at + 2);
  if (type === 'VP8X') return { widthPx: 1 + three(data + 4), heightPx: 1 + three(data + 7) };
  if (type === 'VP8 ')
    return { widthPx: view.getUint16(data + 6, true) & 0x3fff, heightPx: view.getUint16(data + 8, true) & 0x3fff };
  if (type !== 'VP8L') return null;
  const bits = view.getUint32(data + 1, true);
  return { widthPx: 1 + (bits & 0x3fff), heightPx: 1 + ((bits >>> 14) & 0x3fff) };
}
