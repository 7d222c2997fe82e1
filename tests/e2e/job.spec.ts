import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { expect, test } from './opened.ts';

const NOTE = 'Foil from the side of the connector.';

test('the whole job by keyboard and mouse: sites, tags, map, suggestions, undo, sheet, reopened', async ({
  page,
  w,
}) => {
  await w.importFile('sample-boards/greenhouse-gateway.board.json');
  const number = (await page.locator('.ticket-title h1').textContent()) ?? '';

  await test.step('mark the sites and see the map', async () => {
    await w.stage('plan');
    for (const refdes of ['U1', 'U2', 'U3']) {
      await w.find(refdes);
      await page.keyboard.press('x');
    }
    await expect(w.section('Rework sites').getByRole('listitem')).toHaveCount(3);
    await w.figures();
    const atSite = await w.temperatureAt(await w.middle());
    expect(atSite).toBeGreaterThan(180);
    await page.keyboard.press('Shift+Digit1');
    await page.mouse.move(0, 0);
  });

  await test.step('take the suggestions, take them back, take them again', async () => {
    await page.keyboard.press('Escape');
    const suggestions = w.section('Suggestions');
    await expect(suggestions.getByRole('listitem').first()).toBeVisible();
    const all = suggestions.getByRole('button', { name: /^(Remove|Shield|Secure) \d+ parts/ });
    const words = await all.textContent();
    await all.click();
    await expect(suggestions).toContainText('Nothing to suggest');
    await page.keyboard.press('Control+z');
    await expect(all).toHaveText(words ?? '');
    await page.keyboard.press('Control+y');
    await expect(suggestions).toContainText('Nothing to suggest');
    await w.figures();
  });

  await test.step('shield a part, write a note, watch another', async () => {
    await w.find('L1');
    await page.keyboard.press('s');
    const work = w.section('Order of work');
    await expect(work).toContainText('L1');
    await w.section('Selection').getByRole('textbox', { name: 'Note' }).fill(NOTE);
    await page.keyboard.press('Enter');
    await page.keyboard.press('Escape');
    await w.find('C45');
    await page.keyboard.press('w');
    await page.keyboard.press('Escape');
    await expect(w.section('Thermocouples')).toContainText('on C45');
  });

  await test.step('select many with the mouse, turn the board over and back', async () => {
    await page.keyboard.press('Shift+Digit1');
    const box = await w.canvas.boundingBox();
    if (!box) throw new Error('the canvas has no place');
    await page.mouse.move(box.x + 20, box.y + 60);
    await w.drag({ x: box.x + 20, y: box.y + 60 }, { x: box.x + box.width / 3, y: box.y + box.height / 2 });
    await expect(page.locator('.tray-line')).toContainText(/\d+ selected/);
    await page.keyboard.press('Escape');
    await page.keyboard.press('o');
    await expect(page.getByRole('radio', { name: 'Bottom' })).toBeChecked();
    await page.keyboard.press('o');
  });

  await test.step('print the work map', async () => {
    await w.figures();
    const download = page.waitForEvent('download');
    await page.keyboard.press('Control+p');
    const file = await (await download).path();
    expect(readFileSync(file).subarray(0, 5).toString()).toBe('%PDF-');
    const text = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8', maxBuffer: 1e8 });
    for (const said of [number, 'U1', 'U2', 'U3', 'L1', 'BT1', 'seen from below']) expect(text).toContain(said);
  });

  await test.step('back to the shelf, and everything is there again', async () => {
    const work = (await w.section('Order of work').getByRole('listitem').allTextContents()).length;
    await page.keyboard.press('Control+o');
    await page.getByRole('button', { name: `Open ticket ${number}` }).click();
    await expect(page.locator('.frame')).toBeVisible();
    await w.stage('plan');
    await expect(w.section('Rework sites').getByRole('listitem')).toHaveCount(3);
    await expect(w.section('Order of work').getByRole('listitem')).toHaveCount(work);
    await expect(w.section('Order of work')).toContainText(NOTE);
    await expect(w.section('Thermocouples')).toContainText('on C45');
    await w.figures();
  });
});
