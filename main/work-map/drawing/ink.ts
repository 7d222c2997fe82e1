import type { PlaneMap } from '../../../shared-types/rules/plane-maps.ts';
import type { PageBox, PagePoint } from '../paper.ts';
import type { SheetImage } from './photo-images.ts';
import type { Line, Piece, TextStyle } from './phrase.ts';
import { ASCENT, DESCENT, type Face, type Typefaces } from './typeface.ts';

export type Stroke = { width?: number; colour?: string; dash?: readonly number[] };

/** Shares of a picture's width and height to points on the page: x = xx u + xy v + x0, y = yx u + yy v + y0. */
export type PictureMap = { xx: number; yx: number; xy: number; yy: number; x0: number; y0: number };

/** The pen: every mark on the sheet goes through it, whatever is drawn on (PDF, SVG). Points, y down. */
export type Ink = {
  type: Typefaces;
  /** Starts a page; what follows is drawn on it. */
  newPage(): void;
  pageCount(): number;
  /** Goes back to a page, the first is 0. */
  turnTo(page: number): void;
  text(x: number, baseline: number, text: string, style: { face: Face; size: number; colour?: string }): void;
  line(line: Line, x: number, baseline: number, style: TextStyle): void;
  segment(from: PagePoint, to: PagePoint, stroke?: Stroke): void;
  polyline(points: readonly PagePoint[], stroke?: Stroke): void;
  polygon(points: readonly PagePoint[], stroke?: Stroke | null, fill?: string): void;
  circle(centre: PagePoint, radius: number, stroke?: Stroke | null, fill?: string): void;
  box(box: PageBox, stroke?: Stroke | null, fill?: string): void;
  /** A box with its corners rounded, filled. */
  pill(box: PageBox, radius: number, fill: string): void;
  /** What of a picture lies within a polygon. */
  image(image: SheetImage, map: PictureMap, within: readonly PagePoint[]): void;
  /**
   * Lays a picture dot by dot within a box by any map, points of the page to pixels of the picture: only a pen whose pages end as dots
   * has it, and is spared the pieces.
   */
  warp?(image: SheetImage, box: PageBox, toPixels: PlaneMap): void;
  /** Fills a polygon that lets through what lies below. */
  veil(points: readonly PagePoint[], fill: string, opacity: number): void;
  /** Runs `draw` with everything outside the polygons hidden (even-odd). */
  clipped(polygons: readonly (readonly PagePoint[])[], draw: () => void): void;
};

/** Where a text stands on the page as a reader of the PDF sees it. */
export const textBox = (x: number, baseline: number, width: number, size: number): PageBox => ({
  x0: x,
  y0: baseline - ASCENT * size,
  x1: x + width,
  y1: baseline + DESCENT * size,
});

export const cornersOfBox = (box: PageBox): PagePoint[] => [
  { x: box.x0, y: box.y0 },
  { x: box.x1, y: box.y0 },
  { x: box.x1, y: box.y1 },
  { x: box.x0, y: box.y1 },
];

/** Neighbouring pieces of one face as one: fewer, longer strings in the file. */
function joined(pieces: readonly Piece[]): Piece[] {
  const result: Piece[] = [];
  for (const piece of pieces) {
    const last = result.at(-1);
    if (last && last.face === piece.face) last.text += piece.text;
    else result.push({ ...piece });
  }
  return result;
}

/** A pen from what it must know itself: lines of text, single strokes and boxes are made of the rest. */
export function completePen(pen: Omit<Ink, 'line' | 'segment' | 'box'>): Ink {
  return {
    ...pen,
    line(line, x, baseline, style) {
      let at = x;
      for (const piece of joined(line.pieces)) {
        pen.text(at, baseline, piece.text, { face: piece.face, size: style.size, colour: style.colour });
        at += pen.type.width(piece.text, piece.face, style.size);
      }
    },
    segment: (from, to, stroke) => pen.polyline([from, to], stroke),
    box: (box, stroke, fill) => pen.polygon(cornersOfBox(box), stroke, fill),
  };
}
