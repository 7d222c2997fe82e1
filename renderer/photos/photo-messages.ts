import type { BoardPhoto } from '../../shared-types/photo.ts';
import type { Result } from '../../shared-types/problem.ts';

/** What is asked of the photo worker, one job a worker at a time. */
export type PhotoJob =
  /** A file as it came: checked, set upright, reduced. */
  | { kind: 'prepare'; file: File }
  /** Bytes of a working copy, decoded for the canvas. */
  | { kind: 'levels'; bytes: Uint8Array<ArrayBuffer>; mediaType: string };

/** What of a photo its file settles. */
export type PreparedPhoto = Pick<BoardPhoto, 'mediaType' | 'widthPx' | 'heightPx' | 'orientation'> & {
  working: Omit<BoardPhoto['working'], 'sha256'> & {
    /** null: the file as it came serves. */
    bytes: Blob | null;
  };
};

/** The picture at full size and at halves of it, for drawing it small without shimmer. */
export type PictureLevels = readonly ImageBitmap[];

export type PhotoAnswer =
  | { kind: 'prepare'; result: Result<PreparedPhoto> }
  | { kind: 'levels'; levels: PictureLevels | null };
