import { analyse } from 'chardet';

export type TextResult =
  | { readonly ok: true; readonly text: string; readonly encoding: string; readonly guessed: boolean }
  | {
      readonly ok: false;
      readonly reason: 'archive' | 'spreadsheet' | 'picture' | 'document' | 'binary' | 'tooLarge' | 'empty';
    };

/** Larger text files are refused: placements and Gerber layers of big boards stay far below. */
export const MAX_TEXT_BYTES = 128 * 1024 * 1024;

const SAMPLE_BYTES = 64 * 1024;

/**
 * Bytes to text: byte-order marks, UTF-16 without a mark, strict UTF-8, else the most likely single-byte encoding.
 * Anything that is no text (archives, pictures, control bytes) is refused by kind.
 */
export function decodeText(bytes: Uint8Array): TextResult {
  if (bytes.length === 0) return { ok: false, reason: 'empty' };
  if (bytes.length > MAX_TEXT_BYTES) return { ok: false, reason: 'tooLarge' };
  const kind = knownBinary(bytes);
  if (kind) return { ok: false, reason: kind };
  const marked = markedEncoding(bytes) ?? unmarkedUtf16(bytes);
  if (marked) return decoded(bytes, marked, false);
  if (controlShare(bytes) > 0.01) return { ok: false, reason: 'binary' };
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return { ok: true, text, encoding: isAscii(bytes) ? 'ASCII' : 'UTF-8', guessed: false };
  } catch {
    return decoded(bytes, likelyEncoding(bytes), true);
  }
}

function startsWith(bytes: Uint8Array, ...head: number[]): boolean {
  return head.every((value, index) => bytes[index] === value);
}

/** What the first bytes of a workbook name (ECMA-376; OpenDocument), in a ZIP. */
export const OFFICE_PARTS = /\[Content_Types\]\.xml|xl\/(work|styles|shared|_rels)|opendocument\.spreadsheet/;

/** Magic numbers of kinds that people drop by mistake. */
function knownBinary(bytes: Uint8Array): 'archive' | 'spreadsheet' | 'picture' | 'document' | null {
  if (startsWith(bytes, 0x50, 0x4b, 0x03, 0x04) || startsWith(bytes, 0x50, 0x4b, 0x05, 0x06)) {
    const head = new TextDecoder('latin1').decode(bytes.subarray(0, 4096));
    return OFFICE_PARTS.test(head) ? 'spreadsheet' : 'archive';
  }
  if (
    startsWith(bytes, 0x1f, 0x8b) ||
    startsWith(bytes, 0x37, 0x7a, 0xbc, 0xaf) ||
    startsWith(bytes, 0x52, 0x61, 0x72, 0x21)
  )
    return 'archive';
  if (startsWith(bytes, 0xd0, 0xcf, 0x11, 0xe0)) return 'spreadsheet';
  if (
    startsWith(bytes, 0x89, 0x50, 0x4e, 0x47) ||
    startsWith(bytes, 0xff, 0xd8, 0xff) ||
    startsWith(bytes, 0x47, 0x49, 0x46)
  )
    return 'picture';
  return startsWith(bytes, 0x25, 0x50, 0x44, 0x46) ? 'document' : null;
}

function markedEncoding(bytes: Uint8Array): string | null {
  if (startsWith(bytes, 0xef, 0xbb, 0xbf)) return 'utf-8';
  if (startsWith(bytes, 0xff, 0xfe)) return 'utf-16le';
  return startsWith(bytes, 0xfe, 0xff) ? 'utf-16be' : null;
}

/** UTF-16 of mostly Latin text has a zero in every other byte. */
function unmarkedUtf16(bytes: Uint8Array): string | null {
  const length = Math.min(bytes.length, SAMPLE_BYTES) & ~1;
  if (length < 8) return null;
  const zeros = [0, 0];
  for (let index = 0; index < length; index++) if (bytes[index] === 0) zeros[index & 1]++;
  if (zeros[1] > length * 0.4 && zeros[0] < length * 0.05) return 'utf-16le';
  return zeros[0] > length * 0.4 && zeros[1] < length * 0.05 ? 'utf-16be' : null;
}

function controlShare(bytes: Uint8Array): number {
  const length = Math.min(bytes.length, SAMPLE_BYTES);
  let count = 0;
  for (let index = 0; index < length; index++) {
    const byte = bytes[index];
    if (byte < 32 && byte !== 9 && byte !== 10 && byte !== 13 && byte !== 12 && byte !== 26) count++;
  }
  return count / length;
}

function isAscii(bytes: Uint8Array): boolean {
  for (const byte of bytes) if (byte > 127) return false;
  return true;
}

/** Statistics tell the Western code pages apart badly on tables of part names: for those windows-1252 holds them all. */
function likelyEncoding(bytes: Uint8Array): string {
  const best = analyse(bytes.subarray(0, SAMPLE_BYTES)).find(({ name }) => name !== 'UTF-8' && name !== 'ASCII');
  if (!best || best.confidence < 60 || best.name === 'ISO-8859-1') return 'windows-1252';
  try {
    return new TextDecoder(best.name).encoding;
  } catch {
    return 'windows-1252';
  }
}

function decoded(bytes: Uint8Array, encoding: string, guessed: boolean): TextResult {
  const text = new TextDecoder(encoding).decode(bytes);
  return { ok: true, text, encoding: encoding.toUpperCase(), guessed };
}
