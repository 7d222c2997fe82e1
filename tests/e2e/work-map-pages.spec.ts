import { readFileSync } from 'node:fs';
import { unzipSync } from 'fflate';
import { expect, test } from './opened.ts';

test('a step is ticked by key, taken back and ticked again; the pages of the work map are seen, saved as SVG and as PNG', async ({
  page,
  w,
}) => {
  await w.importFile('sample-boards/tide-gauge-logger.hmticket');
  await w.stage('steps');
  await w.figures();
  const acts = page.locator('.step-act');
  const ticked = page.locator('.steps > li[data-done]');
  await acts.first().focus();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('x');
  await expect(ticked).toHaveCount(1);
  await expect(acts.nth(1), 'the next one down').toBeFocused();
  // A tick changes no heat: no map is worked out for it.
  await expect(page.locator('.status-line .progress')).toHaveCount(0);
  await page.keyboard.press('Control+z');
  await expect(ticked).toHaveCount(0);
  await page.keyboard.press('Control+y');
  await expect(ticked).toHaveCount(1);
  await w.stage('workMap');
  await expect(page.getByRole('img', { name: /^Page 1 of \d+$/ })).toBeVisible({ timeout: 60_000 });
  const number = (await page.locator('.ticket-title h1').textContent()) ?? '';
  for (const format of ['SVG', 'PNG']) {
    const download = page.waitForEvent('download', { timeout: 60_000 });
    await page.getByRole('button', { name: `Pages as ${format}` }).click();
    const saved = await download;
    expect(saved.suggestedFilename()).toBe(`${number}-${format.toLowerCase()}.zip`);
    const files = unzipSync(new Uint8Array(readFileSync(await saved.path())));
    const names = Object.keys(files);
    expect(names.length).toBeGreaterThan(8);
    await expect(page.getByRole('img', { name: /^Page \d+ of/ })).toHaveCount(names.length);
    expect(names[0]).toBe(`${number}-01.${format.toLowerCase()}`);
    const head = Buffer.from(files[names[0]!]!.subarray(0, 300)).toString('latin1');
    expect(head).toMatch(format === 'SVG' ? /<svg .*viewBox="0 0 595\.28 841\.89"/s : /^.PNG/);
    await expect(page.getByRole('status').filter({ hasText: `${names.length} pages` })).toBeVisible();
  }
});
