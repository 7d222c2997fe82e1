import type { Corner, Point } from '../../../shared-types/geometry.ts';
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

/** A bay in the left or right edge, drawn where it was measured: two corners and a bend. */
export async function drawBay(
  { page, hands, press, lie, quiet, bench }: Technician,
  from: Corner,
  to: Point,
  top: Point,
) {
  hands.begin('notch');
  hands.think();
  await press(page.getByRole('radio', { name: 'Change' }));
  const { toPage } = await lie();
  const corner = async (at: Point, inside: number) => {
    hands.outside({ keys: 1, seconds: 0.28 });
    await page.keyboard.down('Control');
    await hands.drag(toPage({ x: at.x, y: at.y + inside }), toPage(at), 8);
    await page.keyboard.up('Control');
    await quiet();
  };
  await corner(from, -1);
  await corner(to, 1);
  hands.think();
  await hands.drag(toPage({ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }), toPage(top), 8);
  await quiet();
  await bench.shot('03-notch');
  for (let step = 0; step < 3; step++) await hands.press('Escape');
}
