import { run, segment, smallBoard, smallPlan } from '../unit/main/heat/support.ts';
import { expect, test } from './opened.ts';

const board = { ...smallBoard(), parts: smallBoard().parts.filter(({ refdes }) => refdes !== 'E1') };
const segments = [
  segment('Preheat', 100, [25, 330], null),
  segment('Soak', 80, [330, 330], null),
  segment('Gas', 40, [330, 330], [300, 300]),
  segment('Cool', 20, [25, 25], null),
];
const plan = smallPlan(board, { heatRuns: [run('removal', 'run-1', { segments })] });

test('a better profile is searched, stopped, picked by keys, taken in one step and undone', async ({
  page,
  w,
}, info) => {
  await w.importTicket(info.outputPath('search.hmticket'), { board, plan });
  const section = page.locator('.section', { has: page.getByRole('button', { name: /A better profile/ }) });
  const find = section.getByRole('button', { name: /Find a better profile|Search again/ });

  await test.step('before a calibration a plain warning stands over the search', async () => {
    await page.keyboard.press('Control+Shift+p');
    await page.keyboard.type('better profile');
    await page.keyboard.press('Enter');
    await expect(section.getByRole('button', { name: /A better profile/ })).toBeFocused();
    await page.keyboard.press('Enter');
    await expect(section).toContainText('This station is not calibrated');
  });

  await test.step('swapped bounds are said and cannot be searched', async () => {
    await section.getByLabel('Gas, from', { exact: true }).fill('400');
    await section.getByLabel('Gas, from', { exact: true }).press('Enter');
    await expect(section.getByRole('alert')).toContainText('from lies above to');
    await expect(find).toBeDisabled();
    await section.getByRole('button', { name: 'Bounds as at first' }).click();
    await expect(section.getByRole('alert')).toHaveCount(0);
  });

  await test.step('a search that is stopped leaves nothing behind', async () => {
    await find.click();
    await section.getByRole('button', { name: 'Stop' }).click();
    await expect(find).toBeEnabled();
    await expect(section.getByRole('radiogroup')).toHaveCount(0);
  });

  const points = section.getByRole('radiogroup', { name: 'Time against margin: profiles to pick' });
  await test.step('the largest margin is offered first, on the fine map, beside the present profile', async () => {
    await find.click();
    await expect(points).toBeVisible({ timeout: 45_000 });
    await expect(section).toContainText('The present profile misses:');
    await expect(section).toContainText('Confirmed on the fine map');
    await expect(section.getByRole('columnheader', { name: 'Largest margin' })).toBeVisible();
  });

  await test.step('another one is picked by an arrow key, and is said to be of the coarse map', async () => {
    await points.getByRole('radio', { checked: true }).focus();
    await page.keyboard.press('ArrowLeft');
    await expect(section.getByRole('columnheader', { name: 'Picked' })).toBeVisible();
    await expect(section).toContainText('Coarse map only');
    await page.keyboard.press('ArrowRight');
    await expect(section).toContainText('Confirmed on the fine map');
  });

  await test.step('taken, it does its work in the ticket; one undo brings the old one back', async () => {
    await section.getByRole('button', { name: 'Take this profile' }).click();
    await expect(section).toContainText('This is the present profile now');
    await w.figures();
    const coldest = w.section('Target').getByRole('row', { name: /U1/ }).getByRole('cell').first();
    await expect(coldest).toHaveText(/^2(2[5-9]|30)\b/);
    await page.keyboard.press('Control+z');
    await expect(section.getByRole('button', { name: 'Take this profile' })).toBeEnabled();
  });
});
