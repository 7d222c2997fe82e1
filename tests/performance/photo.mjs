// A photo of many megapixels into an open ticket, through the real local door and Chromium: how long it takes, how long the window
// stands still, and what memory it takes at most. Needs `npm run build` first. Run: node tests/performance/photo.mjs [megapixels ...]
import { writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { openBrowser } from './browser.mjs';
import { browserMemoryMb, mostMemory } from './browser-memory.mjs';
import { openDoor } from './door.mjs';

const root = resolve(import.meta.dirname, '../..');
const sizes = process.argv.slice(2).map(Number);
/** A photo that is not there by then has failed. */
const MOST_MS = 120_000;
const door = await openDoor('photo');
const browser = await openBrowser();

/** A JPEG with detail everywhere, encoded by the browser in a page of its own. */
async function makeJpeg(megapixels) {
  const page = await browser.newPage();
  const text = await page.evaluate(async (wanted) => {
    const width = Math.round(Math.sqrt((wanted * 1e6 * 3) / 2));
    const height = Math.round((width * 2) / 3);
    const canvas = new OffscreenCanvas(width, height);
    const context = canvas.getContext('2d');
    const grain = new ImageData(512, 512);
    let seed = 7;
    for (let index = 0; index < grain.data.length; index++) {
      seed = (seed * 1664525 + 1013904223) >>> 0;
      grain.data[index] = index % 4 === 3 ? 255 : 90 + (seed >>> 26);
    }
    for (let y = 0; y < height; y += 512) for (let x = 0; x < width; x += 512) context.putImageData(grain, x, y);
    const bytes = new Uint8Array(
      await (await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.85 })).arrayBuffer(),
    );
    let letters = '';
    for (let at = 0; at < bytes.length; at += 32768) letters += String.fromCharCode(...bytes.subarray(at, at + 32768));
    return btoa(letters);
  }, megapixels);
  await page.close();
  return Buffer.from(text, 'base64');
}

/** Opens a ticket, adds the photo and prints what it took. */
async function measure(megapixels) {
  const buffer = await makeJpeg(megapixels);
  const file = join(door.folder, `${megapixels}.jpg`);
  writeFileSync(file, buffer);
  const page = await browser.newPage({ viewport: { width: 1366, height: 768 } });
  await openTicket(page);
  const before = browserMemoryMb();
  await page.evaluate(watchStands);
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Add photos' }).click();
  await (await chooser).setFiles(file);
  const started = performance.now();
  const watched = mostMemory();
  await page.getByText(/\d+ × \d+ px/).waitFor({ timeout: MOST_MS });
  const added = performance.now() - started;
  const drawn = () => !/Decoding/.test(document.querySelector('.stage')?.textContent ?? '');
  await page.waitForFunction(drawn, null, { timeout: MOST_MS });
  const shown = performance.now() - started;
  await page.waitForTimeout(1500);
  const most = watched.stop();
  const longest = await page.evaluate(() => window.longest);
  console.log(
    `${megapixels} megapixels, ${(buffer.length / 1e6).toFixed(1)} MB: in the ticket after ${(added / 1000).toFixed(1)} s, drawn after ` +
      `${(shown / 1000).toFixed(1)} s; longest stand of the window ${longest.toFixed(0)} ms; memory of the browser ${before.toFixed(0)} MB, ` +
      `at most ${most.toFixed(0)} MB, afterwards ${browserMemoryMb().toFixed(0)} MB`,
  );
  await page.close();
}

async function openTicket(page) {
  await page.goto(door.address);
  const samples = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Import', exact: true }).click();
  await (await samples).setFiles(join(root, 'sample-boards/tide-gauge-logger.board.json'));
  await page.locator('.frame').waitFor();
  await page.keyboard.press('2');
  await page.waitForTimeout(4000);
}

/** In the page: the longest time between two turns of its thread. */
function watchStands() {
  window.longest = 0;
  let last = performance.now();
  const beat = () => {
    const now = performance.now();
    window.longest = Math.max(window.longest, now - last);
    last = now;
    setTimeout(beat, 0);
  };
  beat();
}

try {
  for (const megapixels of sizes.length > 0 ? sizes : [12, 50]) await measure(megapixels);
} finally {
  await browser.close();
  await door.close();
}
