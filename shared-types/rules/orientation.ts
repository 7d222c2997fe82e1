import type { Point } from '../geometry.ts';
import type { Orientation } from '../photo.ts';

/**
 * How stored pixels lie in the upright picture: x' = a x + c y + e, y' = b x + d y + f (the order of a canvas's `setTransform`), in continuous
 * pixels with 0, 0 at the upper left corner of the first pixel.
 */
export type Upright = {
  a: number;
  b: number;
  c: number;
  d: number;
  e: number;
  f: number;
  /** Size of the upright picture. */
  widthPx: number;
  heightPx: number;
};

/** Signs and swaps by value: [a, b, c, d]. TIFF 6.0, tag Orientation (274); EXIF 2.3 says the same. */
const TURNS: Record<Orientation, readonly [number, number, number, number]> = {
  1: [1, 0, 0, 1],
  2: [-1, 0, 0, 1],
  3: [-1, 0, 0, -1],
  4: [1, 0, 0, -1],
  5: [0, 1, 1, 0],
  6: [0, 1, -1, 0],
  7: [0, -1, -1, 0],
  8: [0, -1, 1, 0],
};

/** The transform that sets a stored picture upright; sizes in pixels. */
export function uprightTransform(orientation: Orientation, storedWidthPx: number, storedHeightPx: number): Upright {
  const [a, b, c, d] = TURNS[orientation];
  const widthPx = a !== 0 ? storedWidthPx : storedHeightPx;
  const heightPx = a !== 0 ? storedHeightPx : storedWidthPx;
  return {
    a,
    b,
    c,
    d,
    e: a < 0 || c < 0 ? widthPx : 0,
    f: b < 0 || d < 0 ? heightPx : 0,
    widthPx,
    heightPx,
  };
}

/** Where a point of the stored picture lies in the upright one. */
export const uprightPoint = ({ a, b, c, d, e, f }: Upright, { x, y }: Point): Point => ({
  x: a * x + c * y + e,
  y: b * x + d * y + f,
});

/** The value of an orientation tag; anything but 1 to 8 counts as upright, as readers do. */
export const orientationOf = (value: number | undefined): Orientation =>
  value !== undefined && Number.isInteger(value) && value >= 1 && value <= 8 ? (value as Orientation) : 1;
