import { expect, test } from 'vitest';
import { buffersIn } from '../../../../main/workers/transferable.ts';

test('every buffer is found once, shared memory is left out', () => {
  const field = new Float32Array(8);
  const value = {
    a: field,
    list: [{ b: new Uint8Array(field.buffer, 4, 2) }, new Float64Array(2), null, 'text'],
    shared: new Int32Array(new SharedArrayBuffer(4)),
  };
  const found = [...buffersIn(value)];
  expect(found).toHaveLength(2);
  expect(found[0]).toBe(field.buffer);
});
