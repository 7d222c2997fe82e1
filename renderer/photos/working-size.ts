/**
 * Long side of the working copy. At 4096 pixels a board of 200 mm has 20 pixels a mm, finer than a hand clicks; one copy is 64 MB when
 * decoded, and half of the largest texture (8192) that every graphics driver takes.
 */
export const WORKING_LONG_SIDE_PX = 4096;

/** Decoding takes four bytes a pixel for a moment: 480 MB. */
export const LARGEST_MEGAPIXELS = 120;

/** The size reduced to a long side, never enlarged. */
export function fitWithin(widthPx: number, heightPx: number, longSidePx: number) {
  const scale = Math.min(1, longSidePx / Math.max(widthPx, heightPx));
  return { widthPx: Math.max(1, Math.round(widthPx * scale)), heightPx: Math.max(1, Math.round(heightPx * scale)) };
}
