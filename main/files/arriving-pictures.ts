import { createHash, type Hash } from 'node:crypto';
import type { PicturePiece } from '../../shared-types/contract.ts';
import { fail, type Result, succeed } from '../../shared-types/problem.ts';
import { imageTypeOf } from '../../shared-types/rules/image-type.ts';
import { reasons } from '../../shared-types/words/shell.ts';
import { LARGEST_PICTURE, type NewPicture, pictureTooLarge } from './ticket-photos.ts';

/** Pictures that come in pieces: neither side stands still for a hundred megabytes, and each piece is hashed as it comes. */
export type ArrivingPictures = {
  /** The whole picture with its last piece, null before. Errors: not-a-picture, too-large, invalid-field for a piece out of turn. */
  take(piece: PicturePiece): Result<NewPicture | null>;
};

type Arriving = { bytes: Uint8Array; filled: number; hash: Hash };

/** Begun and not ended, of a window that went on to other things: the oldest makes room. */
const MOST_AT_ONCE = 3;

export function createArrivals(): ArrivingPictures {
  const arriving = new Map<string, Arriving>();
  return {
    take(piece) {
      const begun = piece.at === 0 ? begin(piece) : nextOf(arriving.get(piece.arrival), piece);
      arriving.delete(piece.arrival);
      if (!begun.ok) return begun;
      const { value: picture } = begun;
      picture.bytes.set(piece.bytes, piece.at);
      picture.hash.update(piece.bytes);
      picture.filled += piece.bytes.byteLength;
      if (picture.filled === piece.size) return succeed({ bytes: picture.bytes, sha256: picture.hash.digest('hex') });
      arriving.set(piece.arrival, picture);
      const [oldest] = arriving.keys();
      if (arriving.size > MOST_AT_ONCE) arriving.delete(oldest);
      return succeed(null);
    },
  };
}

function begin({ size, bytes }: PicturePiece): Result<Arriving> {
  if (imageTypeOf(bytes) === null) return fail('not-a-picture');
  if (size > LARGEST_PICTURE) return pictureTooLarge();
  if (bytes.byteLength > size) return outOfTurn();
  return succeed({ bytes: new Uint8Array(size), filled: 0, hash: createHash('sha256') });
}

function nextOf(begun: Arriving | undefined, { at, size, bytes }: PicturePiece): Result<Arriving> {
  const follows =
    begun?.filled === at && begun.bytes.byteLength === size && bytes.byteLength > 0 && at + bytes.byteLength <= size;
  return begun && follows ? succeed(begun) : outOfTurn();
}

const outOfTurn = () => fail('invalid-field', { where: 'photo.add.at', detail: { reason: reasons.pieceOutOfTurn } });
