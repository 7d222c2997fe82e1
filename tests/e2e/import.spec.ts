import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from './opened.ts';
import { windowOf } from './window.ts';

const folder = '../shared/boards/thunderscope';
const drawing = /\.(txt|gm1|gtl|gbl|gtp|gbp)$/i;

test('placements and Gerber of a real board become a ticket, and its site a map', async ({ page, w }) => {
  test.skip(!existsSync(folder), `the outside board in ${folder} is not here`);
  const files = readdirSync(folder).filter((name) => drawing.test(name));
  await w.chooseFiles(
    'Import',
    files.map((name) => join(folder, name)),
  );
  const sheet = page.getByRole('dialog', { name: 'Import' });
  await expect(sheet).toContainText('460 top, 273 bottom');
  await expect(sheet.getByRole('region', { name: 'Shields and frames' })).toContainText(
    'SHLD1001_4 (by its designator',
  );
  await expect(sheet).toContainText('122.5 mm × 103.5 mm');
  await expect(sheet.getByRole('list', { name: 'Notes' }).getByRole('listitem').first()).toBeVisible();
  await sheet.getByRole('button', { name: 'Create ticket' }).click();
  await expect(page.locator('.frame')).toBeVisible();
  await w.stage('plan');
  await w.find('U18');
  await page.keyboard.press('x');
  await w.figures();
  expect(await w.temperatureAt(await w.middle())).toBeGreaterThan(180);
});

test('a file that is none is told with what to do, and nothing is lost', async ({ page, door }) => {
  const w = windowOf(page);
  await page.goto(door.address());
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Import', exact: true }).click();
  await (await chooser).setFiles([
    { name: 'notes.hmticket', mimeType: 'text/plain', buffer: Buffer.from('no ticket') },
  ]);
  const alert = page.getByRole('alert');
  await expect(alert).toContainText('notes.hmticket');
  await alert.getByRole('button', { name: 'Dismiss' }).click();
  await expect(alert).toHaveCount(0);
  await expect(w.canvas).toHaveCount(0);
});
