import PDFDocument from 'pdfkit';
import { describe, expect, test } from 'vitest';
import { loadSheetFonts } from '../../../main/shells/fonts.ts';
import { createPdfInk } from '../../../main/work-map/drawing/pdf-ink.ts';
import { openPhotos } from '../../../main/work-map/drawing/photo-images.ts';
import { composePicture, drawBoard, photosOf } from '../../../main/work-map/drawing/picture.ts';
import { createTypefaces } from '../../../main/work-map/drawing/typeface.ts';
import { gatherFacts } from '../../../main/work-map/facts/sheet-facts.ts';
import { PAGE, POINTS_PER_MM } from '../../../main/work-map/paper.ts';
import { renderWorkMap } from '../../../main/work-map/render.ts';
import { type Board, emptyBoard } from '../../../shared-types/board.ts';
import type { Point, Side } from '../../../shared-types/geometry.ts';
import type { BoardPhoto } from '../../../shared-types/photo.ts';
import { emptyPlan } from '../../../shared-types/rules/new-plan.ts';
import { chainMaps, invertMap, mapPoint, type PlaneMap } from '../../../shared-types/rules/plane-maps.ts';
import { greyOfPdf, popplerMissing, textOfPdf } from '../../support/pdf.ts';
import { pngWith } from '../../support/pictures.ts';
import { emptyAssessment } from '../../unit/main/work-map/assessment.ts';
import { madeUpBoard, madeUpPlan } from '../../unit/main/work-map/made-up.ts';

if (popplerMissing) console.log(`skipped: ${popplerMissing}`);

const [WIDTH, HEIGHT] = [320, 220];
const FROM_ABOVE: PlaneMap = [0.2, 0, -2, 0, -0.2, 42, 0, 0, 1];
/** From an angle: a millimetre at one corner is drawn a third smaller than at the other. */
const TILT: PlaneMap = [1, 0.1, -8, 0, 1, 0, 0.0003, -0.001, 1];
const TILTED = chainMaps(FROM_ABOVE, TILT);
const MARKS: Point[] = [
  { x: 6, y: 6 },
  { x: 52, y: 8 },
  { x: 30, y: 20 },
  { x: 8, y: 34 },
  { x: 50, y: 33 },
];

/** A photo that shows black dots of 1 mm radius at the marks, wherever the map puts them. */
function photoUnder(
  map: PlaneMap,
  side: Side,
  fields: Partial<BoardPhoto> = {},
): { photo: BoardPhoto; bytes: Uint8Array } {
  const bytes = pngWith(WIDTH, HEIGHT, null, (x, y) => {
    const at = mapPoint(map, { x: x + 0.5, y: y + 0.5 });
    const dark = MARKS.some((mark) => Math.hypot(mark.x - at.x, mark.y - at.y) < 1);
    return dark ? [0, 0, 0] : [255, 255, 255];
  });
  const toPhoto = invertMap(map) as PlaneMap;
  const sha256 = (side === 'top' ? 'a' : 'b').repeat(64);
  const photo: BoardPhoto = {
    id: side,
    side,
    name: `${side}.png`,
    sha256,
    mediaType: 'image/png',
    widthPx: WIDTH,
    heightPx: HEIGHT,
    orientation: 1,
    working: { sha256, mediaType: 'image/png', widthPx: WIDTH, heightPx: HEIGHT },
    pairs: MARKS.map((board, index) => ({
      id: `${index}`,
      photo: mapPoint(toPhoto, board),
      board,
      anchor: 'free',
      refdes: null,
    })),
    fit: null,
    opacity: 1,
    shown: true,
    ...fields,
  };
  return { photo, bytes };
}

const boardWithPhotos = (...photos: BoardPhoto[]): Board => ({ ...emptyBoard('Photo probe', 60, 40), photos });

/** One page with nothing but the board and its photo, and where the view puts board points on it. */
async function pageOf(board: Board, pictures: Map<string, Uint8Array>, side: Side, turnDeg: number) {
  const document = new PDFDocument({ size: [PAGE.width, PAGE.height], margin: 0, font: '' });
  const chunks: Uint8Array[] = [];
  const done = new Promise((resolve) => document.on('data', (chunk) => chunks.push(chunk)).on('end', resolve));
  const ink = createPdfInk(document, createTypefaces(document, loadSheetFonts()));
  const { photos } = openPhotos(document, board, pictures);
  const facts = gatherFacts(board, emptyPlan('P-1'), emptyAssessment(), photos);
  const frame = { x0: 40, y0: 40, x1: 555, y1: 500 };
  const middle = side === 'bottom' ? { x: -30, y: 20 } : { x: 30, y: 20 };
  const angle = (turnDeg * Math.PI) / 180;
  const turned = {
    x: middle.x * Math.cos(angle) - middle.y * Math.sin(angle),
    y: middle.x * Math.sin(angle) + middle.y * Math.cos(angle),
  };
  const picture = composePicture(facts, { side, turnDeg, scale: 2, frame, middle: turned });
  drawBoard(ink, facts, picture, photosOf(facts, side));
  document.end();
  await done;
  return { bytes: new Uint8Array(Buffer.concat(chunks)), toPage: picture.view.toPage };
}

