import type { Orientation } from '../../shared-types/photo.ts';
import { orientationOf } from '../../shared-types/rules/orientation.ts';

/** Tags of TIFF 6.0, section 8, which EXIF uses too. */
const WIDTH = 256;
const HEIGHT = 257;
const ORIENTATION = 274;
const LONG = 4;

/** What the first image directory of a TIFF block says; `orientationAt`: where in `bytes` the value stands. */
export type Directory = {
  widthPx: number | null;
  heightPx: number | null;
  orientation: Orientation;
  orientationAt: { at: number; bytes: number[] } | null;
};

/** Reads the first image directory of a TIFF block that begins at `start` (a TIFF file, or EXIF data); null: none there. */
export function readDirectory(bytes: Uint8Array, start: number): Directory | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (start + 8 > bytes.length) return null;
  const mark = view.getUint16(start);
  if (mark !== 0x4949 && mark !== 0x4d4d) return null;
  const little = mark === 0x4949;
  const first = start + view.getUint32(start + 4, little);
  if (first + 2 > bytes.length) return null;
  const found: Directory = { widthPx: null, heightPx: null, orientation: 1, orientationAt: null };
  const count = view.getUint16(first, little);
  for (let index = 0; index < count; index++) {
    const at = first + 2 + 12 * index;
    if (at + 12 > bytes.length) break;
    const tag = view.getUint16(at, little);
    const isLong = view.getUint16(at + 2, little) === LONG;
    const value = isLong ? view.getUint32(at + 8, little) : view.getUint16(at + 8, little);
    if (tag === WIDTH) found.widthPx = value;
    if (tag === HEIGHT) found.heightPx = value;
    if (tag === ORIENTATION && !isLong) {
      found.orientation = orientationOf(value);
      found.orientationAt = { at: at + 8, bytes: little ? [1, 0] : [0, 1] };
    }
  }
  return found;
}
