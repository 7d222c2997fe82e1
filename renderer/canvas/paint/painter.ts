import { type Graphics, Matrix } from 'pixi.js';
import { type Fill, LETTER_PX, type Mark, type Stroke, textWidth } from '../drawing/marks.ts';
import { GLYPH_PICTURE_PX, type GlyphPictures } from './glyph-pictures.ts';
import type { Letter, Lettering } from './lettering.ts';

export type PaintBox = {
  lettering: Lettering;
  /** The same letters twice as fine: turned letters are sampled between pixels and would go grey. */
  turnedLettering: Lettering;
  glyphs: GlyphPictures /** Device pixels per CSS pixel. */;
  ratio: number;
};

/** Lays marks down in their order; neighbours of one style go down as one path. */
export function paint(target: Graphics, marks: readonly Mark[], box: PaintBox): void {
  target.clear();
  for (let i = 0; i < marks.length; ) {
    const mark = marks[i];
    if (mark.kind === 'text') {
      write(target, mark, box);
      i++;
    } else if (mark.kind === 'glyph') {
      stamp(target, mark, box);
      i++;
    } else i = paintRun(target, marks, i);
  }
}

type Shape = Exclude<Mark, { kind: 'text' | 'glyph' }>;

function paintRun(target: Graphics, marks: readonly Mark[], start: number): number {
  const first = marks[start] as Shape;
  const alone = first.kind === 'polygon' && first.holes !== undefined && first.holes.length > 0;
  let end = start;
  do {
    trace(target, marks[end] as Shape);
    end++;
  } while (!alone && end < marks.length && sameStyle(first, marks[end]));
  const fill = 'fill' in first ? first.fill : undefined;
  if (fill) target.fill({ color: fill.colour, alpha: fill.alpha ?? 1 });
  if (alone) cutHoles(target, first.holes ?? []);
  if (first.stroke) target.stroke(strokeStyle(first.stroke));
  return end;
}

function trace(target: Graphics, mark: Shape): void {
  switch (mark.kind) {
    case 'rectangle':
      target.rect(mark.x, mark.y, mark.width, mark.height);
      break;
    case 'circle':
      target.circle(mark.x, mark.y, mark.radius);
      break;
    case 'polygon':
      target.poly(mark.points, true);
      break;
    case 'line':
      target.poly(mark.points, false);
      break;
  }
}

function cutHoles(target: Graphics, holes: readonly number[][]): void {
  for (const hole of holes) target.poly(hole, true);
  target.cut();
}

const strokeStyle = (stroke: Stroke) => ({
  color: stroke.colour,
  width: stroke.width,
  alpha: stroke.alpha ?? 1,
  join: 'miter' as const,
  cap: stroke.round ? ('round' as const) : ('butt' as const),
});

function sameStyle(a: Shape, b: Mark): boolean {
  if (b.kind === 'text' || b.kind === 'glyph') return false;
  if (b.kind === 'polygon' && b.holes?.length) return false;
  const fills = (mark: Shape): Fill | undefined => ('fill' in mark ? mark.fill : undefined);
  return sameFill(fills(a), fills(b)) && sameStroke(a.stroke, b.stroke);
}

const sameFill = (a: Fill | undefined, b: Fill | undefined): boolean =>
  a === b || (a?.colour === b?.colour && a?.alpha === b?.alpha && (a === undefined) === (b === undefined));

const sameStroke = (a: Stroke | undefined, b: Stroke | undefined): boolean =>
  a === b ||
  (a !== undefined &&
    b !== undefined &&
    a.colour === b.colour &&
    a.width === b.width &&
    a.alpha === b.alpha &&
    a.round === b.round);

/** Lettering turned by less than this is set straight: it reads sharper and nobody sees the difference. */
const STRAIGHT_DEG = 2.5;

/** Letters side by side round an anchor; upright text starts on a whole device pixel. */
function write(target: Graphics, mark: Mark & { kind: 'text' }, box: PaintBox): void {
  const whole = (value: number) => Math.round(value * box.ratio) / box.ratio;
  const width = textWidth(mark.text);
  const start = mark.align === 'left' ? 0 : mark.align === 'right' ? -width : -width / 2;
  const turned = Math.abs(mark.turnDeg ?? 0) >= STRAIGHT_DEG;
  const lettering = turned ? box.turnedLettering : box.lettering;
  if (turned) {
    const radians = ((mark.turnDeg ?? 0) * Math.PI) / 180;
    target.setTransform(new Matrix().rotate(radians).translate(whole(mark.x), whole(mark.y)));
  }
  const characters = [...mark.text];
  const put = (letter: Letter, index: number) => {
    const x = start + index * LETTER_PX + (LETTER_PX - letter.width) / 2;
    const left = turned ? x : whole(mark.x + x);
    const top = turned ? -letter.height / 2 : whole(mark.y - letter.height / 2);
    target.texture(letter.texture, 0xffffff, left, top, letter.width, letter.height);
  };
  // All rims first: the rim of one letter must not cover the letter before it.
  for (const [index, character] of characters.entries()) {
    const rim = character === ' ' ? null : lettering.rim(mark.face, character);
    if (rim) put(rim, index);
  }
  for (const [index, character] of characters.entries())
    if (character !== ' ') put(lettering.letter(mark.face, character), index);
  if (turned) target.resetTransform();
}

function stamp(target: Graphics, mark: Mark & { kind: 'glyph' }, { glyphs, ratio }: PaintBox): void {
  const half = GLYPH_PICTURE_PX / 2;
  const whole = (value: number) => Math.round(value * ratio) / ratio;
  const picture = glyphs.picture(mark.tag);
  target.texture(picture, 0xffffff, whole(mark.x - half), whole(mark.y - half), GLYPH_PICTURE_PX, GLYPH_PICTURE_PX);
}
