import type { Board } from '../../shared-types/board.ts';
import { photoHashes } from '../../shared-types/photo.ts';
import { fail, type Result, succeed } from '../../shared-types/problem.ts';
import { attempt } from './file-problems.ts';
import type { LoosePhotos } from './loose-photos.ts';

/** Largest picture and largest sum of a ticket's pictures, bytes: a ticket's file may hold 512 MB. */
export const LARGEST_PICTURE = 160 * 1024 * 1024;
const LARGEST_SUM = 400 * 1024 * 1024;

export const pictureTooLarge = () => fail('too-large', { detail: { limit: '160 MB a picture' } });

export type NewPicture = { bytes: Uint8Array; sha256: string };

/** Pictures by hash. */
export type Pictures = ReadonlyMap<string, Uint8Array>;

/**
 * Takes a picture into a ticket: durably, so that it is there before anything names it.
 * Errors: too-large, those of the disk.
 */
export async function addPicture(
  loose: LoosePhotos,
  pictures: Map<string, Uint8Array>,
  { bytes, sha256 }: NewPicture,
): Promise<Result<{ sha256: string }>> {
  if (pictures.has(sha256)) return succeed({ sha256 });
  const sum = [...pictures.values()].reduce((total, one) => total + one.byteLength, bytes.byteLength);
  if (sum > LARGEST_SUM) return fail('too-large', { detail: { limit: '400 MB of pictures in one ticket' } });
  const kept = await attempt('', () => loose.keep(sha256, bytes));
  if (!kept.ok) return kept;
  pictures.set(sha256, bytes);
  return succeed({ sha256 });
}

/** The pictures at hand, and those that a board names besides, as far as they are found. */
export async function withLoosePictures(loose: LoosePhotos, board: Board, atHand: Pictures): Promise<Pictures> {
  const pictures = new Map(atHand);
  for (const sha256 of photoHashes(board)) {
    const bytes = pictures.has(sha256) ? undefined : await loose.read(sha256);
    if (bytes) pictures.set(sha256, bytes);
  }
  return pictures;
}

/** Takes away the pictures that the board no longer names; true: there were some. They stay while a ticket is open, for undo. */
export function dropUnnamed(pictures: Map<string, Uint8Array>, board: Board): boolean {
  const named = photoHashes(board);
  const unnamed = [...pictures.keys()].filter((sha256) => !named.has(sha256));
  for (const sha256 of unnamed) pictures.delete(sha256);
  return unnamed.length > 0;
}
