import { GLYPH_SHAPES, TAG_GLYPHS } from '../../../shared-types/rules/tag-glyphs.ts';
import type { TagKind } from '../../../shared-types/tags.ts';
import { INK, type PagePoint } from '../paper.ts';
import { hatchPolygons } from './hatch.ts';
import { cornersOfBox, type Ink } from './ink.ts';

export const GLYPH_RADIUS = 10;
export const GLYPH_LETTER_SIZE = 10;
const BADGE_SIZE = 10;
const BADGE_HALF_HEIGHT = 6.8;

export const tagColour = (kind: TagKind): string => TAG_GLYPHS[kind].colour ?? INK.black;

export const glyphOutline = (kind: TagKind, centre: PagePoint, radius: number): PagePoint[] => {
  const shape = GLYPH_SHAPES[TAG_GLYPHS[kind].shape];
  if (shape === 'circle')
    return Array.from({ length: 32 }, (_, i) => ({
      x: centre.x + radius * Math.cos((i * Math.PI) / 16),
      y: centre.y + radius * Math.sin((i * Math.PI) / 16),
    }));
  return shape.map(([x, y]) => ({ x: centre.x + x * radius, y: centre.y - y * radius }));
};

/** A tag: white shape, hatched rim in its colour, ink outline, its letter in a window kept free of the hatch. */
export function drawGlyph(ink: Ink, kind: TagKind, centre: PagePoint): void {
  const glyph = TAG_GLYPHS[kind];
  const outline = glyphOutline(kind, centre, GLYPH_RADIUS);
  ink.polygon(outline, null, INK.white);
  const width = ink.type.width(glyph.letter, 'sansStrong', GLYPH_LETTER_SIZE);
  const pane = {
    x0: centre.x - width / 2 - 1.4,
    x1: centre.x + width / 2 + 1.4,
    y0: centre.y - 5,
    y1: centre.y + 5,
  };
  hatchPolygons(ink, [outline, cornersOfBox(pane)], glyph.hatch, { colour: tagColour(kind), width: 0.9 });
  ink.polygon(outline, { width: 1.1 });
  ink.text(centre.x - width / 2, centre.y + 0.35 * GLYPH_LETTER_SIZE, glyph.letter, {
    face: 'sansStrong',
    size: GLYPH_LETTER_SIZE,
  });
}

/** The mark of a thermocouple: a ring with a dot, drawn exactly at its spot; its name stands beside it. */
export function drawWatchMark(ink: Ink, at: PagePoint): void {
  ink.circle(at, 4.6, { width: 1.2 }, INK.white);
  ink.circle(at, 1.5, null, INK.black);
}

export const badgeWidth = (ink: Ink, order: number): number =>
  Math.max(2 * BADGE_HALF_HEIGHT, ink.type.width(String(order), 'monoStrong', BADGE_SIZE) + 6);

/** The order number in a black pill, white figures; `left` is its left edge, `middle` its height. */
export function drawBadge(ink: Ink, order: number, left: number, middle: number): void {
  const width = badgeWidth(ink, order);
  const text = String(order);
  const pill = { x0: left, y0: middle - BADGE_HALF_HEIGHT, x1: left + width, y1: middle + BADGE_HALF_HEIGHT };
  ink.pill(pill, BADGE_HALF_HEIGHT, INK.black);
  ink.text(left + (width - ink.type.width(text, 'monoStrong', BADGE_SIZE)) / 2, middle + 0.35 * BADGE_SIZE, text, {
    face: 'monoStrong',
    size: BADGE_SIZE,
    colour: INK.white,
  });
}
