import type { PlaneMap } from '../../../shared-types/rules/plane-maps.ts';
import { INK, PAGE, type PageBox, type PagePoint } from '../paper.ts';
import { completePen, type Ink, type PictureMap, type Stroke } from './ink.ts';
import type { SheetImage } from './photo-images.ts';
import type { Typefaces } from './typeface.ts';

/** One page: what is defined once and used often, what is drawn, and its running numbers. */
type Page = {
  definitions: string[];
  marks: string[];
  known: Map<string | SheetImage, string>;
  clips: number;
  pieces: number;
};

/** Thousandths of a point serve: a pixel at 600 dots per inch is 0.12 points. */
const short = (value: number): string => String(Math.round(value * 1000) / 1000);
const pathOf = (points: readonly PagePoint[], closed: boolean): string =>
  `M${points.map(({ x, y }) => `${short(x)} ${short(y)}`).join('L')}${closed ? 'Z' : ''}`;
const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

function strokeOf(stroke: Stroke): string {
  const dash = stroke.dash ? ` stroke-dasharray="${stroke.dash.map(short).join(' ')}"` : '';
  return `stroke="${stroke.colour ?? INK.black}" stroke-width="${short(stroke.width ?? 0.5)}"${dash}`;
}
const paintOf = (stroke: Stroke | null, fill: string | undefined): string =>
  `fill="${fill ?? 'none'}"${stroke ? ` ${strokeOf(stroke)}` : ''}`;

/** What of a picture shows in a box of the page, as a PNG of any size; points of the page to pixels of the picture. Null: nothing does. */
export type PhotoWarper = (image: SheetImage, box: PageBox, toPixels: PlaneMap) => Uint8Array | null;

/**
 * A pen that draws each page as an SVG of its own: A4, vectors, letters as outlines, so that it looks the same where no font of ours
 * is installed; each text stands beside its outlines as a label for whoever cannot see them. `pages` gives them when all is drawn.
 * `warp`: for pages that end as dots themselves, where a photo need not stay as it came.
 */
export function createSvgInk(
  type: Typefaces,
  warp?: PhotoWarper,
): { ink: Ink; pages(title: (page: number) => string): string[] } {
  const all: Page[] = [];
  let page: Page = openPage();
  const mark = (text: string) => void page.marks.push(text);
  const text: Ink['text'] = (x, baseline, words, style) => {
    let at = x;
    for (const run of type.runs(words, style.face)) {
      const { perEm, glyphs, width } = type.outlines(run);
      const scale = style.size / perEm;
      const letters = glyphs.map((glyph) => {
        const key = `${run.font}-${glyph.id}`;
        return `<use href="#${defined(page, key, () => outlined(glyph.outline()))}" x="${short(glyph.x * perEm)}" y="${short(glyph.y * perEm)}"/>`;
      });
      const place = `translate(${short(at)} ${short(baseline)}) scale(${scale.toFixed(6)} ${(-scale).toFixed(6)})`;
      mark(
        `<g role="img" aria-label="${escaped(run.text)}" fill="${style.colour ?? INK.black}" transform="${place}">${letters.join('')}</g>`,
      );
      at += width * style.size;
    }
  };
  const polygon: Ink['polygon'] = (points, stroke = {}, fill) => {
    if (points.length < 2 || (!stroke && !fill)) return;
    mark(`<path d="${pathOf(points, true)}" ${paintOf(stroke, fill)}/>`);
  };
  const ink = completePen({
    ...{ type, text, polygon },
    newPage() {
      page = openPage();
      all.push(page);
    },
    pageCount: () => all.length,
    turnTo(number) {
      page = all[number];
    },
    polyline(points, stroke = {}) {
      if (points.length >= 2) mark(`<path d="${pathOf(points, false)}" fill="none" ${strokeOf(stroke)}/>`);
    },
    circle({ x, y }, radius, stroke = {}, fill) {
      if (stroke || fill)
        mark(`<circle cx="${short(x)}" cy="${short(y)}" r="${short(radius)}" ${paintOf(stroke, fill)}/>`);
    },
    pill: (box, radius, fill) => mark(`<rect ${rectangle(box)} rx="${short(radius)}" fill="${fill}"/>`),
    image(image, map, within) {
      const id = defined(page, image, () => pictured(image.bytes));
      const piece = `i${++page.pieces}`;
      page.definitions.push(pieceOf(piece, id, map, within));
      mark(`<path d="${pathOf(within, true)}" fill="url(#${piece})"/>`);
    },
    ...(warp && {
      warp(image, box, toPixels) {
        const dots = warp(image, box, toPixels);
        if (dots) mark(`<image ${rectangle(box)} preserveAspectRatio="none" href="${dataOf(dots)}"/>`);
      },
    }),
    veil(points, fill, opacity) {
      mark(`<path d="${pathOf(points, true)}" fill="${fill}" fill-opacity="${short(opacity)}"/>`);
    },
    clipped(polygons, draw) {
      const id = `c${++page.clips}`;
      const shape = polygons.map((points) => pathOf(points, true)).join('');
      page.definitions.push(`<clipPath id="${id}"><path clip-rule="evenodd" d="${shape}"/></clipPath>`);
      mark(`<g clip-path="url(#${id})">`);
      draw();
      mark('</g>');
    },
  });
  return { ink, pages: (title) => all.map((one, index) => written(one, title(index + 1))) };
}

