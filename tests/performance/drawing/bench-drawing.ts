import type { Page } from '@playwright/test';
import type { Board } from '../../../shared-types/board.ts';
import type { Side } from '../../../shared-types/geometry.ts';
import { savedTicket } from '../../e2e/saved-ticket.ts';
import { cameraOver, type Stand } from './camera.ts';
import { drawBay, drawFrame } from './draw-frame.ts';
import { drawParts, emptyHand } from './draw-parts.ts';
import { layPhotos } from './draw-photos.ts';
import type { Hands } from './hands.ts';
import { paintPhoto } from './paint-photo.ts';
import { shapesOf } from './photo-shapes.ts';
import { type Bench, technicianAt } from './technician.ts';

/** The sample that is drawn anew. */
export const BENCH_BOARD = 'tide-gauge-logger';

/** A telephone held by hand over each side. */
const STANDS: Record<Side, Stand> = {
  top: { distanceMm: 320, turnDeg: 4, leanXDeg: 6, leanYDeg: -4, shareOfWidth: 0.82 },
  bottom: { distanceMm: 320, turnDeg: -3, leanXDeg: 5, leanYDeg: 3, shareOfWidth: 0.82 },
};

/** What ruler and calliper say, mm. */
const HOLES = [
  [4, 4],
  [66, 4],
  [66, 41],
  [4, 41],
].map(([x, y]) => ({ x, y, diameter: 3.2 }));
const FRAME = { name: 'Drawn from its pictures', lengthMm: 70, widthMm: 45, cornerMm: 4, holes: HOLES };

/** Pictures of both sides, and the eye that finds a place of the board in them. */
export async function picturesOf(page: Page, truth: Board): Promise<Pick<Bench, 'photos' | 'seen'>> {
  const seen = { top: cameraOver(truth, 'top', STANDS.top), bottom: cameraOver(truth, 'bottom', STANDS.bottom) };
  const paint = (side: Side) => paintPhoto(page, shapesOf(truth, side, seen[side]));
  return { seen, photos: { top: await paint('top'), bottom: await paint('bottom') } };
}

/** Draws the whole board and gives it as it was saved. */
export async function drawBoard(page: Page, hands: Hands, bench: Bench): Promise<Board> {
  const at = technicianAt(page, hands, bench);
  await drawFrame(at, FRAME);
  await drawBay(at, { x: 0, y: 10, diameter: 4 });
  await layPhotos(at, HOLES);
  const hand = emptyHand();
  await drawParts(at, 'top', hand);
  await hands.press('f');
  await drawParts(at, 'bottom', hand);
  await page.waitForTimeout(500);
  return (await savedTicket(page, bench.shelf)).document.board;
}
