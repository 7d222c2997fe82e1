import type { Point } from '../plane.ts';

/** x' = a x + c y + e, y' = b x + d y + f: the order of numbers that SVG's `matrix()` has. */
export type Affine = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export const SAME: Affine = [1, 0, 0, 1, 0, 0];

/** The map that applies `inner` first and `outer` to its result. */
export function join(outer: Affine, inner: Affine): Affine {
  const [a, b, c, d, e, f] = outer;
  const [g, h, i, j, k, l] = inner;
  return [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f];
}

export const mapPoint = ([a, b, c, d, e, f]: Affine, { x, y }: Point): Point => ({
  x: a * x + c * y + e,
  y: b * x + d * y + f,
});

/** Without the move: for radii and directions. */
export const mapVector = ([a, b, c, d]: Affine, { x, y }: Point): Point => ({ x: a * x + c * y, y: b * x + d * y });

export const moveBy = (x: number, y: number): Affine => [1, 0, 0, 1, x, y];
export const scaleBy = (x: number, y: number): Affine => [x, 0, 0, y, 0, 0];

/** A turn counter-clockwise with y up (clockwise on a page whose y points down). */
export function turnBy(degrees: number): Affine {
  const angle = (degrees * Math.PI) / 180;
  const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
  return [cosine, sine, -sine, cosine, 0, 0];
}
