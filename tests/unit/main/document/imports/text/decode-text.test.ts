import { expect, test } from 'vitest';
import { decodeText } from '../../../../../../main/document/imports/text/decode-text.ts';

const TEXT = 'Ref,Val,X,Y,Rot,Side\nC1,4.7µF,1.0,2.0,90,top\nR2,10kΩ,3.0,4.0,0,bottom\n';
const LATIN = TEXT.replace('Ω', '');

function utf16(text: string, bigEndian: boolean, mark: boolean): Uint8Array {
  const units = [...(mark ? '\uFEFF' : ''), ...text].map((letter) => letter.charCodeAt(0));
  return new Uint8Array(units.flatMap((unit) => (bigEndian ? [unit >> 8, unit & 255] : [unit & 255, unit >> 8])));
}

const utf8 = (text: string) => new TextEncoder().encode(text);

test.each([
  ['UTF-8', utf8(TEXT), TEXT],
  ['UTF-8 with a mark', utf8(`\uFEFF${TEXT}`), TEXT],
  ['UTF-16 little-endian with a mark', utf16(TEXT, false, true), TEXT],
  ['UTF-16 big-endian with a mark', utf16(TEXT, true, true), TEXT],
  ['UTF-16 little-endian without a mark', utf16(TEXT, false, false), TEXT],
  ['UTF-16 big-endian without a mark', utf16(TEXT, true, false), TEXT],
  ['Latin-1', new Uint8Array([...LATIN].map((letter) => letter.charCodeAt(0))), LATIN],
])('%s', (_, bytes, text) => {
  const result = decodeText(bytes);
  expect(result.ok && result.text).toBe(text);
});

test.each([
  ['archive', [0x50, 0x4b, 0x03, 0x04, 0, 0]],
  ['archive', [0x1f, 0x8b, 8, 0]],
  ['picture', [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a]],
  ['picture', [0xff, 0xd8, 0xff, 0xe0]],
  ['document', [0x25, 0x50, 0x44, 0x46, 0x2d]],
  ['spreadsheet', [0xd0, 0xcf, 0x11, 0xe0]],
  ['binary', [1, 2, 3, 4, 5, 6, 7, 8, 200, 0]],
  ['empty', []],
])('refused as %s', (reason, bytes) => {
  expect(decodeText(new Uint8Array(bytes))).toEqual({ ok: false, reason });
});
