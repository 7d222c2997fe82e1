// Release of a site's drag to its coarse map, through the real local door and its socket. Needs `npm run build` first.
import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { runnerImport } from 'vite';
import { WebSocket } from 'ws';
import { DOOR_FILE, openDoor } from './door.mjs';

const root = resolve(import.meta.dirname, '../..');
const SAMPLE = 'greenhouse-gateway';
const RELEASES = 20;
const MOVES_A_DRAG = 6;
const MOVE_EVERY_MS = 50;
const ANSWER_WITHIN_MS = 60_000;

const load = async (path) => (await runnerImport(join(root, path), { logLevel: 'error' })).module;

async function connect(address) {
  const { createFrameBackend } = await load('renderer/backend/frame-backend.ts');
  const { socketCarrier } = await load('renderer/backend/socket-carrier.ts');
  const { origin } = new URL(address);
  const answer = await fetch(address, { redirect: 'manual' });
  const headers = { Cookie: (answer.headers.get('set-cookie') ?? '').split(';')[0], Origin: origin };
  return createFrameBackend(socketCarrier(new WebSocket(`${origin.replace('http', 'ws')}/contract`, { headers })));
}

const answered = (answer) => {
  if (!answer.ok) throw new Error(JSON.stringify(answer.problem));
  return answer.value;
};

/** A ticket of the sample, and what the window does to it: the patch of a move, then the question for figures. */
async function openSample(backend, sample) {
  const { cards } = answered(await backend.request('samples.list', {}));
  const card = cards.find((one) => one.id.includes(sample) || one.fileName.includes(sample));
  if (!card) throw new Error(`no sample ${sample}`);
  const opened = answered(await backend.request('ticket.fromSample', { id: card.id, number: 'DRAG' }));
  let { id, revision } = opened;
  return {
    centre: opened.document.plan.sites[0].area,
    async move(x, phase) {
      const patches = [{ op: 'replace', path: ['plan', 'sites', 0, 'area', 'x'], value: x }];
      revision = answered(await backend.request('ticket.patch', { id, base: revision, patches })).revision;
      answered(await backend.request('evaluation.run', { id, phase }));
      return revision;
    },
  };
}

/** Resolves with the time at which the coarse map of a revision came; a door that stays silent is an error. */
function coarseMaps(backend) {
  const came = new Map();
  let wake = () => undefined;
  backend.listen((event) => {
    if (event.name !== 'evaluation.result' || event.phase !== 'coarse') return;
    came.set(event.revision, performance.now());
    wake();
  });
  return async (revision) => {
    const end = performance.now() + ANSWER_WITHIN_MS;
    while (!came.has(revision)) {
      if (performance.now() > end) throw new Error(`no coarse map of revision ${revision}`);
      await Promise.race([pause(1000), new Promise((resolve) => (wake = resolve))]);
    }
    return came.get(revision);
  };
}

/** Drags the first site about and lets go, again and again; ms from each release to its coarse map, sorted. */
async function dragAbout(backend, sample) {
  const ticket = await openSample(backend, sample);
  const mapOf = coarseMaps(backend);
  await mapOf(await ticket.move(ticket.centre.x + 0.01, 'both'));
  const taken = [];
  for (let release = 1; release <= RELEASES; release++) {
    const start = ticket.centre.x + 0.1 * release;
    for (let move = 1; move < MOVES_A_DRAG; move++) {
      await ticket.move(start + 0.3 * move, 'coarse');
      await pause(MOVE_EVERY_MS);
    }
    const released = performance.now();
    taken.push((await mapOf(await ticket.move(start + 0.3 * MOVES_A_DRAG, 'both'))) - released);
  }
  return taken.sort((a, b) => a - b);
}

/** One line of figures. */
export async function dragFigures(sample = SAMPLE) {
  if (!existsSync(DOOR_FILE)) return 'release of a drag: not measured, dist/ is missing (npm run build)';
  const door = await openDoor('drag');
  try {
    const taken = await dragAbout(await connect(door.address), sample);
    const [least, middle, most] = [taken[0], taken[taken.length >> 1], taken.at(-1)].map((ms) => ms.toFixed(0));
    return `${sample}: release of a drag to its coarse map ${middle} ms (${least} to ${most}, ${taken.length} releases)`;
  } finally {
    await door.close();
  }
}

if (import.meta.filename === process.argv[1]) {
  console.log(await dragFigures(process.argv[2]));
  process.exit(0);
}
