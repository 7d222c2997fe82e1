import { INK, PAGE, type PagePoint } from '../paper.ts';
import { completePen, type Ink, type Stroke } from './ink.ts';
import type { Typefaces } from './typeface.ts';

/** Upright already; the library's published types do not know the word yet. */
const WHOLE_PICTURE: PDFKit.Mixins.ImageOption & { ignoreOrientation: boolean } = {
  ...{ width: 1, height: 1 },
  ignoreOrientation: true,
};

/** A pen that draws on a PDF. */
export function createPdfInk(document: Document, type: Typefaces): Ink {
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
  return completePen({
    ...pagesAndPills(document),
    type,
    text,
    polygon,
    image({ opened }, { xx, yx, xy, yy, x0, y0 }, within) {
      document.save();
      path(within);
      document.closePath().clip().transform(xx, yx, xy, yy, x0, y0);
      document.image(opened, 0, 0, WHOLE_PICTURE).restore();
    },
    veil(points, fill, opacity) {
      document.save().fillOpacity(opacity);
      polygon(points, null, fill);
      document.restore();
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
  });
}

type Document = PDFKit.PDFDocument;

const pagesAndPills = (document: Document): Pick<Ink, 'newPage' | 'pageCount' | 'turnTo' | 'pill'> => ({
  newPage: () => void document.addPage({ size: [PAGE.width, PAGE.height], margin: 0 }),
  pageCount: () => document.bufferedPageRange().count,
  turnTo: (page) => void document.switchToPage(page),
  pill({ x0, y0, x1, y1 }, radius, fill) {
    document.roundedRect(x0, y0, x1 - x0, y1 - y0, radius);
    document.fill(fill);
  },
});
