import { createHash } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { writeBoard } from '../../main/document/open-document.ts';
import { type Board, emptyBoard } from '../../shared-types/board.ts';
import type { Point } from '../../shared-types/geometry.ts';
import { placePhoto } from '../../shared-types/rules/photo-place.ts';
import { invertMap, mapPoint, type PlaneMap } from '../../shared-types/rules/plane-maps.ts';
import { exifBlock, greyTiffWith, jpegWithExif, pngWith } from '../support/pictures.ts';
import { smallPart } from '../support/shell/small-ticket.ts';
import { expect, test } from './door.ts';
import { matchByClicks } from './matching.ts';
import { addPictures, type Colour, colourAt, corners, jpeg, type Picture, paintedPhoto, spot } from './pictures.ts';
import { savedTicket } from './saved-ticket.ts';
import { complaintsOf, windowOf } from './window.ts';

/** Parts of an invented board of 60 x 40 mm, spread so that any four settle a view. */
const PLACES: [string, number, number][] = [
  ['U1', 10, 8],
  ['U2', 50, 9],
  ['U3', 48, 33],
  ['U4', 12, 31],
  ['U5', 30, 20],
  ['U6', 22, 12],
];
const drawnBoard = (): Board => ({
  ...emptyBoard('Invented photo board', 60, 40),
  parts: PLACES.map(([refdes, x, y]) => smallPart(refdes, x, y, 4, 3)),
});

/** The board seen by a camera that leans: photo pixels (1200 x 900) to mm. */
const VIEW: PlaneMap = [0.055, 0.006, -4, 0.003, -0.058, 46, 4e-6, 9e-5, 1];
const onPhoto = (at: Point) => mapPoint(invertMap(VIEW) as PlaneMap, at);

/** The picture of that view: a green board with a red spot where each part is. */
const leaningPhoto = (page: Page): Promise<Buffer> =>
  paintedPhoto(page, [
    { colour: '#205030', corners: corners(60, 40).map(onPhoto) },
    ...PLACES.map(([, x, y]) => ({ colour: '#ff0000', corners: spot(onPhoto({ x, y }), 14) })),
  ]);

async function openBoard(page: Page, address: string): Promise<void> {
  const file = test.info().outputPath('photo-board.board.json');
  writeFileSync(file, writeBoard(drawnBoard()));
  await page.goto(address);
  await windowOf(page).importFile(file);
}

test('a leaning photo is matched by four pairs, saved, and is the same when opened again', async ({ page, door }) => {
  const complaints = complaintsOf(page);
  const w = windowOf(page);
  await openBoard(page, door.address());
  const bytes = await leaningPhoto(page);
  await w.stage('photo');
  await addPictures(page, [jpeg('bench.jpg', bytes)]);
  const matching = w.section('Match points');
  await expect(matching).toContainText('Laid over the outline by guess.');
  await expect(matching).toContainText('Two pairs settle');

  await test.step('four clicks in the photo, each with its place on the drawing', async () => {
    await matchByClicks(
      page,
      door.shelf,
      PLACES.slice(0, 4).map(([, x, y]) => ({ photo: onPhoto({ x, y }), board: { x, y } })),
    );
    await expect(matching).toContainText('middle of U4');
    await expect(matching).toContainText('Photo taken at an angle.');
  });

  await test.step('parts that were not matched lie on their spots in the picture', async () => {
    await page.getByRole('slider', { name: 'Opacity' }).fill('100');
    const toPage = await w.lieOfBoard();
    for (const [, x, y] of PLACES.slice(4)) {
      // Beside the designator, inside the spot.
      const [red, green] = await colourAt(page, toPage({ x: x - 0.1, y: y + 0.55 }));
      expect(red).toBeGreaterThan(180);
      expect(green).toBeLessThan(90);
    }
    await page.keyboard.down('u');
    const [red, green] = await colourAt(page, toPage({ x: 30.1, y: 20.55 }));
    expect(Math.abs(red - green)).toBeLessThan(40);
    await page.keyboard.up('u');
  });

  const before = await savedTicket(page, door.shelf);
  const [photo] = before.document.board.photos;
  await test.step('the file holds the bytes as they came, and pairs that give the camera back', async () => {
    expect(photo).toMatchObject({ name: 'bench.jpg', widthPx: 1200, heightPx: 900, orientation: 1, opacity: 1 });
    expect(photo.sha256).toBe(createHash('sha256').update(bytes).digest('hex'));
    expect(Buffer.compare(before.photos.get(photo.sha256) ?? Buffer.alloc(0), bytes)).toBe(0);
    const { toBoard } = placePhoto(photo, { minX: 0, minY: 0, maxX: 60, maxY: 40 });
    for (const [refdes, x, y] of PLACES) {
      const there = mapPoint(toBoard, onPhoto({ x, y }));
      expect(Math.hypot(there.x - x, there.y - y), refdes).toBeLessThan(0.4);
    }
  });

  await test.step('closed and opened again', async () => {
    await w.openAgain();
    await w.stage('photo');
    await expect(w.section('Match points').getByRole('listitem')).toHaveCount(4);
    await expect(w.section('Photos of the top')).toContainText('1200 × 900 px');
    const after = await savedTicket(page, door.shelf);
    expect(after.document.board.photos).toEqual(before.document.board.photos);
    expect([...after.photos.keys()]).toEqual([...before.photos.keys()]);
  });
  expect(complaints).toEqual([]);
});

