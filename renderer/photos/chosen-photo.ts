import type { Side } from '../../shared-types/geometry.ts';
import type { BoardPhoto } from '../../shared-types/photo.ts';

/** The photo of a side that is being worked on: the one asked for, or else the uppermost. */
export function chosenPhoto(photos: readonly BoardPhoto[], side: Side, photoId: string | null): BoardPhoto | null {
  const ofSide = photos.filter((photo) => photo.side === side);
  return ofSide.find(({ id }) => id === photoId) ?? ofSide.at(-1) ?? null;
}
