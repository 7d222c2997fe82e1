import type { Locator, Page } from '@playwright/test';
import { expect } from './door.ts';

const STAGE_KEYS = { board: '1', photo: '2', plan: '3', heat: '4', straps: '5', workMap: '6' };

/** What a technician does in the window, with keyboard and mouse. */
export function windowOf(page: Page) {
  const canvas = page.locator('.canvas-host');
  const row = (refdes: string): Locator =>
    page.getByRole('listitem').filter({ hasText: new RegExp(`\\b${refdes}\\b`) });
  return {
    canvas,
    /** Rows of the panel that speak of a part. */
    row,
    section: (name: string) => page.getByRole('region', { name, exact: true }),
    /** Finds a part by its designator: it is then selected, in the middle of the canvas. */
    async find(refdes: string) {
      await page.keyboard.press('/');
      await page.keyboard.type(refdes);
      await page.keyboard.press('Enter');
      await expect(page.getByRole('region', { name: 'Selection' }).getByRole('heading', { level: 2 })).toContainText(
        refdes,
      );
    },
    stage: (name: keyof typeof STAGE_KEYS) => page.keyboard.press(STAGE_KEYS[name]),
    /** Waits until the fine map of the newest plan is there. */
    async figures() {
      await expect(page.locator('.phrases')).toBeVisible({ timeout: 60_000 });
      await expect(page.locator('.status-line .progress')).toHaveCount(0, { timeout: 60_000 });
    },
    async middle() {
      const box = await canvas.boundingBox();
      if (!box) throw new Error('the canvas has no place');
      return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    },
    /** The temperature that the status line says under the pointer, C. */
    async temperatureAt(at: { x: number; y: number }) {
      await page.mouse.move(at.x, at.y);
      const status = page.locator('.status-line');
      await expect(status).toContainText('°C');
      return Number(/(-?\d+) °C/.exec((await status.textContent()) ?? '')?.[1]);
    },
    async drag(from: { x: number; y: number }, to: { x: number; y: number }) {
      await page.mouse.move(from.x, from.y);
      await page.mouse.down();
      await page.mouse.move((from.x + to.x) / 2, (from.y + to.y) / 2, { steps: 4 });
      await page.mouse.move(to.x, to.y, { steps: 4 });
      await page.mouse.up();
    },
    async chooseFiles(button: string, files: string[]) {
      const chooser = page.waitForEvent('filechooser');
      await page.getByRole('button', { name: button, exact: true }).click();
      await (await chooser).setFiles(files);
    },
  };
}

/** Collects what the page complains about; a page that runs cleanly under its policy complains of nothing. */
export function complaintsOf(page: Page): string[] {
  const complaints: string[] = [];
  page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(String(error)));
  return complaints;
}