/** TIFF 6.0, section 8, tag Orientation: the edges at which the 0th row and the 0th column of the stored picture are seen. */
type Edge = 'top' | 'bottom' | 'left' | 'right';
const PUBLISHED: [row: Edge, column: Edge][] = [
  ['top', 'left'],
  ['top', 'right'],
  ['bottom', 'right'],
  ['bottom', 'left'],
  ['left', 'top'],
  ['right', 'top'],
  ['right', 'bottom'],
  ['left', 'bottom'],
];

/** An upright picture of 6 x 4 fields, no two alike, each 16 pixels wide. */
const [COLUMNS, ROWS, FIELD] = [6, 4, 16];
const fieldColour = (column: number, row: number): Colour => [
  40 + 38 * column,
  40 + 60 * row,
  (column + row) % 2 ? 200 : 60,
];

/** How a camera stores that picture under an orientation, by the words of the standard alone. */
function storedPicture(orientation: number) {
  const [rowEdge, columnEdge] = PUBLISHED[orientation - 1];
  const sideways = rowEdge === 'left' || rowEdge === 'right';
  const [width, height] = sideways ? [ROWS * FIELD, COLUMNS * FIELD] : [COLUMNS * FIELD, ROWS * FIELD];
  const from = (edge: Edge, step: number) =>
    edge === 'top' || edge === 'left' ? step : (edge === 'bottom' ? ROWS : COLUMNS) * FIELD - 1 - step;
  const pixelAt = (x: number, y: number): Colour => {
    const [seenX, seenY] = sideways ? [from(rowEdge, y), from(columnEdge, x)] : [from(columnEdge, x), from(rowEdge, y)];
    return fieldColour(Math.floor(seenX / FIELD), Math.floor(seenY / FIELD));
  };
  return { width, height, pixelAt };
}

/** A PNG turned into a JPEG by the browser. */
async function asJpeg(page: Page, png: Uint8Array): Promise<Uint8Array> {
  const encoded = await page.evaluate(async (text) => {
    const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
    const bitmap = await createImageBitmap(new Blob([bytes]));
    const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
    canvas.getContext('2d')?.drawImage(bitmap, 0, 0);
    const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 1 });
    return [...new Uint8Array(await blob.arrayBuffer())];
  }, Buffer.from(png).toString('base64'));
  return Uint8Array.from(encoded);
}

/** The colours in the middle of each field of a picture, as the browser decodes it. */
async function fieldsOf(page: Page, bytes: Uint8Array, type: string) {
  return page.evaluate(
    async ({ text, mediaType, columns, rows, field }) => {
      const data = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
      const bitmap = await createImageBitmap(new Blob([data], { type: mediaType }));
      const context = new OffscreenCanvas(bitmap.width, bitmap.height).getContext('2d');
      context?.drawImage(bitmap, 0, 0);
      const colours: number[][] = [];
      for (let row = 0; row < rows; row++)
        for (let column = 0; column < columns; column++) {
          const [x, y] = [(column + 0.5) * field, (row + 0.5) * field];
          colours.push([...(context?.getImageData(x, y, 1, 1).data ?? [])].slice(0, 3));
        }
      return { size: [bitmap.width, bitmap.height], colours };
    },
    { text: Buffer.from(bytes).toString('base64'), mediaType: type, columns: COLUMNS, rows: ROWS, field: FIELD },
  );
}

