import { execFileSync } from 'node:child_process';
import { expect, test } from './opened.ts';

const TABLE = [
  'Option\tMaker\tSize\tR101\tR102\tR103\tR104\tR105',
  'two of 4\tHalm\t8 Gbit\t10k\t-\t10k\t10k\t-',
  'two of 8\tTern\t16 Gbit\t-\t10k\t10k\t-\t4k7',
].join('\n');

test('straps: from a pasted table to printed moves, ticked and read again', async ({ page, w }) => {
  await w.importFile('sample-boards/greenhouse-gateway.board.json');
  await w.stage('plan');
  await w.find('U2');
  await page.keyboard.press('x');
  await page.keyboard.press('Escape');
  await w.stage('straps');
  const groups = w.section('Strap groups');
  const moves = w.section('Moves');

  await test.step('a group is deleted, comes back by undo, and goes again', async () => {
    await groups.getByRole('button', { name: 'Delete Memory' }).click();
    await expect(groups).toContainText('paste its table');
    await page.keyboard.press('Control+z');
    await groups.getByRole('button', { name: 'Delete Memory' }).click();
  });

  await test.step('the table is pasted, looked over and kept', async () => {
    await groups.getByRole('button', { name: 'Paste a table' }).click();
    await page.getByRole('textbox', { name: 'Table' }).fill(TABLE);
    await page.getByRole('button', { name: 'Read the table' }).click();
    const dialog = page.getByRole('dialog');
    await expect(dialog.getByRole('status')).toContainText('needs a name');
    await dialog.getByRole('textbox', { name: 'Name' }).fill('Memory');
    const cell = dialog.getByRole('textbox', { name: 'Settings, row 2, R105' });
    await cell.fill('perhaps');
    await expect(dialog.getByRole('status')).toContainText("Settings, row 2, R105: 'perhaps' is no level");
    // A block of cells pasted into the table goes in from that cell on.
    await cell.evaluate((element) => {
      const clipboardData = new DataTransfer();
      clipboardData.setData('text', 'fitted\nfitted');
      element.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }));
    });
    await expect(dialog.getByRole('textbox', { name: 'Settings, row 3, R105' })).toHaveValue('fitted');
    await dialog.getByRole('button', { name: 'Delete row 3' }).last().click();
    await dialog.getByRole('button', { name: 'Keep group' }).click();
    await expect(groups).toContainText('10110: two of 4');
  });

  await test.step('the wanted setting gives the moves; what is lacking is refused until it is in the stock', async () => {
    await groups.getByRole('button', { name: /Wanted/ }).click();
    await page.getByRole('option', { name: /two of 8/ }).click();
    await expect(moves).toContainText('R105 needs 4k7 0402, and none is at hand');
    await page.getByRole('button', { name: /^Stock/ }).click();
    await page.getByRole('button', { name: 'Add part' }).click();
    await page.getByRole('textbox', { name: '10k: value' }).fill('4k7');
    await page.keyboard.press('Enter');
    await expect(moves).toContainText('1 relocate, 1 add, 1 off');
    await expect(moves).toContainText('R101 to R102');
  });

  await test.step('the moves become tags, in one step', async () => {
    await moves.getByRole('button', { name: 'Put 2 tags in the plan' }).click();
    await expect(moves).toContainText('The tags are in the plan.');
    await page.keyboard.press('Control+z');
    await expect(moves.getByRole('button', { name: 'Put 2 tags in the plan' })).toBeVisible();
    await page.keyboard.press('Control+y');
    await expect(moves).toContainText('The tags are in the plan.');
  });

  await test.step('the sheet prints them', async () => {
    await w.figures();
    const download = page.waitForEvent('download');
    await page.keyboard.press('Control+p');
    const file = await (await download).path();
    const text = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8', maxBuffer: 1e8 });
    expect(text).toContain('Strap moves: 1 relocate, 1 add, 1 off');
    expect(text).toMatch(/Relocate\s+R101\s+R102\s+top\s+10k 0402/);
    expect(text).toMatch(/Add\s+stock\s+R105\s+top\s+4k7 0402/);
    expect(text).toMatch(/Take off\s+R104/);
    expect(text).toContain('no marking: measure');
  });

  await test.step('ticked as done, the code is read again', async () => {
    for (let left = 3; left > 0; left--)
      await moves
        .getByRole('button', { name: /^Done: / })
        .first()
        .click();
    await expect(moves).toContainText('The board says every wanted setting already.');
    await expect(groups).toContainText('01101: two of 8');
  });

  await test.step('a marking is read both ways', async () => {
    await page.getByRole('button', { name: 'Read a marking' }).click();
    await page.getByRole('textbox', { name: 'Marking', exact: true }).fill('10R');
    const readings = page.locator('.strap-readings li');
    await expect(readings).toHaveText([/^1\.24 Ω EIA-96/, /^10 Ω letter code/]);
  });
});
