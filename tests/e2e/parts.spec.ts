import type { Page } from '@playwright/test';
import { expect, test } from './opened.ts';
import { savedTicket } from './saved-ticket.ts';

/** Presses keys and counts them. */
function keysOf(page: Page) {
  let count = 0;
  return {
    count: () => count,
    async type(text: string) {
      count += text.length;
      await page.keyboard.type(text);
    },
    async press(key: string) {
      count += 1;
      await page.keyboard.press(key);
    },
  };
}

test('thirty parts by keyboard and mouse, a ring and an array, both sides, saved and the same again', async ({
  page,
  door,
  w,
}, info) => {
  await w.drawBoard('Thirty parts', 100, 80);
  const keys = keysOf(page);
  const middle = await w.middle();
  const click = (dx: number, dy: number) => page.mouse.click(middle.x + dx, middle.y + dy);
  const started = Date.now();

  await test.step('an array part and chips beside it, placed by clicks', async () => {
    await keys.press('a');
    await keys.type('bga 17x17 0.8');
    await keys.press('Enter');
    await click(0, 0);
    await keys.press('a');
    await keys.type('r10 0402');
    await keys.press('Enter');
    for (const dx of [-250, -235, -220, -205]) await click(dx, -120);
    await keys.press('.');
    await click(-180, -120);
    await keys.press('Escape');
  });
  const section = w.section('Place parts');
  await test.step('a box far down in the panel takes the focus, and the window stays where it is', async () => {
    const before = await w.canvas.boundingBox();
    await section.getByRole('checkbox', { name: 'Snap to rows' }).focus();
    expect(await w.canvas.boundingBox()).toEqual(before);
  });
  await expect(section.getByRole('textbox', { name: 'Designator' })).toHaveValue('R15');

  await test.step('a taken designator is refused and the next one offered', async () => {
    await section.getByRole('textbox', { name: 'Designator' }).fill('R12');
    await page.keyboard.press('Enter');
    await expect(section.getByRole('alert')).toContainText('R15 is the next free one');
  });

  await test.step('a ring round the array part, on both sides', async () => {
    await click(0, 0);
    await keys.press('Shift+R');
    const sheet = page.getByRole('dialog', { name: 'Ring round U1' });
    await sheet.getByRole('combobox', { name: 'Package' }).fill('c 0402');
    await page.keyboard.press('Enter');
    await sheet.getByRole('textbox', { name: 'Parts on each side' }).fill('8');
    await page.keyboard.press('Tab');
    await sheet.getByRole('radio', { name: 'Both' }).click();
    await sheet.getByRole('button', { name: 'Place 16 parts' }).click();
    await expect(w.section('Selection').getByRole('heading', { level: 2 })).toContainText('16 parts');
    await keys.press('Escape');
  });

  await test.step('a can beside it by two corners, an inductor by keys alone, an array of it below', async () => {
    await keys.press('o');
    await keys.press('a');
    await keys.type('l7 inductor 4x4');
    await keys.press('Enter');
    for (const key of ['Shift+ArrowLeft', 'Shift+ArrowLeft', 'ArrowUp']) await keys.press(key);
    await keys.press('Enter');
    await keys.press('Escape');
    await w.find('L7');
    await w.canvas.locator('.hm-canvas').focus();
    await keys.press('Shift+G');
    const sheet = page.getByRole('dialog', { name: 'Array of L7' });
    await sheet.getByRole('textbox', { name: 'Rows' }).fill('2');
    await page.keyboard.press('Tab');
    await sheet.getByRole('button', { name: 'Place 7 parts' }).click();
    await keys.press('Escape');
  });
  await expect(page.locator('.tray-line')).toContainText('30 parts');
  const seconds = (Date.now() - started) / 1000;
  info.annotations.push({ type: 'stopwatch', description: `30 parts: ${seconds.toFixed(1)} s, ${keys.count()} keys` });
  console.log(`30 parts: ${seconds.toFixed(1)} s of the script, ${keys.count()} key presses`);

  await test.step('one step back for the array, and again', async () => {
    await page.keyboard.press('Control+z');
    await expect(page.locator('.tray-line')).toContainText('23 parts');
    await page.keyboard.press('Control+y');
    await expect(page.locator('.tray-line')).toContainText('30 parts');
  });

  await test.step('saved, reopened, the same', async () => {
    const { board } = (await savedTicket(page, door.shelf)).document;
    const names = board.parts.map((part) => part.refdes);
    expect(new Set(names).size).toBe(30);
    expect(board.parts.filter((part) => part.side === 'bottom')).toHaveLength(16);
    await w.openAgain();
    await w.stage('board');
    await expect(w.section('Board').first()).toContainText('14 top, 16 bottom');
    await w.section('Board').first().getByRole('textbox', { name: 'Revision' }).fill('B');
    await page.keyboard.press('Enter');
    const again = (await savedTicket(page, door.shelf)).document.board;
    expect(again).toEqual({ ...board, revision: 'B' });
  });
});

test('a drawn body takes a package, is dragged in Board only, gets a height by a key and is renamed', async ({
  page,
  w,
}) => {
  await w.drawBoard('Thirty parts', 100, 80);
  const middle = await w.middle();
  await page.keyboard.press('Shift+A');
  await w.drag({ x: middle.x - 40, y: middle.y - 30 }, { x: middle.x + 40, y: middle.y + 20 });
  const selection = w.section('Selection');
  await expect(selection.getByRole('region', { name: 'Drawn body' })).toContainText('mm off');
  await selection.getByRole('button', { name: /Size as drawn/ }).click();
  await w.canvas.locator('.hm-canvas').focus();
  await page.keyboard.press('q');
  await page.keyboard.type('9.5');
  await page.keyboard.press('Enter');
  await expect(selection.getByRole('textbox', { name: /^Height/ })).toHaveValue('9.5');
  const x = selection.getByRole('region', { name: 'Place' }).getByRole('textbox', { name: 'x', exact: true });
  const before = await x.inputValue();
  await w.stage('plan');
  await w.drag(middle, { x: middle.x + 90, y: middle.y });
  await w.stage('board');
  await page.mouse.click(middle.x, middle.y);
  await expect(x).toHaveValue(before);
  await w.drag(middle, { x: middle.x + 90, y: middle.y });
  await expect(x).not.toHaveValue(before);
  await selection.getByRole('textbox', { name: 'Designator' }).fill('K3');
  await page.keyboard.press('Enter');
  await expect(selection.getByRole('heading', { level: 2 })).toContainText('K3');
  await page.keyboard.press('Delete');
  await expect(page.locator('.tray-line')).toContainText('0 parts');
});
