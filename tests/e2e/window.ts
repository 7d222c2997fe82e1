import { writeFileSync } from 'node:fs';
import type { Locator, Page } from '@playwright/test';
import { packTicket } from '../../main/document/ticket-archive.ts';
import type { Point } from '../../shared-types/geometry.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { expect } from './door.ts';

const STAGE_KEYS = { board: '1', photo: '2', plan: '3', heat: '4', straps: '5', steps: '6', workMap: '7' };

/** What a technician does in the window, with keyboard and mouse. */
export function windowOf(page: Page) {
  const canvas = page.locator('.canvas-host');
  const row = (refdes: string): Locator =>
    page.getByRole('listitem').filter({ hasText: new RegExp(`\\b${refdes}\\b`) });
  const opened = async () => {
    await expect(page.locator('.frame')).toBeVisible();
    await expect(page.locator('.hm-canvas canvas').first()).toBeVisible();
  };
  const placeOfCanvas = async () => {
    const box = await canvas.boundingBox();
    if (!box) throw new Error('the canvas has no place');
    return box;
  };
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
    /** A new rectangular board of the start page's sheet; it opens in the stage Board. */
    async drawBoard(name: string, lengthMm: number, widthMm: number) {
      await page.getByRole('button', { name: 'Draw a board' }).click();
      const sheet = page.getByRole('dialog', { name: 'New ticket' });
      await sheet.getByRole('textbox', { name: 'Board name' }).fill(name);
      for (const [label, value] of [
        ['Length', lengthMm],
        ['Width', widthMm],
      ] as const) {
        await sheet.getByRole('textbox', { name: label }).fill(String(value));
        await page.keyboard.press('Tab');
      }
      await sheet.getByRole('button', { name: 'Create ticket' }).click();
      await opened();
      await page.mouse.move(0, 0);
    },
    /** Back to the shelf, and the same ticket opened from there. */
    async openAgain() {
      const number = (await page.locator('.ticket-title h1').textContent()) ?? '';
      await page.keyboard.press('Control+o');
      await page.getByRole('button', { name: `Open ticket ${number}` }).click();
      await opened();
    },
    fitAll: () => page.keyboard.press('Shift+Digit1'),
    /** The way from board mm to the page, found out as a user would: by what the status line says under the pointer. */
    async lieOfBoard() {
      const box = await placeOfCanvas();
      const read = async (x: number, y: number) => {
        await page.mouse.move(x, y);
        const [across, up] = (await page.locator('.status-line').textContent())?.match(/-?\d+\.\d/g) ?? [];
        return { x: Number(across), y: Number(up) };
      };
      const [low, high] = [
        { x: box.x + 0.3 * box.width, y: box.y + 0.7 * box.height },
        { x: box.x + 0.7 * box.width, y: box.y + 0.3 * box.height },
      ];
      const [a, b] = [await read(low.x, low.y), await read(high.x, high.y)];
      const scale = { x: (high.x - low.x) / (b.x - a.x), y: (high.y - low.y) / (b.y - a.y) };
      return (at: Point) => ({ x: low.x + (at.x - a.x) * scale.x, y: low.y + (at.y - a.y) * scale.y });
    },
    async middle() {
      const box = await placeOfCanvas();
      return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    },
    /** The temperature that the status line says under the pointer, C. */
    async temperatureAt(at: Point) {
      await page.mouse.move(at.x, at.y);
      const status = page.locator('.status-line');
      await expect(status).toContainText('°C');
      return Number(/(-?\d+) °C/.exec((await status.textContent()) ?? '')?.[1]);
    },
    async drag(from: Point, to: Point) {
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
    /** Imports one file on the shelf and waits until its ticket is open. */
    async importFile(path: string) {
      await this.chooseFiles('Import', [path]);
      await expect(page.locator('.frame')).toBeVisible();
    },
    /** Writes a document as a ticket file and opens it by import, at its figures of the Heat stage. */
    async importTicket(path: string, document: TicketDocument) {
      writeFileSync(path, packTicket({ document, photos: new Map() }));
      await this.importFile(path);
      await this.stage('heat');
      await this.figures();
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
