import { loggedBoard as board, logText, loggedPlan as plan } from '../support/heat/log-file.ts';
import { expect, test } from './opened.ts';

test('calibration: a logger’s file becomes a calibrated station that other tickets find', async ({ page, w }, info) => {
  await w.importTicket(info.outputPath('scrap.hmticket'), { board, plan });
  const section = w.section('Calibration of the station');
  const sheet = page.getByRole('dialog');
  const file = (name: string, text: string) => ({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });
  const give = async (button: string, name: string, text: string) => {
    const chooser = page.waitForEvent('filechooser');
    await sheet.getByRole('button', { name: button }).click();
    await (await chooser).setFiles([file(name, text)]);
  };

  await test.step('a file that is no log is said so in place, and nothing is fitted', async () => {
    await section.getByRole('button', { name: 'Calibrate from a log' }).click();
    await give('Choose a log file', 'letter.txt', 'Dear colleague,\nthe logger was off.');
    await expect(sheet.getByRole('alert')).toContainText('letter.txt');
    await expect(sheet.getByRole('button', { name: 'Fit the station' })).toBeDisabled();
  });

  await test.step('columns and the begin of the run are guessed', async () => {
    await give('Choose a log file', 'scrap run.csv', logText());
    await expect(sheet.getByRole('alert')).toHaveCount(0);
    await expect(sheet.getByRole('button', { name: 'Watch point of the column TC 3' })).toContainText('W3');
    await expect
      .poll(async () => Math.abs(Number(await sheet.getByLabel('The run began at').inputValue()) - 30))
      .toBeLessThanOrEqual(4);
    await sheet.getByLabel('The run began at').fill('30');
    await sheet.getByLabel('The run began at').press('Enter');
    await sheet.getByRole('button', { name: 'How the bead of W2 was fastened' }).click();
    await page.getByRole('option', { name: 'soldered' }).click();
  });

  await test.step('a fit that is stopped leaves everything as it was', async () => {
    await sheet.getByRole('button', { name: 'Fit the station' }).click();
    await sheet.getByRole('button', { name: 'Stop' }).click();
    await expect(sheet.getByRole('button', { name: 'Fit the station' })).toBeEnabled();
  });

  await test.step('what was found is shown and refused, then fitted again and taken', async () => {
    await sheet.getByRole('button', { name: 'Fit the station' }).click();
    await expect(sheet.getByRole('heading', { name: 'What the log told' })).toBeVisible({ timeout: 60_000 });
    await expect(sheet).toContainText('goes with it to other boards');
    await expect(sheet).toContainText('not told by this log');
    await sheet.getByRole('radio', { name: 'W4' }).click();
    await expect(sheet.getByRole('img', { name: 'W4: log against model' })).toBeVisible();
    await sheet.getByRole('button', { name: 'Back to the log' }).click();
    await sheet.getByRole('button', { name: 'Fit the station' }).click();
    await sheet.getByRole('button', { name: 'Take this calibration' }).click({ timeout: 60_000 });
    await expect(section).toContainText('From scrap run.csv');
  });

  await test.step('one undo takes it back, redo brings it again', async () => {
    await page.keyboard.press('Control+z');
    await expect(section).toContainText('Not calibrated');
    await page.keyboard.press('Control+Shift+z');
    await expect(section).toContainText('From scrap run.csv');
  });

  await test.step('another ticket takes the station by its name, with its calibration', async () => {
    await page.getByRole('button', { name: 'Ticket shelf' }).click();
    await w.importFile('sample-boards/greenhouse-gateway.board.json');
    await w.stage('heat');
    await expect(section).toContainText('Not calibrated');
    await page.getByRole('button', { name: /Take a station/ }).click();
    await page.getByRole('option', { name: plan.station.name, exact: true }).click();
    await expect(section).toContainText('This is another board');
    await expect(section).toContainText('film of the preheater');
    await expect(section).not.toContainText('loss to the room');
  });
});
