import type { Page } from '@playwright/test';
import type { Point } from '../../shared-types/geometry.ts';

export type Picture = { name: string; mimeType: string; buffer: Buffer };
export type Colour = [number, number, number];

export const jpeg = (name: string, buffer: Buffer): Picture => ({ name, mimeType: 'image/jpeg', buffer });

/** Size of the photos that are painted here, pixels. */
const PHOTO_PX = { width: 1200, height: 900 };

/** Paints filled shapes (photo pixels) on a grey bench and encodes them as JPEG, both in the browser. */
export async function paintedPhoto(page: Page, shapes: { colour: string; corners: Point[] }[]): Promise<Buffer> {
  const encoded = await page.evaluate(
    async ({ painted, size }) => {
      const canvas = new OffscreenCanvas(size.width, size.height);
      const context = canvas.getContext('2d');
      if (!context) throw new Error('no canvas');
      context.fillStyle = '#777777';
      context.fillRect(0, 0, size.width, size.height);
      for (const { colour, corners } of painted) {
        context.fillStyle = colour;
        context.beginPath();
        for (const { x, y } of corners) context.lineTo(x, y);
        context.fill();
      }
      const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.95 });
      return [...new Uint8Array(await blob.arrayBuffer())];
    },
    { painted: shapes, size: PHOTO_PX },
  );
  return Buffer.from(encoded);
}

/** A round spot of pixels. */
export const spot = ({ x, y }: Point, radius: number): Point[] =>
  Array.from({ length: 24 }, (_, index) => {
    const angle = (index * Math.PI) / 12;
    return { x: x + radius * Math.cos(angle), y: y + radius * Math.sin(angle) };
  });

/** Corners of a rectangle that begins at 0, 0. */
export const corners = (x: number, y: number): Point[] => [
  { x: 0, y: 0 },
  { x, y: 0 },
  { x, y },
  { x: 0, y },
];

export async function addPictures(page: Page, pictures: Picture[]): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Add photos' }).click();
  await (await chooser).setFiles(pictures);
}

/** The colour of one pixel of the page. */
export async function colourAt(page: Page, at: Point): Promise<Colour> {
  const clip = { x: Math.round(at.x), y: Math.round(at.y), width: 1, height: 1 };
  const shot = (await page.screenshot({ clip })).toString('base64');
  return page.evaluate(async (text) => {
    const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
    const bitmap = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const context = new OffscreenCanvas(1, 1).getContext('2d');
    context?.drawImage(bitmap, 0, 0);
    const [red, green, blue] = context?.getImageData(0, 0, 1, 1).data ?? [];
    return [red, green, blue] as [number, number, number];
  }, shot);
}