test('all eight orientations of JPEG and PNG, and a turned TIFF, give the same upright picture', async ({
  page,
  door,
}) => {
  test.setTimeout(180_000);
  await openBoard(page, door.address());
  await windowOf(page).stage('photo');
  const pictures: Picture[] = [];
  for (const orientation of [1, 2, 3, 4, 5, 6, 7, 8]) {
    const { width, height, pixelAt } = storedPicture(orientation);
    const exif = exifBlock(orientation, orientation % 2 === 0);
    const plain = await asJpeg(page, pngWith(width, height, null, pixelAt));
    pictures.push(jpeg(`${orientation}.jpg`, Buffer.from(jpegWithExif(plain, exif))));
    const png = Buffer.from(pngWith(width, height, exif, pixelAt));
    pictures.push({ name: `${orientation}.png`, mimeType: 'image/png', buffer: png });
  }
  const { width, height, pixelAt } = storedPicture(6);
  const grey = greyTiffWith(width, height, 6, (x, y) => pixelAt(x, y)[1]);
  pictures.push({ name: '6.tif', mimeType: 'image/tiff', buffer: Buffer.from(grey) });
  await addPictures(page, pictures);
  await expect(page.getByText('6.tif')).toBeVisible({ timeout: 60_000 });
  await expect(page.getByText(/^Reading/)).toHaveCount(0, { timeout: 60_000 });

  const ticket = await savedTicket(page, door.shelf);
  expect(ticket.document.board.photos.map(({ name }) => name)).toEqual(pictures.map(({ name }) => name));
  for (const photo of ticket.document.board.photos) {
    expect(photo, photo.name).toMatchObject({ orientation: Number(photo.name[0]), widthPx: 96, heightPx: 64 });
    const bytes = ticket.photos.get(photo.working.sha256) ?? new Uint8Array();
    const { size, colours } = await fieldsOf(page, bytes, photo.working.mediaType);
    expect(size, photo.name).toEqual([96, 64]);
    colours.forEach((colour, index) => {
      const wanted = fieldColour(index % COLUMNS, Math.floor(index / COLUMNS));
      const expected = photo.name === '6.tif' ? [wanted[1], wanted[1], wanted[1]] : wanted;
      for (const channel of [0, 1, 2])
        expect(Math.abs(colour[channel] - expected[channel]), `${photo.name}, field ${index}`).toBeLessThan(14);
    });
  }
});

/** A PNG that claims 400 megapixels: it must be refused before anything is decoded. */
function vastPng(): Buffer {
  const png = Buffer.from(pngWith(1, 1, null));
  png.writeUInt32BE(20_000, 16);
  png.writeUInt32BE(20_000, 20);
  return png;
}

test('files that are no usable photos are told once each, and change nothing', async ({ page, door }) => {
  await openBoard(page, door.address());
  await windowOf(page).stage('photo');
  const whole = await leaningPhoto(page);
  const alert = page.getByRole('alert');
  for (const [picture, said] of [
    [jpeg('cut.jpg', whole.subarray(0, whole.length / 2)), /cut\.jpg.*cut off or damaged/],
    [jpeg('notes.jpg', Buffer.from('not a picture')), /notes\.jpg.*no picture that can be used/],
    [jpeg('phone.heic', Buffer.from('\0\0\0\x18ftypheic\0\0\0\0mif1heic')), /phone\.heic.*HEIC.*JPEG/s],
    [{ name: 'vast.png', mimeType: 'image/png', buffer: vastPng() }, /vast\.png.*120 megapixels/],
  ] as const) {
    await addPictures(page, [picture]);
    await expect(alert).toContainText(said);
    await expect(alert).toHaveCount(1);
    await alert.getByRole('button', { name: 'Dismiss' }).click();
  }
  await expect(windowOf(page).section('Photos of the top').getByRole('listitem')).toHaveCount(0);
  expect((await savedTicket(page, door.shelf)).document.board.photos).toEqual([]);
});

test('a photo dropped on the window; without a drawing two points and their distance give its scale', async ({
  page,
  door,
}) => {
  const w = windowOf(page);
  await openBoard(page, door.address());
  const bytes = [...(await leaningPhoto(page))];
  await page.evaluate((data) => {
    const carried = new DataTransfer();
    carried.items.add(new File([new Uint8Array(data)], 'dropped.jpg', { type: 'image/jpeg' }));
    window.dispatchEvent(new DragEvent('drop', { dataTransfer: carried, bubbles: true, cancelable: true }));
  }, bytes);
  await expect(w.section('Photos of the top')).toContainText('dropped.jpg');
  await expect(w.section('Match points')).toBeVisible();
  await page.keyboard.press('j');
  const middle = await w.middle();
  for (const away of [-150, 150]) {
    await page.mouse.click(middle.x + away, middle.y - 20);
    await page.keyboard.press('Enter');
  }
  const distance = w.section('Match points').getByRole('textbox', { name: 'Distance of the two points' });
  await distance.fill('85.6');
  await distance.press('Enter');
  const [photo] = (await savedTicket(page, door.shelf)).document.board.photos;
  const [a, b] = photo.pairs;
  expect(Math.hypot(a.board.x - b.board.x, a.board.y - b.board.y)).toBeCloseTo(85.6, 2);
  await expect(w.section('Match points')).toContainText('Scale and turn.');
  await page.keyboard.press('Control+z');
  await expect(distance).not.toHaveValue('85.6');
});
