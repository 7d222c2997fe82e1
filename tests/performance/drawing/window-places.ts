import type { Locator, Page } from '@playwright/test';
import type { Point } from '../../../shared-types/geometry.ts';

/** Middle of an element on the page, and how large it is to aim at. */
export async function aimAt(target: Locator): Promise<{ at: Point; sizePx: number }> {
  await target.scrollIntoViewIfNeeded();
  const box = await target.boundingBox();
  if (!box) throw new Error(`nothing to aim at: ${target}`);
  return { at: { x: box.x + box.width / 2, y: box.y + box.height / 2 }, sizePx: Math.min(box.width, box.height) };
}

/**
 * The way from board mm to the page, learnt as a user could: from what the status line says under the pointer. Its tenths of a
 * millimetre are evened out over many places.
 */
export async function lieOfBoard(page: Page): Promise<{ toPage: (at: Point) => Point; pxPerMm: number }> {
  const box = await page.locator('.canvas-host').boundingBox();
  if (!box) throw new Error('no canvas');
  const read: { screen: Point; board: Point }[] = [];
  for (let step = 0; step < 36; step++) {
    const share = 0.15 + (0.7 * step) / 35;
    const screen = { x: Math.round(box.x + share * box.width), y: Math.round(box.y + (1 - share) * box.height) };
    await page.mouse.move(screen.x, screen.y);
    const figures = (await page.locator('.status-line').textContent())?.match(/-?\d+\.\d/g) ?? [];
    // Off the board the line says no place.
    if (figures.length > 1) read.push({ screen, board: { x: Number(figures[0]), y: Number(figures[1]) } });
  }
  const x = lineThrough(read.map(({ board, screen }) => [board.x, screen.x]));
  const y = lineThrough(read.map(({ board, screen }) => [board.y, screen.y]));
  return {
    toPage: (at) => ({ x: x.offset + x.slope * at.x, y: y.offset + y.slope * at.y }),
    pxPerMm: Math.abs(x.slope),
  };
}

function lineThrough(pairs: readonly (readonly [number, number])[]): { slope: number; offset: number } {
  const mean = (index: 0 | 1) => pairs.reduce((sum, pair) => sum + pair[index], 0) / pairs.length;
  const [a, b] = [mean(0), mean(1)];
  const over = pairs.reduce((sum, pair) => sum + (pair[0] - a) * (pair[1] - b), 0);
  const slope = over / pairs.reduce((sum, pair) => sum + (pair[0] - a) ** 2, 0);
  return { slope, offset: b - slope * a };
}
