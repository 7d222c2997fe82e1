// How often the 90 % bands of a ticket cover what the model says under terms drawn all at once from their priors, by kind
// of figure, on samples and on boards made at random. npm run bench:bands [draws [first seed [cases...]]]
import { join, resolve } from 'node:path';
import { runnerImport } from 'vite';

const root = resolve(import.meta.dirname, '../..');
const load = async (path) => (await runnerImport(join(root, path), { logLevel: 'error' })).module;
const { bandCoverage } = await load('tests/support/heat/band-coverage.ts');
const { ticketOf: sampleTicket } = await load('tests/support/stories.ts');
const { randomTicket } = await load('tests/support/heat/random-ticket.ts');
const { handCase, hoodCase, standCase } = await load('tests/support/heat/calibration-cases.ts');

const [draws = 200, first = 1] = process.argv.slice(2, 4).map(Number);
const wanted = process.argv.slice(4);
const LEAST = 85;
const MOST = 96;

/** Where a case comes from by its name: 'random-7', a board of the calibration bench, or a sample. */
function ticketOf(name) {
  const seed = /^random-(\d+)$/.exec(name);
  if (seed) return randomTicket(Number(seed[1]));
  const small = { hand: handCase, hood: hoodCase, stand: standCase }[name];
  return small ? small() : sampleTicket(name);
}

const names =
  wanted.length > 0 ? wanted : ['greenhouse-gateway', 'ferry-gate-controller', 'hand', 'hood', 'random-1', 'random-2'];
const percent = (part, whole) => ((100 * part) / whole).toFixed(0).padStart(9);
for (const name of names) {
  const { board, plan } = ticketOf(name);
  const began = performance.now();
  const { kinds, parts } = bandCoverage(board, plan, draws, first);
  const seconds = (performance.now() - began) / 1000;
  console.log(`\n${name}: ${draws} draws from seed ${first}, ${seconds.toFixed(0)} s`);
  console.log('kind of figure               figures covered %  below %  above %  mean square  mean half width');
  for (const [kind, row] of [...kinds].sort(([a], [b]) => (a < b ? -1 : 1))) {
    const covered = (100 * row.covered) / row.told;
    const verdict = covered < LEAST ? 'too narrow' : covered > MOST ? 'too wide' : '';
    console.log(
      [
        kind.padEnd(28),
        String(row.figures).padStart(7),
        percent(row.covered, row.told),
        percent(row.below, row.told),
        percent(row.above, row.told),
        (row.square / row.told).toFixed(2).padStart(11),
        (row.band / row.figures).toFixed(1).padStart(12),
        verdict,
      ].join(' '),
    );
  }
  const worst = [...parts].sort(([, a], [, b]) => a.covered / a.told - b.covered / b.told).slice(0, 3);
  const told = worst.map(([one, row]) => `${one} ${((100 * row.covered) / row.told).toFixed(0)} %`);
  console.log(`least covered temperatures: ${told.join(', ')}`);
}
