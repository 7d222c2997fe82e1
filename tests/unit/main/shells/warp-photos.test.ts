import { beforeAll, expect, test } from 'vitest';
import { openPagePictures, pixelsOf } from '../../../../main/shells/page-pictures.ts';
import { createPhotoWarper } from '../../../../main/shells/warp-photos.ts';
import { mapPoint, type PlaneMap } from '../../../../shared-types/rules/plane-maps.ts';
import { pngWith } from '../../../support/pictures.ts';

const SIZE = 255;
/** Red tells how far to the right, green how far down, so that every dot says where it was taken from. */
const bytes = pngWith(SIZE, SIZE, null, (x, y) => [x, y, 40]);
const image = { bytes, widthPx: SIZE, heightPx: SIZE, opened: null as unknown as PDFKit.Mixins.ImageSrc };

beforeAll(() => openPagePictures());

/** The map of points to pixels, whether a photo is drawn larger or, at 9 pixels a dot, from one of its halves. */
const maps: [string, number, PlaneMap][] = [
  ['larger', 0.4, [0.35, 0.1, 20, -0.08, 0.3, 60, 0, 0, 1]],
  ['as it is, from an angle', 1, [1.1, 0.1, 10, 0.05, 0.9, 20, 0.001, 0.0005, 1]],
  ['nine times smaller', 9, [9, 0.4, -2, -0.3, 9, 3, 0, 0, 1]],
];

test.each(maps)('%s: every dot has the colour of its place', (_name, fineness, toPixels) => {
  const box = { x0: 2, y0: 3, x1: 27, y1: 26 };
  const png = createPhotoWarper(72)(image, box, toPixels);
  if (!png) throw new Error('nothing drawn');
  const view = new DataView(png.buffer, png.byteOffset);
  const [widthPx, heightPx] = [view.getUint32(16), view.getUint32(20)];
  expect([widthPx, heightPx]).toEqual([25, 23]);
  const { rgba } = pixelsOf({ bytes: png, widthPx, heightPx });
  let checked = 0;
  for (let row = 0; row < heightPx; row++)
    for (let column = 0; column < widthPx; column++) {
      const at = mapPoint(toPixels, { x: box.x0 + column + 0.5, y: box.y0 + row + 0.5 });
      const dot = (row * widthPx + column) * 4;
      const inside = at.x >= 0 && at.y >= 0 && at.x <= SIZE && at.y <= SIZE;
      // Beside the photo nothing is laid: the white of the page.
      if (!inside) expect([...rgba.subarray(dot, dot + 3)]).toEqual([255, 255, 255]);
      if (at.x < 10 || at.y < 10 || at.x > SIZE - 10 || at.y > SIZE - 10) continue;
      checked++;
      expect(Math.abs(rgba[dot] - (at.x - 0.5))).toBeLessThan(1 + fineness / 9);
      expect(Math.abs(rgba[dot + 1] - (at.y - 0.5))).toBeLessThan(1 + fineness / 9);
    }
  expect(checked).toBeGreaterThan(300);
});

test('what is too fine for the dots is their mean, not one pixel of many', () => {
  const fine = pngWith(SIZE, SIZE, null, (x, y) => [((x + y) % 2) * 255, 0, 0]);
  const box = { x0: 0, y0: 0, x1: 20, y1: 20 };
  const png = createPhotoWarper(72)({ ...image, bytes: fine }, box, [9, 0, 10, 0, 9, 10, 0, 0, 1]);
  const { rgba } = pixelsOf({ bytes: png ?? new Uint8Array(), widthPx: 20, heightPx: 20 });
  const reds = Array.from({ length: 400 }, (_, dot) => rgba[dot * 4]);
  expect(Math.min(...reds)).toBeGreaterThan(118);
  expect(Math.max(...reds)).toBeLessThan(138);
});
