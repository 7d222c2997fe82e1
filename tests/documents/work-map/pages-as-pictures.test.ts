import { Resvg } from '@resvg/resvg-wasm';
import { SaxesParser } from 'saxes';
import { beforeAll, describe, expect, it } from 'vitest';
import { loadSheetFonts } from '../../../main/shells/fonts.ts';
import { openPagePictures, pngOfPage } from '../../../main/shells/page-pictures.ts';
import { createPhotoWarper } from '../../../main/shells/warp-photos.ts';
import { PAGE } from '../../../main/work-map/paper.ts';
import { renderWorkMap } from '../../../main/work-map/render.ts';
import { renderWorkMapSvg } from '../../../main/work-map/render-svg.ts';
import type { Board } from '../../../shared-types/board.ts';
import type { BoardPhoto } from '../../../shared-types/photo.ts';
import { type GreyPage, greyOfPdf, popplerMissing, textOfPdf } from '../../support/pdf.ts';
import { pngWith } from '../../support/pictures.ts';
import { madeUpBoard, madeUpPlan } from '../../unit/main/work-map/made-up.ts';
import { assessed } from './print.ts';

/** A photo that is not square on the board, its dots dark; turned and squeezed, so that a wrong map shows. */
function withPhoto(board: Board): { board: Board; pictures: Map<string, Uint8Array> } {
  const [widthPx, heightPx] = [300, 200];
  const bytes = pngWith(widthPx, heightPx, null, (x, y) =>
    ((x >> 5) + (y >> 5)) % 3 === 0 ? [20, 20, 20] : [255, 240, 220],
  );
  const sha256 = 'c'.repeat(64);
  const xs = board.outline.map((corner) => corner.x);
  const ys = board.outline.map((corner) => corner.y);
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const corners = [
    { photo: { x: 0, y: 0 }, board: { x: left, y: high } },
    { photo: { x: widthPx, y: 10 }, board: { x: right, y: high } },
    { photo: { x: widthPx, y: heightPx }, board: { x: right, y: low } },
    { photo: { x: 15, y: heightPx }, board: { x: left, y: low } },
  ];
  const photo: BoardPhoto = {
    ...{ id: 'top', side: 'top', name: 'top.png', sha256, mediaType: 'image/png', widthPx, heightPx, orientation: 1 },
    working: { sha256, mediaType: 'image/png', widthPx, heightPx },
    pairs: corners.map((pair, index) => ({ id: `${index}`, ...pair, anchor: 'free', refdes: null })),
    ...{ fit: null, opacity: 0.5, shown: true },
  };
  return { board: { ...board, photos: [photo] }, pictures: new Map([[sha256, bytes]]) };
}

const plain = madeUpBoard(240);
const { board, pictures } = withPhoto(plain);
const plan = { ...madeUpPlan(board, { tags: 20, targets: ['U1', 'U2'] }), clampedTurnDeg: 37 };
const input = {
  ...{ board, plan, pictures, assessment: assessed(board, plan), fonts: loadSheetFonts() },
  ...{ date: '2026-11-25T10:00', programVersion: '0.1.0' },
};
const svgs = renderWorkMapSvg(input);
const pdf = await renderWorkMap(input);
const DOTS = 2;

/** The SVG as another program draws it, grey, at the same dots a point as the PDF. */
function greyOfSvg(svg: string): GreyPage {
  const image = new Resvg(svg, { fitTo: { mode: 'width', value: Math.round(PAGE.width * DOTS) } }).render();
  const { width: widthPx, height: heightPx, pixels } = image;
  const at = (x: number, y: number) => {
    const dot = (Math.round(y) * widthPx + Math.round(x)) * 4;
    return 0.299 * pixels[dot] + 0.587 * pixels[dot + 1] + 0.114 * pixels[dot + 2];
  };
  return { widthPx, heightPx, at };
}

/** Share of the dark dots of one picture that have none within two dots in the other. */
function alone(one: GreyPage, other: GreyPage): number {
  let [dark, lonely] = [0, 0];
  const [width, height] = [Math.min(one.widthPx, other.widthPx), Math.min(one.heightPx, other.heightPx)];
  for (let y = 2; y < height - 2; y++)
    for (let x = 2; x < width - 2; x++) {
      if (one.at(x, y) > 110) continue;
      dark++;
      let found = false;
      for (let dy = -2; dy <= 2 && !found; dy++)
        for (let dx = -2; dx <= 2 && !found; dx++) found = other.at(x + dx, y + dy) < 190;
      if (!found) lonely++;
    }
  expect(dark).toBeGreaterThan(1000);
  return lonely / dark;
}

/** Share of the places where two pictures of a page differ in their grey. */
function shareOff(one: GreyPage, other: GreyPage): number {
  const seen = { dark: 0, light: 0, off: 0 };
  for (let y = 0; y < one.heightPx; y += 3)
    for (let x = 0; x < one.widthPx; x += 3) {
      const here = one.at(x, y);
      seen[here < 190 ? 'dark' : 'light']++;
      if (Math.abs(other.at(x, y) - here) > 45) seen.off++;
    }
  expect(Math.min(seen.dark, seen.light)).toBeGreaterThan(1000);
  return seen.off / (seen.dark + seen.light);
}

