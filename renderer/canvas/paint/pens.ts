import type { Theme } from '../theme.ts';
import { makeGlyphPictures } from './glyph-pictures.ts';
import { makeLettering } from './lettering.ts';
import type { PaintBox } from './painter.ts';

const made = new Map<string, PaintBox>();

/**
 * Letters and glyphs of a theme and a pixel ratio. Made once and kept for every canvas of the window: a handful of
 * small pictures, which pixi's batches go on referring to after a stage is gone.
 */
export function pensFor(theme: Theme, ratio: number): PaintBox {
  const key = `${theme.name} ${ratio}`;
  const known = made.get(key);
  if (known) return known;
  const box: PaintBox = {
    lettering: makeLettering(theme, ratio),
    turnedLettering: makeLettering(theme, 2 * ratio),
    glyphs: makeGlyphPictures(theme, ratio),
    ratio,
  };
  made.set(key, box);
  return box;
}
