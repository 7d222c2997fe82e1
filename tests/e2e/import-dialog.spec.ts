import { expect, test } from './opened.ts';

const heading = 'Ref,X,Y,Ctr1,Ctr2,Rot,Comment';
/** An invented two-file set: X and Y are those of the first pad, the middles stand under headings that say nothing. */
const fileSet = (last: string) => {
  const rows = (from: number, prefix: string) =>
    Array.from({ length: 6 }, (_, index) => {
      const x = 10 + index * 8;
      return `${prefix}${from + index},${x},${12 + index},${x + 3},${12 + index},0,${last}`;
    });
  const file = (name: string, lines: string[]) => ({
    name,
    mimeType: 'text/csv',
    buffer: Buffer.from([`Units used: mm`, heading, ...lines].join('\n')),
  });
  return [file('lamp-top.csv', rows(1, 'R')), file('lamp-bottom.csv', rows(11, 'C'))];
};

test('a wrong guess is corrected in the dialogue, seen at once, and remembered for the next files of the kind', async ({
  page,
  w,
}) => {
  const give = async (last: string) => {
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Import', exact: true }).click();
    await (await chooser).setFiles(fileSet(last));
  };
  const sheet = page.getByRole('dialog', { name: 'Import' });
  const column = (name: string) => sheet.getByRole('button', { name: `Meaning of the column ${name}` });
  const choose = async (name: string, meaning: string) => {
    await column(name).click();
    await page.getByRole('option', { name: meaning, exact: true }).click();
  };

  await give('10k');
  await expect(sheet).toContainText('6 top, 6 bottom');
  await expect(column('Ctr1')).toContainText('Not used');
  const before = await sheet.locator('.sides .bodies').first().getAttribute('d');

  // A choice that leaves no places is said in place, and the drawing stays.
  await choose('X', 'Not used');
  await expect(sheet.getByRole('alert')).toBeVisible();
  await expect(sheet.getByRole('button', { name: 'Create ticket' })).toBeDisabled();
  await choose('Ctr1', 'X');
  await expect(sheet.getByRole('alert')).toHaveCount(0);
  await choose('Rot', 'Y');
  await expect.poll(() => sheet.locator('.sides .bodies').first().getAttribute('d')).not.toBe(before);
  await choose('Ctr2', 'Y');
  await choose('Rot', 'Rotation');
  await sheet.getByRole('button', { name: 'Create ticket' }).click();
  await expect(page.locator('.frame')).toBeVisible();
  await w.find('R1');

  await page.getByRole('button', { name: 'Ticket shelf' }).click();
  await give('22k');
  await expect(sheet.getByRole('status')).toContainText('as chosen last time');
  await expect(column('Ctr1')).toContainText('X');
  await expect(column('Ctr2')).toContainText('Y');
  await sheet.getByRole('button', { name: 'Forget' }).click();
  await expect(column('Ctr1')).toContainText('Not used');
  await expect(sheet.getByRole('status')).toHaveCount(0);
});

test('newer files of an open board show what they change, and one undo takes it back', async ({ page, w }) => {
  const table = (rows: string[]) => ({
    name: 'lamp-pos.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(['Ref,Val,Package,PosX (mm),PosY (mm),Rot,Side', ...rows].join('\n')),
  });
  const rows = Array.from(
    { length: 8 },
    (_, index) => `R${index + 1},10k,R_0603,${10 + 7 * index},${12 + 3 * (index % 3)},0,top`,
  );
  const give = async (button: string, file: ReturnType<typeof table>) => {
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: button, exact: true }).click();
    await (await chooser).setFiles([file]);
  };
  // A letter gives no board: the sheet says so and takes the table besides.
  await give('Import', { ...table([]), name: 'letter.txt', buffer: Buffer.from('Dear all,\nhere it comes.\n') });
  const sheet = page.getByRole('dialog', { name: 'Import' });
  await expect(sheet.getByRole('alert')).toContainText('letter.txt');
  await expect(sheet.getByRole('button', { name: 'Create ticket' })).toBeDisabled();
  await give('Add files', table(rows));
  await sheet.getByRole('button', { name: 'Create ticket' }).click();
  await expect(page.locator('.frame')).toBeVisible();
  await w.stage('plan');
  await w.find('R2');
  await page.keyboard.press('r');
  await w.stage('board');

  const newer = rows
    .filter((row) => !row.startsWith('R2,'))
    .map((row) => row.replace('R5,10k,R_0603,38', 'R5,22k,R_0603,39.5'));
  await give('Update from files', table(newer));
  await page.getByRole('button', { name: 'Show what changes' }).click();
  const changes = page.getByRole('dialog', { name: 'What changes' });
  await expect(changes).toContainText('6 of 7 parts that both have are the same');
  await expect(changes.getByRole('list', { name: 'Gone' })).toContainText('R2 tag remove');
  await expect(changes.getByRole('list', { name: 'Moved' })).toContainText('R5 by 1.5 mm');
  await changes.getByRole('list', { name: 'Value' }).getByText('R5').click();
  await changes.getByRole('button', { name: 'Make 2 changes' }).click();
  await expect(page.locator('.status-line')).toContainText('2 changes');
  await w.find('R5');
  await expect(page.getByRole('region', { name: 'Selection' })).toContainText('10k');
  await page.keyboard.press('Control+z');
  await w.find('R2');
});
