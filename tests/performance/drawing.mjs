// tide-gauge-logger drawn anew from pictures of it alone, in the real window by mouse and keyboard: what the hands do, the seconds
// that a practised person takes for it by the keystroke-level model (tests/performance/drawing/hands.ts), and how far the drawing is
// off. Needs `npm run build` first. Run: npm run bench:drawing [-- folder for screenshots]
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { runnerImport } from 'vite';
import { openBrowser } from './browser.mjs';
import { openDoor } from './door.mjs';

const root = resolve(import.meta.dirname, '../..');
const shots = process.argv[2] ? resolve(process.argv[2]) : null;
if (shots) mkdirSync(shots, { recursive: true });
globalThis.__VERSION__ = 'bench';
const load = async (path) => (await runnerImport(join(root, path), { logLevel: 'error' })).module;
const { BENCH_BOARD, drawBoard, picturesOf } = await load('tests/performance/drawing/bench-drawing.ts');
const { handsOn, totalOf } = await load('tests/performance/drawing/hands.ts');
const { compareBoards } = await load('tests/performance/drawing/compare.ts');

const door = await openDoor('drawing');
const browser = await openBrowser();

const line = (name, tally) =>
  `${name.padEnd(14)} ${tally.seconds.toFixed(0).padStart(4)} s, ${tally.keys} keys, ${tally.points} times pointed, ` +
  `${tally.buttons / 2} clicks and drags, ${tally.homes} changes of hand, ${tally.thoughts} thoughts; ` +
  `the window took ${(tally.waitedMs / 1000).toFixed(1)} s`;

function told(hands, drawn, truth) {
  for (const [name, tally] of hands.tallies) console.log(line(name, tally));
  const total = totalOf(hands.tallies.values());
  console.log(line('all', total));
  console.log(`${((total.seconds + total.waitedMs / 1000) / 60).toFixed(1)} minutes, without errors and pauses`);
  const { offMm, pin1, ...lists } = compareBoards(drawn, truth);
  const sorted = [...offMm].sort((a, b) => a - b);
  const at = (share) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))].toFixed(2);
  console.log(`${offMm.length} parts: off by ${at(0.5)} mm (median), ${at(0.95)} (of 95 in 100), ${at(1)} at most`);
  console.log(`pin 1: ${pin1.right} of ${pin1.wanted} right ${pin1.wrong.join(' ')}`);
  for (const [name, list] of Object.entries(lists))
    if (list.length > 0) console.log(`${name}: ${list.length} (${list.slice(0, 12).join(', ')})`);
}

try {
  const truth = JSON.parse(readFileSync(join(root, `sample-boards/${BENCH_BOARD}.board.json`), 'utf8'));
  const page = await browser.newPage({ viewport: { width: 1366, height: 768 } });
  page.setDefaultTimeout(30_000);
  page.on('pageerror', (error) => console.log('the page complains:', error.message));
  await page.goto(door.address);
  const pictures = await picturesOf(page, truth);
  if (shots)
    for (const side of ['top', 'bottom']) writeFileSync(join(shots, `photo-${side}.jpg`), pictures.photos[side]);
  const hands = handsOn(page);
  const shot = async (name) => void (shots && (await page.screenshot({ path: join(shots, `${name}.png`) })));
  const drawn = await drawBoard(page, hands, { truth, shelf: door.shelf, shot, ...pictures });
  told(hands, drawn, truth);
} finally {
  await browser.close();
  await door.close();
}
process.exit(0);
