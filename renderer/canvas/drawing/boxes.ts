import type { Point } from '../../../shared-types/geometry.ts';
import { textWidth } from './marks.ts';

/** An upright box in scene pixels. */
export type PixelBox = { minX: number; minY: number; maxX: number; maxY: number };

export const boxAround = (at: Point, width: number, height: number): PixelBox => ({
  minX: at.x - width / 2,
  minY: at.y - height / 2,
  maxX: at.x + width / 2,
  maxY: at.y + height / 2,
});

export const overlap = (a: PixelBox, b: PixelBox): boolean =>
  a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;

/** Box of a line of text that is turned by an angle (radians) about its middle. */
export function textBox(at: Point, text: string, angle = 0): PixelBox {
  const width = textWidth(text) + 4;
  const height = 14;
  const cosine = Math.abs(Math.cos(angle));
  const sine = Math.abs(Math.sin(angle));
  return boxAround(at, width * cosine + height * sine, width * sine + height * cosine);
}
