import type { Page } from '@playwright/test';
import { areaOf } from '../../shared-types/contour/edges.ts';
import type { Corner } from '../../shared-types/geometry.ts';
import { expect, test } from './opened.ts';
import { expectSame, savedTicket } from './saved-ticket.ts';

/** 60 x 40 mm with a half-round nose at the right and a bent foot, a slot and a hole. */
const NOSE = 1;
const OUTLINE: Corner[] = [
  { x: 0, y: 0, bulge: -Math.tan((20 * Math.PI) / 180 / 4) },
  { x: 60, y: 0 },
  { x: 60, y: 12, bulge: NOSE },
  { x: 60, y: 28 },
  { x: 60, y: 40 },
  { x: 0, y: 40 },
];

const type = async (page: Page, ...keys: string[]): Promise<void> => {
  for (const key of keys) await (/^[\d.-]+$/.test(key) ? page.keyboard.type(key) : page.keyboard.press(key));
};

test('a board with two arcs and two cutouts is drawn by keyboard only, undone, redone, saved, reopened', async ({
  page,
  door,
  w,
}) => {
  await w.drawBoard('Drawn by keys', 60, 40);
  const modes = page.getByRole('radiogroup', { name: 'What to draw' });
  const mode = async (name: string) => {
    await modes.getByRole('radio', { name }).focus();
    await page.keyboard.press('Space');
    await expect(page.locator('.hm-canvas')).toBeFocused();
  };
  await page.keyboard.press('e');
  await expect(page.locator('.hm-canvas')).toBeFocused();
  await mode('Polygon');
  await type(page, '0', 'Tab', '0', 'Enter');
  await type(page, 'a', '60', 'Tab', '0', 'Enter', 'Tab', '-20', 'Enter', 'a');
  await type(page, '12', 'Tab', '90', 'Enter');
  await type(page, 'a', '16', 'Tab', '90', 'Enter', 'Tab', '180', 'Enter', 'a');
  await type(page, '12', 'Tab', '90', 'Enter', '60', 'Tab', '180', 'Enter', 'Enter');
  await mode('Hole');
  await type(page, '5', 'Tab', '35', 'Tab', '3.2', 'Enter');
  await mode('Slot');
  await type(page, '20', 'Tab', '20', 'Enter', '15', 'Tab', '0', 'Tab', '4', 'Enter');
  const section = page.getByRole('region', { name: 'Draw and change' });
  await mode('Change');
  await expect(section.getByRole('list', { name: 'Shapes' }).getByRole('listitem')).toHaveCount(3);
  for (let step = 0; step < 3; step++) await page.keyboard.press('Control+z');
  await expect(section.getByRole('list', { name: 'Shapes' }).getByRole('listitem')).toHaveCount(1);
  for (let step = 0; step < 3; step++) await page.keyboard.press('Control+y');
  await expect(section.getByRole('list', { name: 'Shapes' }).getByRole('listitem')).toHaveCount(3);
  const saved = (await savedTicket(page, door.shelf)).document.board;
  expectSame(saved.outline, OUTLINE);
  expect(areaOf(saved.cutouts[0])).toBeCloseTo(Math.PI * 1.6 ** 2, 6);
  expect(areaOf(saved.cutouts[1])).toBeCloseTo(60 + Math.PI * 4, 6);

  await w.openAgain();
  await page.keyboard.press('1');
  await page.keyboard.press('e');
  await section.getByRole('button', { name: 'Choose outline' }).click();
  const table = section.getByRole('table', { name: 'Corners of outline' });
  await expect(table.getByRole('textbox', { name: 'Edge 3: Radius' })).toHaveValue('8');
  // The table changes it too: a length in the table, and back by undo.
  await table.getByRole('textbox', { name: 'Edge 5: Length' }).fill('62');
  await page.keyboard.press('Enter');
  await expect(table.getByRole('textbox', { name: 'Corner 6: x' })).toHaveValue('-2');
  await page.keyboard.press('Control+z');
  await expect(table.getByRole('textbox', { name: 'Corner 6: x' })).toHaveValue('0');
  expectSame((await savedTicket(page, door.shelf)).document.board.outline, OUTLINE);
});

test('the same kind of board by mouse: corners bent and moved, cutouts drawn, a crossing refused in words', async ({
  page,
  door,
  w,
}) => {
  await w.drawBoard('Drawn by mouse', 60, 40);
  const section = page.getByRole('region', { name: 'Draw and change' });
  await page.getByRole('radio', { name: 'Draw the outline' }).click();
  const box = await page.locator('.hm-canvas').boundingBox();
  if (!box) throw new Error('the canvas has no place');
  // The board is fitted: 60 x 40 mm between the margins of the view.
  const zoom = Math.min((box.width - 64) / 60, (box.height - 140) / 40);
  const onScreen = (x: number, y: number) => ({
    x: box.x + box.width / 2 + (x - 30) * zoom,
    y: box.y + 44 + (box.height - 140) / 2 - (y - 20) * zoom,
  });
  const click = async (x: number, y: number) => {
    const at = onScreen(x, y);
    await page.mouse.move(at.x, at.y, { steps: 3 });
    await page.mouse.click(at.x, at.y);
  };
  await click(30, 0);
  await w.drag(onScreen(30, 0), onScreen(30, -3));
  await click(60, 30);
  await w.drag(onScreen(60, 20), onScreen(66, 20));
  const table = section.getByRole('table', { name: 'Corners of outline' });
  await expect(table.getByRole('textbox', { name: 'Edge 2: Radius' })).not.toHaveValue('0');
  await section.getByRole('radio', { name: 'Rectangle' }).click();
  await section.getByRole('radio', { name: 'Cutout' }).click();
  await w.drag(onScreen(10, 10), onScreen(20, 16));
  await section.getByRole('radio', { name: 'Hole' }).click();
  await click(5, 35);
  await click(0.5, 20);
  await expect(section.getByRole('alert')).toContainText('Refused: cutout 3 crosses the outline at x 0, y');
  await page.keyboard.press('Escape');
  await expect(section.getByRole('list', { name: 'Shapes' }).getByRole('listitem')).toHaveCount(3);
  for (let step = 0; step < 4; step++) await page.keyboard.press('Control+z');
  for (let step = 0; step < 4; step++) await page.keyboard.press('Control+y');
  const { outline, cutouts } = (await savedTicket(page, door.shelf)).document.board;
  expect(outline.filter((corner) => corner.bulge)).toHaveLength(2);
  expectSame(cutouts[0], [
    { x: 10, y: 10 },
    { x: 20, y: 10 },
    { x: 20, y: 16 },
    { x: 10, y: 16 },
  ]);
  expect(areaOf(cutouts[1])).toBeCloseTo(Math.PI * 1.6 ** 2, 6);
});
