// A photo of many megapixels into an open ticket, through the real local door and Chromium: how long it takes, how long the window
// stands still, and what memory it takes at most. Needs `npm run build` first. Run: node tests/performance/photo.mjs [megapixels ...]
import { execFileSync, spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { chromium } from '@playwright/test';

const root = resolve(import.meta.dirname, '../..');
const sizes = process.argv.slice(2).map(Number);
const folder = mkdtempSync(join(tmpdir(), 'heatmargin-photo-'));
const places = ['--shelf', join(folder, 'shelf'), '--app-folder', join(folder, 'app')];
const door = spawn(process.execPath, [join(root, 'dist/main/local-app.js'), '--no-window', ...places], {
  stdio: ['ignore', 'pipe', 'inherit'],
});
const address = await new Promise((found) => {
  let text = '';
  door.stdout.on('data', (data) => {
    text += data;
    const said = /http:\S+/.exec(text)?.[0];
    if (said) found(said);
  });
});
const executablePath = execFileSync('sh', ['-c', 'command -v chromium || command -v google-chrome'], {
  encoding: 'utf8',
});
const browser = await chromium.launch({
  executablePath: executablePath.trim(),
  args: [
    '--no-sandbox',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
    '--enable-unsafe-swiftshader',
  ],
});

/** Resident memory of the browser's processes, MB: proportional, so that shared pages count once. */
function browserMemoryMb() {
  let kb = 0;
  for (const id of readdirSync('/proc').filter((name) => /^\d+$/.test(name))) {
    try {
      if (!readFileSync(`/proc/${id}/cmdline`, 'utf8').includes('chromium')) continue;
      kb += Number(/Pss:\s+(\d+)/.exec(readFileSync(`/proc/${id}/smaps_rollup`, 'utf8'))?.[1] ?? 0);
    } catch {
      // The process ended in the meantime.
    }
  }
  return kb / 1024;
}

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

for (const megapixels of sizes.length > 0 ? sizes : [12, 50]) {
  const buffer = await makeJpeg(megapixels);
  const page = await browser.newPage({ viewport: { width: 1366, height: 768 } });
  await page.goto(address);
  const samples = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Import', exact: true }).click();
  await (await samples).setFiles(join(root, 'sample-boards/tide-gauge-logger.board.json'));
  await page.locator('.frame').waitFor();
  await page.keyboard.press('2');
  await page.waitForTimeout(4000);
  const before = browserMemoryMb();
  await page.evaluate(() => {
    window.longest = 0;
    let last = performance.now();
    const beat = () => {
      const now = performance.now();
      window.longest = Math.max(window.longest, now - last);
      last = now;
      setTimeout(beat, 0);
    };
    beat();
  });
  const file = join(folder, `${megapixels}.jpg`);
  (await import('node:fs')).writeFileSync(file, buffer);
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Add photos' }).click();
  await (await chooser).setFiles(file);
  const started = performance.now();
  let most = 0;
  const watch = setInterval(() => {
    most = Math.max(most, browserMemoryMb());
  }, 50);
  const row = page.getByText(/\d+ × \d+ px/);
  await row.waitFor({ timeout: 300_000 });
  const added = performance.now() - started;
  await page.waitForFunction(() => !/Decoding/.test(document.querySelector('.stage')?.textContent ?? ''), null, {
    timeout: 300_000,
  });
  const shown = performance.now() - started;
  await page.waitForTimeout(1500);
  clearInterval(watch);
  const longest = await page.evaluate(() => window.longest);
  console.log(
    `${megapixels} megapixels, ${(buffer.length / 1e6).toFixed(1)} MB: in the ticket after ${(added / 1000).toFixed(1)} s, drawn after ` +
      `${(shown / 1000).toFixed(1)} s; longest stand of the window ${longest.toFixed(0)} ms; memory of the browser ${before.toFixed(0)} MB, ` +
      `at most ${most.toFixed(0)} MB, afterwards ${browserMemoryMb().toFixed(0)} MB`,
  );
  await page.close();
}
await browser.close();
door.kill('SIGTERM');
rmSync(folder, { recursive: true, force: true });
