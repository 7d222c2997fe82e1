import type { Point } from '../../../shared-types/geometry.ts';
import type { Technician } from './technician.ts';

/** What a ruler and a calliper say of the bare board. */
export type Measured = {
  name: string;
  lengthMm: number;
  widthMm: number;
  cornerMm: number;
  holes: (Point & { diameter: number })[];
};

/** Outline and holes in figures. */
export async function drawFrame({ page, hands, press, bench }: Technician, board: Measured): Promise<void> {
  hands.begin('new board');
  hands.think();
  await press(page.getByRole('button', { name: 'Draw a board', exact: true }));
  const sheet = page.getByRole('dialog');
  await sheet.waitFor();
  await hands.type(board.name);
  for (const figure of [board.lengthMm, board.widthMm, board.cornerMm]) {
    await hands.press('Tab');
    hands.think();
    await hands.type(String(figure));
  }
  await hands.press('Enter');
  await page.locator('.hm-canvas canvas').first().waitFor();
  hands.begin('holes');
  hands.think();
  await hands.press('e');
  await press(page.getByRole('radio', { name: 'Hole' }));
  for (const [index, hole] of board.holes.entries()) {
    hands.think();
    await hands.type(String(hole.x));
    await hands.press('Tab');
    await hands.type(String(hole.y));
    if (board.holes[index - 1]?.diameter !== hole.diameter) {
      await hands.press('Tab');
      await hands.type(String(hole.diameter));
    }
    await hands.press('Enter');
  }
  await bench.shot('02-holes');
}

/** A half-round bay in an edge: a hole over it, in figures, with Shift. The tool for holes is at hand still. */
export async function drawBay({ hands, bench }: Technician, bay: Point & { diameter: number }): Promise<void> {
  hands.begin('bay');
  hands.think();
  for (const figure of [bay.x, bay.y, bay.diameter]) {
    await hands.type(String(figure));
    if (figure !== bay.diameter) await hands.press('Tab');
  }
  await hands.press('Shift+Enter');
  await bench.shot('03-bay');
  for (let step = 0; step < 3; step++) await hands.press('Escape');
}
