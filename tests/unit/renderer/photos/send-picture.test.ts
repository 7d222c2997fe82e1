import { expect, test } from 'vitest';
import { createArrivals } from '../../../../main/files/arriving-pictures.ts';
import { contentHash } from '../../../../main/files/content-hash.ts';
import { sendPicture } from '../../../../renderer/photos/send-picture.ts';
import type { Backend, PicturePiece } from '../../../../shared-types/contract.ts';
import { succeed } from '../../../../shared-types/problem.ts';

const pictureOf = (length: number) =>
  new Uint8Array(length).map((_, index) => (index < 3 ? [0xff, 0xd8, 0xff][index] : index % 251));

/** Main as far as it takes pictures, and the pieces that it saw. */
function receiver() {
  const arrivals = createArrivals();
  const pieces: number[] = [];
  const request = async (_name: string, piece: PicturePiece) => {
    pieces.push(piece.bytes.byteLength);
    const taken = arrivals.take(piece);
    return taken.ok ? succeed({ sha256: taken.value?.sha256 ?? null }) : taken;
  };
  return { backend: { request, listen: () => () => undefined } as unknown as Backend, pieces };
}

test('a picture goes in pieces of a megabyte and has the hash of its bytes', async () => {
  for (const length of [20, 1024 * 1024, 2_500_000]) {
    const { backend, pieces } = receiver();
    const bytes = pictureOf(length);
    const sent = await sendPicture(backend, 'ticket', new Blob([bytes]));
    expect(sent).toEqual({ ok: true, value: { sha256: contentHash(bytes) } });
    expect(pieces.length).toBe(Math.ceil(length / 1024 / 1024));
  }
});

test('what main refuses, and a file that went away, are problems', async () => {
  expect(await sendPicture(receiver().backend, 'ticket', new Blob(['text']))).toMatchObject({
    problem: { code: 'not-a-picture' },
  });
  const gone = { size: 9, slice: () => ({ arrayBuffer: () => Promise.reject(new Error('gone')) }) };
  expect(await sendPicture(receiver().backend, 'ticket', gone as unknown as Blob)).toMatchObject({
    problem: { code: 'not-readable' },
  });
});
