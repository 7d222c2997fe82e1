import { derivativeAt, mapPoint } from '../../shared-types/rules/plane-maps.ts';
import type { PhotoWarper } from '../work-map/drawing/svg-ink.ts';
import { pixelsOf, type RawPicture } from './page-pictures.ts';
import { rgbaPng } from './rgba-png.ts';

/**
 * Lays photos dot by dot for pages of `dpi` dots per inch. Each photo is opened once: the program that draws the pages would open the whole
 * photo for each of the fifty pieces of a tilted one. `openPagePictures` comes first.
 */
export function createPhotoWarper(dpi: number): PhotoWarper {
  const dotsPerPoint = dpi / 72;
  const opened = new Map<Uint8Array, RawPicture[]>();
  return (image, { x0, y0, x1, y1 }, toPixels) => {
    const levels = opened.get(image.bytes) ?? [pixelsOf(image)];
    opened.set(image.bytes, levels);
    const [width, height] = [x1 - x0, y1 - y0].map((points) => Math.max(1, Math.round(points * dotsPerPoint)));
    const middle = { x: (x0 + x1) / 2, y: (y0 + y1) / 2 };
    const [xx, xy, yx, yy] = derivativeAt(toPixels, middle);
    const pixelsPerDot = Math.sqrt(Math.abs(xx * yy - xy * yx)) / dotsPerPoint;
    const level = levelFor(levels, pixelsPerDot);
    const shrunk = levels[level].widthPx / levels[0].widthPx;
    const rows = new Uint8Array(height * (1 + 4 * width));
    for (let row = 0; row < height; row++) {
      const y = y0 + ((row + 0.5) * (y1 - y0)) / height;
      for (let column = 0; column < width; column++) {
        const at = mapPoint(toPixels, { x: x0 + ((column + 0.5) * (x1 - x0)) / width, y });
        sample(levels[level], at.x * shrunk, at.y * shrunk, rows, row * (1 + 4 * width) + 1 + 4 * column);
      }
    }
    return rgbaPng(width, height, rows);
  };
}

/** The first level with no more than two pixels for a dot: finer ones would be thrown away in drawing, unevenly. Halves are made as needed. */
function levelFor(levels: RawPicture[], pixelsPerDot: number): number {
  let level = 0;
  for (let pixels = pixelsPerDot; pixels > 2 && levels[level].widthPx > 1; pixels /= 2) {
    levels[level + 1] ??= halved(levels[level]);
    level++;
  }
  return level;
}

/** Each pixel the mean of two by two; past an odd edge its last pixel stands twice. */
function halved({ widthPx, heightPx, rgba }: RawPicture): RawPicture {
  const [width, height] = [Math.ceil(widthPx / 2), Math.ceil(heightPx / 2)];
  const half = new Uint8Array(width * height * 4);
  for (let y = 0; y < height; y++) {
    const upper = 2 * y * widthPx;
    const lower = Math.min(2 * y + 1, heightPx - 1) * widthPx;
    for (let x = 0; x < width; x++) {
      const right = Math.min(2 * x + 1, widthPx - 1);
      const to = (y * width + x) * 4;
      for (let channel = 0; channel < 4; channel++) {
        const [left, other] = [8 * x + channel, 4 * right + channel];
        half[to + channel] =
          (rgba[4 * upper + left] + rgba[4 * upper + other] + rgba[4 * lower + left] + rgba[4 * lower + other] + 2) >>
          2;
      }
    }
  }
  return { widthPx: width, heightPx: height, rgba: half };
}

/** Between the four pixels around a place; beside the picture nothing. Pixels have their middles at halves. */
function sample({ widthPx, heightPx, rgba }: RawPicture, x: number, y: number, to: Uint8Array, at: number): void {
  if (!(x >= 0 && y >= 0 && x <= widthPx && y <= heightPx)) return;
  const left = Math.min(Math.max(x - 0.5, 0), widthPx - 1);
  const top = Math.min(Math.max(y - 0.5, 0), heightPx - 1);
  const [column, row] = [Math.floor(left), Math.floor(top)];
  const [along, down] = [left - column, top - row];
  const [a, c] = [(row * widthPx + column) * 4, (Math.min(row + 1, heightPx - 1) * widthPx + column) * 4];
  const step = column + 1 < widthPx ? 4 : 0;
  for (let channel = 0; channel < 3; channel++) {
    const upper = rgba[a + channel] + (rgba[a + step + channel] - rgba[a + channel]) * along;
    const lower = rgba[c + channel] + (rgba[c + step + channel] - rgba[c + channel]) * along;
    to[at + channel] = Math.round(upper + (lower - upper) * down);
  }
  to[at + 3] = 255;
}
