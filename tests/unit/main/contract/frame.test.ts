import fc from 'fast-check';
import { expect, test } from 'vitest';
import { decodeFrame, encodeFrame } from '../../../../shared-types/frame.ts';

const arrays = fc.oneof(
  fc.uint8Array({ maxLength: 40 }),
  fc.int32Array({ maxLength: 12 }),
  fc.float32Array({ maxLength: 12 }),
  fc.float64Array({ maxLength: 12 }),
);
const values = fc.letrec((tie) => ({
  value: fc.oneof(
    { depthSize: 'small' },
    fc.string(),
    fc.boolean(),
    fc.constant(null),
    fc.double({ noNaN: false }).filter((number) => !Object.is(number, -0)),
    arrays,
    fc.array(tie('value'), { maxLength: 4 }),
    fc.dictionary(fc.string(), tie('value'), { maxKeys: 4 }),
  ),
})).value;

test('any value of plain objects, numbers and arrays comes back as it went in', () => {
  fc.assert(
    fc.property(values, (value) => {
      expect(decodeFrame(encodeFrame({ value }))?.value).toEqual(plain({ value }));
    }),
    { numRuns: 300 },
  );
});

/** fast-check makes dictionaries without a prototype; a frame gives ordinary ones. */
function plain(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(plain);
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, plain(item)]));
}

test('arrays start on multiples of eight and are views, not copies', () => {
  const frame = encodeFrame({ a: new Uint8Array([1, 2, 3]), b: new Float64Array([0.5]) });
  const { b } = decodeFrame(frame)!.value as { b: Float64Array };
  expect(frame.byteLength % 8).toBe(0);
  expect(b.byteOffset % 8).toBe(0);
  expect(b.buffer).toBe(frame.buffer);
});

test('a frame inside a larger buffer, off the alignment, reads the same', () => {
  const frame = encodeFrame({ field: new Float32Array([1.5, Number.NaN]), name: 'top' });
  const larger = new Uint8Array(frame.byteLength + 3);
  larger.set(frame, 3);
  expect(decodeFrame(larger.subarray(3))?.value).toEqual({ field: new Float32Array([1.5, Number.NaN]), name: 'top' });
});

test('cut, lengthened or changed frames are no frames', () => {
  const frame = encodeFrame({ field: new Float32Array([1, 2, 3]) });
  expect(decodeFrame(frame.subarray(0, frame.byteLength - 8))).toBeNull();
  expect(decodeFrame(new Uint8Array([...frame, 0, 0, 0, 0, 0, 0, 0, 0]))).toBeNull();
  expect(decodeFrame(new Uint8Array())).toBeNull();
  for (let index = 0; index < 8; index++) {
    const broken = frame.slice();
    broken[index] ^= 0xff;
    expect(decodeFrame(broken)).toBeNull();
  }
});

test('no path of a forged header reaches a prototype or a taken place', () => {
  const forge = (path: unknown[], value: unknown) => {
    const header = { value, arrays: [], numbers: [{ path, is: 'NaN' }] };
    const text = new TextEncoder().encode(JSON.stringify(header));
    const frame = new Uint8Array(Math.ceil((8 + text.length) / 8) * 8);
    frame.set([0x48, 0x4d, 0x46, 0x31]);
    new DataView(frame.buffer).setUint32(4, text.length, true);
    frame.set(text, 8);
    return decodeFrame(frame);
  };
  expect(forge(['a'], { a: null })?.value).toEqual({ a: Number.NaN });
  expect(forge(['__proto__', 'polluted'], { a: null })).toBeNull();
  expect(forge(['constructor', 'prototype', 'polluted'], { a: null })).toBeNull();
  expect(forge(['a'], { a: 1 })).toBeNull();
  expect(({} as Record<string, unknown>).polluted).toBeUndefined();
});