describe('the pages of the work map as SVG', () => {
  beforeAll(async () => void (await pngOfPage(svgs[0], 50)));

  it('are one well-formed text a page, A4, that ask for nothing outside themselves', () => {
    for (const svg of svgs) {
      const parser = new SaxesParser();
      const labels: string[] = [];
      const ids = new Set<string>();
      const used = new Set<string>();
      parser.on('opentag', ({ attributes }) => {
        if (attributes['aria-label']) labels.push(String(attributes['aria-label']));
        if (attributes.id) ids.add(String(attributes.id));
        for (const name of ['href', 'clip-path']) {
          const named = attributes[name];
          if (!named) continue;
          const text = String(named);
          expect(text).toMatch(/^(#|url\(#|data:image\/)/);
          if (!text.startsWith('data:')) used.add(text.replace(/^(#|url\(#)|\)$/g, ''));
        }
      });
      parser.write(svg).close();
      expect([...used].filter((id) => !ids.has(id))).toEqual([]);
      expect(labels.length).toBeGreaterThan(10);
      expect(svg).toContain('width="210mm" height="297mm"');
      expect(svg).not.toMatch(/NaN|undefined|Infinity|<text|font-family/);
    }
  });

  it('come out the same twice', () => expect(renderWorkMapSvg(input)).toEqual(svgs));

  describe.skipIf(popplerMissing)('beside the PDF', () => {
    it('hold the same pages and words', () => {
      expect(svgs).toHaveLength(pdf.pages);
      const words = (text: string) => text.replace(/\s+/g, '').split('').sort().join('');
      const texts = textOfPdf(pdf.bytes);
      for (const [index, svg] of svgs.entries()) {
        const labels = [...svg.matchAll(/aria-label="([^"]*)"/g)].map(([, label]) => label);
        const said = labels.join('').replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&amp;', '&');
        expect(words(said), `page ${index + 1}`).toBe(words(texts[index]));
      }
    });

    it('look the same: every dark dot within two dots of one, photo and hatches included', () => {
      const seen = new Set([0, 1, pdf.pages - 4, pdf.pages - 1]);
      for (const index of seen) {
        const [ours, theirs] = [greyOfSvg(svgs[index]), greyOfPdf(pdf.bytes, index + 1, DOTS)];
        expect(Math.abs(ours.widthPx - theirs.widthPx)).toBeLessThan(2);
        expect(Math.abs(ours.heightPx - theirs.heightPx)).toBeLessThan(2);
        expect(alone(theirs, ours), `page ${index + 1}: only on the PDF`).toBeLessThan(0.002);
        expect(alone(ours, theirs), `page ${index + 1}: only on the SVG`).toBeLessThan(0.002);
      }
      const [ours, theirs] = [greyOfSvg(svgs[0]), greyOfPdf(pdf.bytes, 1, DOTS)];
      // Where the PDF is even for four dots around, the SVG has the same grey: the lightened photo lies in the same place.
      const greys = { dark: 0, light: 0, off: 0 };
      for (let y = 800; y < 1400; y += 5)
        for (let x = 150; x < 1000; x += 5) {
          const here = theirs.at(x, y);
          const around = [-4, 0, 4].flatMap((dx) => [-4, 0, 4].map((dy) => theirs.at(x + dx, y + dy)));
          if (around.some((grey) => Math.abs(grey - here) > 6)) continue;
          greys[here < 190 ? 'dark' : 'light']++;
          if (Math.abs(ours.at(x, y) - here) > 45) greys.off++;
        }
      expect(greys.dark).toBeGreaterThan(1000);
      expect(greys.light).toBeGreaterThan(1000);
      expect(greys.off / (greys.dark + greys.light)).toBeLessThan(0.01);
    });
  });
});

describe('a page as PNG', () => {
  it('shows a leaning photo laid dot by dot where the pieces of the SVG lie, with no piece left in it', async () => {
    await openPagePictures();
    expect(svgs[0]).toContain('<pattern');
    const pieces = greyOfSvg(svgs[0]);
    const [warped] = renderWorkMapSvg(input, createPhotoWarper(72 * DOTS));
    expect(warped).not.toContain('<pattern');
    expect(shareOff(pieces, greyOfSvg(warped))).toBeLessThan(0.004);
  });

  it('has the width of A4 in the dots that were asked for', async () => {
    for (const dpi of [72, 150]) {
      const png = await pngOfPage(svgs[0], dpi);
      const view = new DataView(png.buffer, png.byteOffset);
      expect([...png.subarray(1, 4)]).toEqual([0x50, 0x4e, 0x47]);
      expect(view.getUint32(16)).toBe(Math.round((210 / 25.4) * dpi));
      expect(Math.abs(view.getUint32(20) - (297 / 25.4) * dpi)).toBeLessThan(1.5);
    }
  });
});
