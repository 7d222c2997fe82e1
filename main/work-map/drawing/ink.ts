import { INK, type PageBox, type PagePoint } from '../paper.ts';
import type { Line, Piece, TextStyle } from './phrase.ts';
import { ASCENT, DESCENT, type Face, type Typefaces } from './typeface.ts';

export type Stroke = { width?: number; colour?: string; dash?: readonly number[] };

/** The pen: every mark on the sheet goes through it. Points, y down. */
export type Ink = {
  document: PDFKit.PDFDocument;
  type: Typefaces;
  text(x: number, baseline: number, text: string, style: { face: Face; size: number; colour?: string }): void;
  line(line: Line, x: number, baseline: number, style: TextStyle): void;
  segment(from: PagePoint, to: PagePoint, stroke?: Stroke): void;
  polyline(points: readonly PagePoint[], stroke?: Stroke): void;
  polygon(points: readonly PagePoint[], stroke?: Stroke | null, fill?: string): void;
  circle(centre: PagePoint, radius: number, stroke?: Stroke | null, fill?: string): void;
  box(box: PageBox, stroke?: Stroke | null, fill?: string): void;
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

/** A pen for a document. */
export function createInk(document: PDFKit.PDFDocument, type: Typefaces): Ink {
  const pen = (stroke: Stroke) => {
    document.lineWidth(stroke.width ?? 0.5).strokeColor(stroke.colour ?? INK.black);
    // The library takes a list of lengths; its published types know only one.
    if (stroke.dash) document.dash([...stroke.dash] as unknown as number, {});
    else document.undash();
  };
  const path = (points: readonly PagePoint[]) => {
    for (const [index, point] of points.entries())
      if (index === 0) document.moveTo(point.x, point.y);
      else document.lineTo(point.x, point.y);
  };
  const finish = (stroke: Stroke | null, fill: string | undefined) => {
    if (stroke) pen(stroke);
    if (stroke && fill) document.fillAndStroke(fill, stroke.colour ?? INK.black);
    else if (fill) document.fill(fill);
    else if (stroke) document.stroke();
  };
  const text: Ink['text'] = (x, baseline, words, style) => {
    let at = x;
    for (const run of type.runs(words, style.face)) {
      document
        .font(run.font)
        .fontSize(style.size)
        .fillColor(style.colour ?? INK.black);
      document.text(run.text, at, baseline, { lineBreak: false, baseline: 'alphabetic' });
      at += document.widthOfString(run.text);
    }
  };
  const polygon: Ink['polygon'] = (points, stroke = {}, fill) => {
    if (points.length < 2 || (!stroke && !fill)) return;
    path(points);
    document.closePath();
    finish(stroke, fill);
  };
  return {
    document,
    type,
    text,
    polygon,
    line(line, x, baseline, style) {
      let at = x;
      for (const piece of joined(line.pieces)) {
        text(at, baseline, piece.text, { face: piece.face, size: style.size, colour: style.colour });
        at += type.width(piece.text, piece.face, style.size);
      }
    },
    segment(from, to, stroke = {}) {
      pen(stroke);
      document.moveTo(from.x, from.y).lineTo(to.x, to.y).stroke();
    },
    polyline(points, stroke = {}) {
      if (points.length < 2) return;
      pen(stroke);
      path(points);
      document.stroke();
    },
    circle(centre, radius, stroke = {}, fill) {
      if (!stroke && !fill) return;
      document.circle(centre.x, centre.y, radius);
      finish(stroke, fill);
    },
    box(box, stroke = {}, fill) {
      polygon(cornersOfBox(box), stroke, fill);
    },
    clipped(polygons, draw) {
      document.save();
      for (const points of polygons) {
        path(points);
        document.closePath();
      }
      document.clip('even-odd');
      draw();
      document.restore();
    },
  };
}
