import { z } from 'zod';
import { pointSchema, sideSchema } from './geometry.ts';

/**
 * A place that was found on both: on the photo in pixels of the upright photo (x right, y down, 0, 0 at the upper left corner of the
 * first pixel), on the board in mm.
 */
const matchPairSchema = z.strictObject({
  id: z.string().min(1).max(64),
  photo: pointSchema.describe('Pixels of the upright photo, x right, y down.'),
  board: pointSchema.describe('Board, mm.'),
  anchor: z
    .enum(['free', 'part', 'pin-1', 'corner', 'hole', 'fiducial'])
    .describe('What the board point was taken from; it stays where it is when that moves.'),
  refdes: z.string().max(64).nullable().describe('Part of the anchor; null: none.'),
});
export type MatchPair = z.infer<typeof matchPairSchema>;

export const photoFitKindSchema = z.enum(['similarity', 'affine', 'projective']);
export type PhotoFitKind = z.infer<typeof photoFitKindSchema>;

/** TIFF and EXIF tag 274: how the stored rows and columns lie in the upright picture; 1: as they should. */
const orientationSchema = z.union([1, 2, 3, 4, 5, 6, 7, 8].map((value) => z.literal(value)));
export type Orientation = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8;

const sha256Schema = z.string().regex(/^[0-9a-f]{64}$/);
const sizePx = z.int().positive().max(100_000);

/** Kinds of picture files that a photo may come as. */
export const IMAGE_TYPES = ['image/jpeg', 'image/png', 'image/webp', 'image/tiff'] as const;
export type ImageType = (typeof IMAGE_TYPES)[number];

/**
 * A photo that lies under one side of the board. Its bytes are kept once, by their hash, and never rewritten; the map from pixels to the
 * board follows from the pairs and is never stored.
 */
export const boardPhotoSchema = z.strictObject({
  id: z.string().min(1).max(64),
  side: sideSchema.describe('The side seen on it; the bottom as it lies when the board is turned over.'),
  name: z.string().max(300).describe('Name of the file it came from.'),
  sha256: sha256Schema.describe('Of the bytes as they came; in a ticket photos/SHA256 holds them.'),
  mediaType: z.enum(IMAGE_TYPES),
  widthPx: sizePx.describe('Of the upright photo.'),
  heightPx: sizePx.describe('Of the upright photo.'),
  orientation: orientationSchema.describe('Of the stored bytes; widths, heights and pairs have it applied already.'),
  working: z
    .strictObject({
      sha256: sha256Schema,
      mediaType: z.enum(['image/jpeg', 'image/png']),
      widthPx: sizePx,
      heightPx: sizePx,
    })
    .describe('The copy that is drawn and printed: upright, reduced. The same bytes where the photo needed neither.'),
  pairs: z.array(matchPairSchema).max(200),
  fit: photoFitKindSchema.nullable().describe('Kind of map; null: by the number of pairs.'),
  opacity: z.number().min(0).max(1),
  shown: z.boolean(),
});
export type BoardPhoto = z.infer<typeof boardPhotoSchema>;

/** The photos of both sides, the first one undermost. */
export const boardPhotosSchema = z.array(boardPhotoSchema).max(20);

/** Hashes of every picture that a board's photos stand on. */
export const photoHashes = (board: { photos: readonly BoardPhoto[] }): Set<string> =>
  new Set(board.photos.flatMap(({ sha256, working }) => [sha256, working.sha256]));
