import type { Backend } from '../../shared-types/contract.ts';
import { fail, type Result, succeed } from '../../shared-types/problem.ts';

/** A piece is read, framed and sent in a few milliseconds of the window's thread. */
const PIECE_BYTES = 1024 * 1024;

/** Sends a picture to the ticket piece by piece, never whole in the window's memory; its hash. Errors: not-readable, those of `photo.add`. */
export async function sendPicture(backend: Backend, id: string, picture: Blob): Promise<Result<{ sha256: string }>> {
  const { size } = picture;
  const arrival = crypto.randomUUID();
  let at = 0;
  for (;;) {
    const bytes = await bytesOf(picture.slice(at, at + PIECE_BYTES));
    // A file that changes or goes while it is read.
    if (!bytes) return fail('not-readable');
    const answer = await backend.request('photo.add', { id, arrival, size, at, bytes });
    if (!answer.ok) return answer;
    if (answer.value.sha256 !== null) return succeed({ sha256: answer.value.sha256 });
    at += bytes.byteLength;
  }
}

async function bytesOf(piece: Blob): Promise<Uint8Array<ArrayBuffer> | null> {
  try {
    return new Uint8Array(await piece.arrayBuffer());
  } catch {
    return null;
  }
}
