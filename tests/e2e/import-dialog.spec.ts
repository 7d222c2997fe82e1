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