const openPage = (): Page => ({ definitions: [], marks: [], known: new Map(), clips: 0, pieces: 0 });

/** The id of what is defined once a page. `make` gives its element, with room for the id. */
function defined(page: Page, key: string | SheetImage, make: () => (id: string) => string): string {
  const known = page.known.get(key);
  if (known) return known;
  const id = `d${page.known.size + 1}`;
  page.known.set(key, id);
  page.definitions.push(make()(id));
  return id;
}

const outlined = (outline: string) => (id: string) => `<path id="${id}" d="${outline}"/>`;
const rectangle = ({ x0, y0, x1, y1 }: PageBox): string =>
  `x="${short(x0)}" y="${short(y0)}" width="${short(x1 - x0)}" height="${short(y1 - y0)}"`;

/** A picture of the size one, upright already: what a camera noted of its turn must not turn it again. */
const pictured = (bytes: Uint8Array) => (id: string) =>
  `<image id="${id}" width="1" height="1" preserveAspectRatio="none" style="image-orientation:none" href="${dataOf(bytes)}"/>`;

const dataOf = (bytes: Uint8Array): string =>
  `data:image/${bytes[0] === 0x89 ? 'png' : 'jpeg'};base64,${base64(bytes)}`;

/**
 * A pattern that holds just the part of a picture that a polygon shows, and a little more: a program that draws it need not draw the
 * whole picture for every polygon.
 */
function pieceOf(id: string, picture: string, map: PictureMap, within: readonly PagePoint[]): string {
  const { xx, yx, xy, yy, x0, y0 } = map;
  const area = xx * yy - xy * yx;
  const shares = within.map(({ x, y }) => ({
    u: ((x - x0) * yy - (y - y0) * xy) / area,
    v: ((y - y0) * xx - (x - x0) * yx) / area,
  }));
  const span = (values: number[]) => {
    const [low, high] = [Math.min(...values), Math.max(...values)];
    const spare = (high - low) * 0.05;
    return [low - spare, high - low + 2 * spare];
  };
  const [[x, width], [y, height]] = [span(shares.map(({ u }) => u)), span(shares.map(({ v }) => v))];
  const [left, top, wide, tall] = [-x, -y, width, height].map((value) => value.toFixed(6));
  const shifted = [xx, yx, xy, yy, x0 + xx * x + xy * y, y0 + yx * x + yy * y].map((value) => value.toFixed(5));
  // The tile begins at 0, 0: programs disagree on where the contents of one that begins elsewhere lie.
  return `<pattern id="${id}" patternUnits="userSpaceOnUse" width="${wide}" height="${tall}" patternTransform="matrix(${shifted.join(' ')})"><use href="#${picture}" x="${left}" y="${top}"/></pattern>`;
}

function base64(bytes: Uint8Array): string {
  const pieces: string[] = [];
  for (let at = 0; at < bytes.length; at += 0x8000)
    pieces.push(String.fromCharCode(...bytes.subarray(at, at + 0x8000)));
  return btoa(pieces.join(''));
}

function written({ definitions, marks }: Page, title: string): string {
  const { width, height } = PAGE;
  return `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="210mm" height="297mm" viewBox="0 0 ${width} ${height}" stroke-miterlimit="10">
<title>${escaped(title)}</title>
<defs>
${definitions.join('\n')}
</defs>
<rect width="${width}" height="${height}" fill="${INK.white}"/>
${marks.join('\n')}
</svg>
`;
}
