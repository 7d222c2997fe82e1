import type { Page } from '@playwright/test';
import type { Board } from '../../shared-types/board.ts';
import { areaOf } from '../../shared-types/contour/edges.ts';
import { type Corner, flattenContour, type Point, type Side } from '../../shared-types/geometry.ts';
import { placePhoto } from '../../shared-types/rules/photo-place.ts';
import { invertMap, mapPoint, type PlaneMap } from '../../shared-types/rules/plane-maps.ts';
import { matchByClicks } from './matching.ts';
import { expect, test } from './opened.ts';
import { addPictures, colourAt, corners, jpeg, paintedPhoto, spot } from './pictures.ts';
import { expectSame, savedTicket } from './saved-ticket.ts';
import { windowOf } from './window.ts';

/** An invented board of 60 x 40 mm: its foot bends inwards by 2 mm, a half-round notch of 6 mm at the left. */
const OUTLINE: Corner[] = [
  { x: 0, y: 0, bulge: (-2 * 2) / 60 },
  { x: 60, y: 0 },
  { x: 60, y: 40 },
  { x: 0, y: 40 },
  { x: 0, y: 26, bulge: -1 },
  { x: 0, y: 14 },
];
const WINDOW: Corner[] = [
  { x: 48, y: 6 },
  { x: 56, y: 6 },
  { x: 56, y: 10 },
  { x: 48, y: 10 },
];
const HOLE = { x: 4, y: 36, diameter: 3.2 };

/** What is typed, how often it is turned by the key, where it is put; half millimetres, so that the grid meets them. */
type Drawn = { typed: string; right?: number; side: Side; refdes: string[]; at: Point[]; lengthMm: number };
const row = (count: number, x: number, y: number, dx: number, dy: number): Point[] =>
  Array.from({ length: count }, (_, index) => ({ x: x + index * dx, y: y + index * dy }));
const PARTS: Drawn[] = [
  { typed: 'u1 bga 13x13 0.8', side: 'top', refdes: ['U1'], at: [{ x: 26, y: 22 }], lengthMm: 13 },
  { typed: 'u2 soic-8', right: 1, side: 'top', refdes: ['U2'], at: [{ x: 47.5, y: 26 }], lengthMm: 4.9 },
  { typed: 'r1 0603', side: 'top', refdes: ['R1', 'R2', 'R3'], at: row(3, 42, 36, 3, 0), lengthMm: 1.6 },
  { typed: 'd1 sma', right: 2, side: 'top', refdes: ['D1', 'D2'], at: row(2, 12, 7, 7, 0), lengthMm: 4.3 },
  { typed: 'c31 0805', side: 'bottom', refdes: ['C31', 'C32', 'C33', 'C34'], at: row(4, 45, 15, 0, 4), lengthMm: 2 },
  { typed: 'r21 0402', right: 3, side: 'bottom', refdes: ['R21', 'R22', 'R23'], at: row(3, 9, 33, 2, 0), lengthMm: 1 },
];
const RING = 16;

/** The board seen by a camera that leans: photo pixels (1200 x 900) to mm. */
const VIEW: PlaneMap = [0.058, 0.005, -5, 0.002, -0.06, 47, -3e-6, 8e-5, 1];
const onPhoto = (at: Point) => mapPoint(invertMap(VIEW) as PlaneMap, at);
/** A red mark on the board that no drawn part covers. */
const MARK = { x: 54, y: 33 };

const photoOfBoard = (page: Page) =>
  paintedPhoto(page, [
    { colour: '#205030', corners: flattenContour(OUTLINE).map(onPhoto) },
    { colour: '#777777', corners: WINDOW.map(onPhoto) },
    { colour: '#777777', corners: spot(HOLE, HOLE.diameter / 2).map(onPhoto) },
    { colour: '#ff0000', corners: spot(MARK, 1).map(onPhoto) },
  ]);

async function drawOutline(page: Page): Promise<void> {
  const w = windowOf(page);
  const tool = w.section('Draw and change');
  await page.keyboard.press('e');
  await tool.getByRole('radio', { name: 'Polygon' }).click();
  await w.fitAll();
  const toPage = await w.lieOfBoard();
  const click = async (x: number, y: number) => {
    const at = toPage({ x, y });
    await page.mouse.move(at.x + 3, at.y + 3);
    await page.mouse.click(at.x, at.y);
  };
  await click(0, 0);
  await page.keyboard.press('a');
  for (const [x, y] of [
    [60, 0],
    [30, 2],
  ])
    await click(x, y);
  await page.keyboard.press('a');
  for (const [x, y] of [
    [60, 40],
    [0, 40],
    [0, 26],
  ])
    await click(x, y);
  await page.keyboard.press('a');
  await click(0, 14);
  await click(6, 20);
  await page.keyboard.press('Enter');
  await expect(tool.getByRole('radio', { name: 'Cutout' })).toBeChecked();
  await tool.getByRole('radio', { name: 'Rectangle' }).click();
  await w.drag(toPage(WINDOW[0]), toPage(WINDOW[2]));
  await tool.getByRole('radio', { name: 'Hole' }).click();
  await click(HOLE.x, HOLE.y);
  await page.keyboard.press('Escape');
  await page.keyboard.press('Escape');
}