describe.skipIf(popplerMissing)(
  'a photo lies on the page where its map puts it, as another program draws the page',
  () => {
    test.each([
      ['from above', FROM_ABOVE, 'top', 0],
      ['tilted', TILTED, 'top', 0],
      ['tilted, turned in the clamp', TILTED, 'top', 37],
      ['the bottom, mirrored as it lies', chainMaps([-1, 0, 60, 0, 1, 0, 0, 0, 1], TILTED), 'bottom', 0],
    ] as const)('%s', async (_, map, side, turnDeg) => {
      const { photo, bytes } = photoUnder(map, side);
      const page = await pageOf(boardWithPhotos(photo), new Map([[photo.sha256, bytes]]), side, turnDeg);
      const dots = 2;
      const grey = greyOfPdf(page.bytes, 1, dots);
      for (const mark of MARKS) {
        const at = page.toPage(mark);
        const reach = 2.5 * 2 * POINTS_PER_MM * dots;
        let [sum, x, y] = [0, 0, 0];
        for (let dx = -reach; dx <= reach; dx++) {
          for (let dy = -reach; dy <= reach; dy++) {
            const [px, py] = [Math.round(at.x * dots + dx), Math.round(at.y * dots + dy)];
            const dark = grey.at(px, py) < 190 ? 1 : 0;
            [sum, x, y] = [sum + dark, x + dark * (px + 0.5), y + dark * (py + 0.5)];
          }
        }
        // The dot is there, of the right size, and its middle lies within one pixel of the photo, 0.2 mm of the board.
        expect(sum / (dots * 2 * POINTS_PER_MM) ** 2).toBeGreaterThan(0.8 * Math.PI);
        expect(sum / (dots * 2 * POINTS_PER_MM) ** 2).toBeLessThan(1.2 * Math.PI);
        const off = Math.hypot(x / sum / dots - at.x, y / sum / dots - at.y) / (2 * POINTS_PER_MM);
        expect(off).toBeLessThan(0.2);
        // Lightened by half, so that lines over it stay readable.
        expect(grey.at(at.x * dots, at.y * dots)).toBeGreaterThan(110);
        expect(grey.at(at.x * dots, at.y * dots)).toBeLessThan(145);
      }
    });

    test('nothing of it is drawn outside the board', async () => {
      const { photo } = photoUnder(FROM_ABOVE, 'top');
      const black = pngWith(WIDTH, HEIGHT, null, () => [0, 0, 0]);
      const page = await pageOf(boardWithPhotos(photo), new Map([[photo.sha256, black]]), 'top', 0);
      const grey = greyOfPdf(page.bytes, 1, 2);
      const [inside, outside] = [page.toPage({ x: 1, y: 1 }), page.toPage({ x: -1, y: 1 })];
      expect(grey.at(2 * inside.x, 2 * inside.y)).toBeLessThan(145);
      expect(grey.at(2 * outside.x, 2 * outside.y)).toBe(255);
    });
  },
);

const print = (board: Board, pictures?: Map<string, Uint8Array>) => {
  const plan = madeUpPlan(board, { tags: 6 });
  const date = '2026-11-25T10:00';
  const rest = { fonts: loadSheetFonts(), date, programVersion: '0.1.0', ...(pictures ? { pictures } : {}) };
  return renderWorkMap({ board, plan, assessment: emptyAssessment(), ...rest });
};
const imagesIn = (bytes: Uint8Array): number =>
  [
    ...Buffer.from(bytes)
      .toString('latin1')
      .matchAll(/\/Subtype \/Image/g),
  ].length;

describe('the sheet of a ticket with photos', () => {
  const plain = madeUpBoard(60);
  const top = photoUnder(TILTED, 'top');
  const pictures = new Map([[top.photo.sha256, top.bytes]]);

  test('each photo stands in the file once, however many pictures show it; the same ticket gives the same bytes', async () => {
    const board = { ...plain, photos: [top.photo] };
    const [first, again, without] = [await print(board, pictures), await print(board, pictures), await print(plain)];
    expect(imagesIn(first.bytes)).toBe(1);
    expect(Buffer.compare(first.bytes, again.bytes)).toBe(0);
    expect(first.bytes.length).toBeLessThan(without.bytes.length + top.bytes.length + 200_000);
    if (!popplerMissing) expect(textOfPdf(first.bytes).join()).toContain('Photo, lightened');
  });

  test('without a photo, or with all of them hidden, nothing changes', async () => {
    const none = await print(plain);
    for (const photos of [[], [{ ...top.photo, shown: false }], [{ ...top.photo, opacity: 0 }]]) {
      expect(Buffer.compare((await print({ ...plain, photos }, pictures)).bytes, none.bytes)).toBe(0);
    }
  });

  test('a photo that cannot be printed is told', async () => {
    const clear = top.bytes.slice();
    // Byte 25 of a PNG is its kind of colours; 6 has transparency.
    clear[25] = 6;
    const cases: [BoardPhoto, Map<string, Uint8Array>, string][] = [
      [{ ...top.photo, pairs: [] }, pictures, 'not matched'],
      [top.photo, new Map(), 'does not hold it'],
      [top.photo, new Map([[top.photo.sha256, clear]]), 'cannot be printed'],
      [top.photo, new Map([[top.photo.sha256, new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 0, 9])]]), 'cannot be printed'],
    ];
    for (const [photo, given, words] of cases) {
      const { bytes } = await print({ ...plain, photos: [photo] }, given);
      expect(imagesIn(bytes)).toBe(0);
      if (!popplerMissing) expect(textOfPdf(bytes).join().replace(/\s+/g, ' ')).toContain(words);
    }
  });
});
