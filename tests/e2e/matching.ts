import type { Page } from '@playwright/test';
import { boxOfContour } from '../../shared-types/contour/edges.ts';
import type { Point } from '../../shared-types/geometry.ts';
import { placePhoto } from '../../shared-types/rules/photo-place.ts';
import { mapPoint } from '../../shared-types/rules/plane-maps.ts';
import { expect } from './door.ts';
import { savedTicket } from './saved-ticket.ts';
import { windowOf } from './window.ts';

/** Matches the one photo of the ticket by clicks: a point of the photo, then its place on the drawing, a little missed. */
export async function matchByClicks(page: Page, shelf: string, pairs: { photo: Point; board: Point }[]): Promise<void> {
  const w = windowOf(page);
  const toPage = await w.lieOfBoard();
  await page.keyboard.press('j');
  for (const [index, { photo, board }] of pairs.entries()) {
    // Where the point lies at this moment is where the photo's present map puts it.
    const { photos, outline } = (await savedTicket(page, shelf)).document.board;
    const lies = toPage(mapPoint(placePhoto(photos[0], boxOfContour(outline)).toBoard, photo));
    await page.mouse.click(lies.x, lies.y);
    const wanted = toPage(board);
    await page.mouse.click(wanted.x + 2, wanted.y - 2);
    await expect(w.section('Match points').getByRole('list', { name: 'Pairs of points' })).toContainText(
      `${index + 1}`,
    );
  }
  await page.keyboard.press('j');
}
