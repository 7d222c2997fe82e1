import type { Page } from '@playwright/test';
import { PHOTO_PX } from './camera.ts';
import type { PaintedShape } from './photo-shapes.ts';

/** Paints shapes on a bench, a little out of focus, with grain, and encodes them as JPEG; the browser does it. */
export async function paintPhoto(page: Page, shapes: readonly PaintedShape[]): Promise<Buffer> {
  const text = await page.evaluate(paint, { shapes, size: PHOTO_PX });
  return Buffer.from(text, 'base64');
}

/** Runs in the page: it may use nothing of this file. */
async function paint({ shapes, size }: { shapes: readonly PaintedShape[]; size: typeof PHOTO_PX }): Promise<string> {
  const canvas = new OffscreenCanvas(size.width, size.height);
  const context = canvas.getContext('2d');
  if (!context) throw new Error('no canvas');
  const light = context.createRadialGradient(900, 500, 100, 1200, 900, 1700);
  light.addColorStop(0, '#8b867c');
  light.addColorStop(1, '#5d5952');
  context.fillStyle = light;
  context.fillRect(0, 0, size.width, size.height);
  for (const shape of shapes) {
    context.fillStyle = shape.colour;
    if (shape.kind === 'fill') {
      context.beginPath();
      for (const { x, y } of shape.corners) context.lineTo(x, y);
      context.fill();
      continue;
    }
    const { along, up, at, mm } = shape;
    context.save();
    context.setTransform(along.x / 100, along.y / 100, -up.x / 100, -up.y / 100, at.x, at.y);
    context.font = `${100 * mm}px sans-serif`;
    context.textAlign = 'center';
    context.fillText(shape.text, 0, 0);
    context.restore();
  }
  const soft = new OffscreenCanvas(size.width, size.height);
  const out = soft.getContext('2d');
  if (!out) throw new Error('no canvas');
  out.filter = 'blur(1.1px)';
  out.drawImage(canvas, 0, 0);
  const grain = out.getImageData(0, 0, size.width, size.height);
  let seed = 11;
  for (let index = 0; index < grain.data.length; index++) {
    if (index % 4 === 3) continue;
    seed = (seed * 1664525 + 1013904223) >>> 0;
    grain.data[index] += (seed >>> 28) - 8;
  }
  out.putImageData(grain, 0, 0);
  const blob = await soft.convertToBlob({ type: 'image/jpeg', quality: 0.88 });
  const bytes = new Uint8Array(await blob.arrayBuffer());
  let letters = '';
  for (let from = 0; from < bytes.length; from += 32768)
    letters += String.fromCharCode(...bytes.subarray(from, from + 32768));
  return btoa(letters);
}
