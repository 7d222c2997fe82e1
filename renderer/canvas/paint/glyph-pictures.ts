import { Texture } from 'pixi.js';
import { GLYPH_SHAPES, TAG_GLYPHS, type TagGlyph } from '../../../shared-types/rules/tag-glyphs.ts';
import type { TagKind } from '../../../shared-types/tags.ts';
import { GLYPH_PX } from '../sites/glyph-places.ts';
import { cssColour, type Theme } from '../theme.ts';

/** Size of a glyph's picture with its outline, CSS pixels. */
export const GLYPH_PICTURE_PX = GLYPH_PX + 6;

export type GlyphPictures = { picture(tag: TagKind): Texture };

export function makeGlyphPictures(theme: Theme, ratio: number): GlyphPictures {
  const pictures = new Map<TagKind, Texture>();
  return {
    picture(tag) {
      const known = pictures.get(tag);
      if (known) return known;
      const canvas = document.createElement('canvas');
      canvas.width = canvas.height = Math.ceil(GLYPH_PICTURE_PX * ratio);
      const context = canvas.getContext('2d');
      if (!context) throw new Error('no 2D canvas');
      context.scale(ratio, ratio);
      context.translate(GLYPH_PICTURE_PX / 2, GLYPH_PICTURE_PX / 2);
      drawGlyph(context, TAG_GLYPHS[tag], theme);
      const texture = Texture.from({ resource: canvas, resolution: ratio }, true);
      pictures.set(tag, texture);
      return texture;
    },
  };
}

/** Draws a glyph round the origin: paper rim, ink outline, coloured ground, hatch, letter. */
export function drawGlyph(context: CanvasRenderingContext2D, glyph: TagGlyph, theme: Theme): void {
  const paper = cssColour(theme.paper);
  const ink = cssColour(theme.ink);
  const shape = shapePath(glyph);
  context.lineJoin = 'round';
  outlined(context, shape, paper, 5);
  outlined(context, shape, ink, 2.5);
  if (glyph.shape === 'ring-dot') {
    drawRing(context, shape, paper, ink);
    return;
  }
  context.fillStyle = glyph.colour ?? ink;
  context.fill(shape);
  context.save();
  context.clip(shape);
  drawHatch(context, glyph, paper);
  context.restore();
  drawLetter(context, glyph, paper, ink);
}

function outlined(context: CanvasRenderingContext2D, shape: Path2D, colour: string, width: number): void {
  context.strokeStyle = colour;
  context.lineWidth = width;
  context.stroke(shape);
}

const HALF = GLYPH_PX / 2 - 0.5;

function shapePath(glyph: TagGlyph): Path2D {
  const path = new Path2D();
  const corners = GLYPH_SHAPES[glyph.shape];
  if (corners === 'circle') {
    path.arc(0, 0, HALF - 1.5, 0, 2 * Math.PI);
    return path;
  }
  for (const [x, y] of corners) path.lineTo(x * HALF, -y * HALF);
  path.closePath();
  return path;
}

function drawRing(context: CanvasRenderingContext2D, ring: Path2D, paper: string, ink: string): void {
  context.globalAlpha = 0.75;
  context.fillStyle = paper;
  context.fill(ring);
  context.globalAlpha = 1;
  outlined(context, ring, ink, 2);
  context.fillStyle = ink;
  context.beginPath();
  context.arc(0, 0, 2.5, 0, 2 * Math.PI);
  context.fill();
}

const LINE_APART_PX = 4;

function drawHatch(context: CanvasRenderingContext2D, { hatch }: TagGlyph, colour: string): void {
  context.strokeStyle = colour;
  context.fillStyle = colour;
  context.globalAlpha = 0.6;
  context.lineWidth = 1;
  const lines = (turn: number) => {
    context.save();
    context.rotate(turn);
    context.beginPath();
    for (let at = -GLYPH_PX; at <= GLYPH_PX; at += LINE_APART_PX) {
      context.moveTo(-GLYPH_PX, at + 0.5);
      context.lineTo(GLYPH_PX, at + 0.5);
    }
    context.stroke();
    context.restore();
  };
  if (hatch === 'diagonal') lines(-Math.PI / 4);
  if (hatch === 'horizontal') lines(0);
  if (hatch === 'vertical') lines(Math.PI / 2);
  if (hatch === 'cross') {
    lines(Math.PI / 4);
    lines(-Math.PI / 4);
  }
  if (hatch === 'dots')
    for (let x = -8; x <= 8; x += 4)
      for (let y = -8; y <= 8; y += 4) context.fillRect(x + ((y / 4) & 1 ? 1.5 : -0.5), y - 0.75, 1.5, 1.5);
  context.globalAlpha = 1;
}

function drawLetter(context: CanvasRenderingContext2D, glyph: TagGlyph, paper: string, ink: string): void {
  context.font = '700 13px "IBM Plex Mono", monospace';
  context.textAlign = 'center';
  context.textBaseline = 'alphabetic';
  // The letter stands on a plate of paper in ink: full contrast whatever the tag's colour.
  context.fillStyle = paper;
  const shift = glyph.shape === 'arrow-pentagon' ? -1.5 : 0;
  context.beginPath();
  context.arc(shift, 0.5, 6.5, 0, 2 * Math.PI);
  context.fill();
  context.fillStyle = ink;
  context.fillText(glyph.letter, shift, 5);
}