async function placeParts(page: Page): Promise<void> {
  const w = windowOf(page);
  const grid = w.section('Place parts').getByRole('textbox', { name: 'Grid' });
  await grid.fill('0.5');
  await grid.press('Enter');
  let side: Side = 'top';
  for (const drawn of PARTS) {
    await page.keyboard.press('a');
    await expect(w.section('Place parts').getByRole('combobox')).toBeFocused();
    await page.keyboard.type(drawn.typed);
    await page.keyboard.press('Enter');
    await expect(w.canvas.locator('.hm-canvas')).toBeFocused();
    if (drawn.side !== side) await page.keyboard.press('o');
    side = drawn.side;
    for (let turn = 0; turn < (drawn.right ?? 0); turn++) await page.keyboard.press('.');
    const toPage = await w.lieOfBoard();
    for (const at of drawn.at) {
      const there = toPage(at);
      await page.mouse.click(there.x, there.y);
    }
    for (let turn = 0; turn < (drawn.right ?? 0); turn++) await page.keyboard.press(',');
  }
  await page.keyboard.press('Escape');
}

async function ringRoundTheArray(page: Page): Promise<void> {
  const w = windowOf(page);
  await page.keyboard.press('Escape');
  await w.find('U1');
  await w.canvas.locator('.hm-canvas').focus();
  await page.keyboard.press('Shift+R');
  const sheet = page.getByRole('dialog', { name: 'Ring round U1' });
  await sheet.getByRole('combobox', { name: 'Package' }).fill('c1 0402');
  await page.keyboard.press('Enter');
  await sheet.getByRole('button', { name: `Place ${RING} parts` }).click();
}

/** Everything that was drawn is in the board, where it was drawn. */
function expectDrawn(board: Board): void {
  expectSame(board.outline, OUTLINE);
  expect(board.cutouts).toHaveLength(2);
  expectSame(board.cutouts[0], WINDOW);
  expect(areaOf(board.cutouts[1])).toBeCloseTo((Math.PI * HOLE.diameter ** 2) / 4, 6);
  const [west, east] = board.cutouts[1];
  expect({ x: (west.x + east.x) / 2, y: (west.y + east.y) / 2 }).toEqual({ x: HOLE.x, y: HOLE.y });
  const named = new Map(board.parts.map((part) => [part.refdes, part]));
  for (const { refdes, at, side, right = 0, lengthMm } of PARTS)
    for (const [index, name] of refdes.entries()) {
      // A quarter to the right as seen: on the bottom, seen from below, it is one to the left on the board.
      const turn = (side === 'top' ? 360 - 90 * right : 90 * right) % 360;
      expect(named.get(name) ?? {}, name).toMatchObject({ side, ...at[index], turn, package: { lengthMm } });
    }
  const ring = Array.from({ length: RING }, (_, index) => named.get(`C${index + 1}`));
  for (const part of ring) {
    // The default gap is 1 mm, the parts stand across: their middles lie 6.5 + 1 + 0.5 mm from the array's middle.
    const off = Math.max(Math.abs((part?.x ?? 0) - 26), Math.abs((part?.y ?? 0) - 22));
    expect(off).toBeCloseTo(8, 6);
  }
  expect(board.parts).toHaveLength(RING + PARTS.flatMap(({ refdes }) => refdes).length);
}

test('60 x 40 mm with arcs, two cutouts and 30 parts over a photo that is aligned, saved, reopened, compared', async ({
  page,
  door,
  w,
}) => {
  await w.drawBoard('Drawn over its photo', 60, 40);

  await test.step('the photo, aligned by its corners', async () => {
    await w.stage('photo');
    await addPictures(page, [jpeg('bench.jpg', await photoOfBoard(page))]);
    await expect(w.section('Match points')).toContainText('Two pairs settle');
    await matchByClicks(
      page,
      door.shelf,
      corners(60, 40).map((board) => ({ photo: onPhoto(board), board })),
    );
    await expect(w.section('Match points')).toContainText('Photo taken at an angle.');
  });
  await test.step('the outline with its arcs, the cutouts', () => drawOutline(page));
  await test.step('the parts on both sides', () => placeParts(page));
  await test.step('the ring', () => ringRoundTheArray(page));

  const before = await savedTicket(page, door.shelf);
  await test.step('the file holds what was drawn', () => {
    expectDrawn(before.document.board);
    expect(before.document.board.parts).toHaveLength(30);
    const [photo] = before.document.board.photos;
    expect(photo.pairs.map(({ board }) => board)).toEqual(corners(60, 40));
    const { toBoard } = placePhoto(photo, { minX: 0, minY: 0, maxX: 60, maxY: 40 });
    for (const at of [MARK, HOLE, { x: 30, y: 20 }]) {
      const there = mapPoint(toBoard, onPhoto(at));
      expect(Math.hypot(there.x - at.x, there.y - at.y)).toBeLessThan(0.3);
    }
  });

  await test.step('reopened, it is the same, on the screen and in the file', async () => {
    await w.openAgain();
    await w.stage('board');
    await expect(w.section('Board').first()).toContainText('60 mm × 40 mm');
    await expect(page.locator('.tray-line')).toContainText('30 parts');
    await w.stage('photo');
    await expect(w.section('Match points')).toContainText('Photo taken at an angle.');
    await page.getByRole('slider', { name: 'Opacity' }).fill('100');
    const toPage = await w.lieOfBoard();
    await expect.poll(async () => (await colourAt(page, toPage(MARK)))[0]).toBeGreaterThan(180);
    const { board, plan } = (await savedTicket(page, door.shelf)).document;
    expectDrawn(board);
    expect({ board, plan }).toEqual({
      ...before.document,
      board: { ...before.document.board, photos: [{ ...before.document.board.photos[0], opacity: 1 }] },
    });
  });
});
