import type { ImageType } from '../photo.ts';

const startsWith = (bytes: Uint8Array, at: number, marks: readonly number[]): boolean =>
  marks.every((mark, index) => bytes[at + index] === mark);
const letters = (text: string): number[] => [...text].map((letter) => letter.charCodeAt(0));

const RIFF = letters('RIFF');
const WEBP = letters('WEBP');
const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
/** The kind of picture by its first bytes, whatever the file is called; null: none that can be used. */
export function imageTypeOf(bytes: Uint8Array): ImageType | null {
  if (startsWith(bytes, 0, [0xff, 0xd8, 0xff])) return 'image/jpeg';
  if (startsWith(bytes, 0, PNG)) return 'image/png';
  if (startsWith(bytes, 0, RIFF) && startsWith(bytes, 8, WEBP)) return 'image/webp';
  // TIFF 6.0, section 2: byte order and the number 42.
  if (startsWith(bytes, 0, [0x49, 0x49, 42, 0]) || startsWith(bytes, 0, [0x4d, 0x4d, 0, 42])) return 'image/tiff';
  return null;
}

const FTYP = letters('ftyp');
/** Brands of HEIF files, ISO/IEC 23008-12 (from memory). */
const HEIF_BRANDS = ['heic', 'heix', 'hevc', 'heim', 'heis', 'mif1', 'msf1', 'avif'].map(letters);

/** True for the form in which many phones keep photos, which browsers do not decode. */
export const isHeif = (bytes: Uint8Array): boolean =>
  startsWith(bytes, 4, FTYP) && HEIF_BRANDS.some((brand) => startsWith(bytes, 8, brand));
