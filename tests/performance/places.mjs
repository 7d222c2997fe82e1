// What the greedy choice of thermocouple places loses against the best set, every set tried: share of what could be learnt.
// npm run bench:places [cases...]
import { join, resolve } from 'node:path';
import { runnerImport } from 'vite';

const root = resolve(import.meta.dirname, '../..');
const load = async (path) => (await runnerImport(join(root, path), { logLevel: 'error' })).module;
const { bandRuns } = await load('main/heat/uncertainty/band-runs.ts');
const { beliefOf } = await load('main/heat/uncertainty/calibrated.ts');
const { withBands } = await load('main/heat/uncertainty/with-bands.ts');
const { candidatesOf, choiceOf, withCandidates } = await load('main/planning/thermocouples.ts');
const { lossOfGreed } = await load('tests/support/heat/exhaustive-places.ts');
const { ticketOf: sampleTicket } = await load('tests/support/stories.ts');
const { randomTicket } = await load('tests/support/heat/random-ticket.ts');

const wanted = process.argv.slice(2);
const names =
  wanted.length > 0 ? wanted : ['ferry-gate-controller', 'weighbridge-terminal', 'random-1', 'random-2', 'random-3'];
console.log('case                     candidates  loss % with 1, 2, 3 places beside the coldest corners');
for (const name of names) {
  const seed = /^random-(\d+)$/.exec(name);
  const { board, plan } = seed ? randomTicket(Number(seed[1])) : sampleTicket(name);
  const candidates = candidatesOf(board, plan);
  const runs = bandRuns(board, withCandidates(plan, candidates), beliefOf(board, plan));
  if (!runs.ok) throw new Error(JSON.stringify(runs.problem));
  const choice = choiceOf(withBands(runs.value.base, runs.value), runs.value, candidates);
  const losses = [1, 2, 3].map((count) => (100 * lossOfGreed(choice, count)).toFixed(2).padStart(6));
  console.log(`${name.padEnd(28)} ${String(choice.readings.length).padStart(6)}  ${losses.join(' ')}`);
}
