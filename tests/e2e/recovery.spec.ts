import { expect, test } from './door.ts';
import { windowOf } from './window.ts';

test('what was kept before a kill -9 is there after the next start', async ({ page, door }) => {
  const w = windowOf(page);
  await page.goto(door.address());
  await page.getByRole('button', { name: /Start a ticket from the sample tide-gauge-logger/ }).click();
  await expect(page.locator('.frame')).toBeVisible();
  const number = (await page.locator('.ticket-title h1').textContent()) ?? '';
  await w.stage('plan');
  const rows = w.section('Order of work').getByRole('listitem');
  const before = await rows.count();
  await page.keyboard.press('Control+a');
  await page.keyboard.press('p');
  await expect(rows).not.toHaveCount(before);
  const tagged = await rows.count();
  await expect(page.locator('.save-state')).toContainText(/Kept|Saved/);
  // The journal is written within a second; the ticket file only follows when the bench is at rest.
  await page.waitForTimeout(1200);
  await door.kill();
  await expect(page.getByRole('alert')).toContainText('no longer answers');

  await door.start();
  await page.goto(door.address());
  await page.getByRole('button', { name: `Open ticket ${number}` }).click();
  await expect(page.locator('.frame')).toBeVisible();
  await w.stage('plan');
  await expect(rows).toHaveCount(tagged);
});
