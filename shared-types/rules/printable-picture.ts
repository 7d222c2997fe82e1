import { imageTypeOf } from './image-type.ts';

const view = (bytes: Uint8Array) => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
const typeAt = (bytes: Uint8Array, at: number) => String.fromCharCode(...bytes.subarray(at, at + 4));

/**
 * True for pictures whose bytes go into a printed sheet as they are, without being decoded: JPEG, and PNG of at most 8 bits without
 * transparency and interlacing (ISO/IEC 15948: IHDR, tRNS).
 */
export function isPrintable(bytes: Uint8Array): boolean {
  const type = imageTypeOf(bytes);
  if (type !== 'image/png') return type === 'image/jpeg';
  if (bytes.length < 33 || typeAt(bytes, 12) !== 'IHDR') return false;
  const [bits, colours, , , interlaced] = bytes.subarray(24, 29);
  if (bits > 8 || ![0, 2, 3].includes(colours) || interlaced !== 0) return false;
  for (let at = 33; at + 12 <= bytes.length; at += 12 + view(bytes).getUint32(at)) {
    if (typeAt(bytes, at + 4) === 'tRNS') return false;
    if (typeAt(bytes, at + 4) === 'IEND') return true;
  }
  return false;
}
