import { expect, test } from 'vitest';
import { type AppState, startingState } from '../../../../renderer/state/app-state.ts';
import { followPlayback, momentShown, runSeconds, seek, togglePlaying } from '../../../../renderer/state/playback.ts';
import { createStore } from '../../../../renderer/state/store.ts';
import type { Backend } from '../../../../shared-types/contract.ts';
import type { Assessment } from '../../../../shared-types/evaluation.ts';
import { fail, succeed } from '../../../../shared-types/problem.ts';
import { smallTicket } from '../../../support/shell/small-ticket.ts';

const grid = { columns: 1, rows: 1, cellMm: 1, originX: 0, originY: 0, grownFromMm: null };
const assessed = (revision: number, phase: 'coarse' | 'fine') =>
  ({ evaluation: { revision, phase, runs: [] } }) as unknown as Assessment;

function setUp(stale = false) {
  const document = smallTicket();
  const base = startingState();
  const store = createStore<AppState>({
    ...base,
    ticket: { id: 'a', fileName: 'a', document, revision: 3, save: { state: 'filed' as const, at: null } },
    evaluation: { ...base.evaluation, assessment: assessed(3, 'fine'), wantedRevision: 3 },
  });
  const asked: { revision: number; runId: string; atS: number; answer: () => Promise<void> }[] = [];
  const backend = {
    request: (_name: string, input: { revision: number; runId: string; atS: number }) =>
      new Promise((resolve) => {
        const value = { atS: input.atS, grid, top: new Float32Array(1), bottom: new Float32Array(1) };
        asked.push({
          ...input,
          answer: async () => {
            resolve(stale ? fail('stale-evaluation') : succeed(value));
            await new Promise((over) => setTimeout(over, 0));
          },
        });
      }),
  } as unknown as Backend;
  const stop = followPlayback(store, backend);
  return { store, asked, stop, run: document.plan.heatRuns[0] };
}

test('one question at a time, and the newest time next', async () => {
  const { store, asked, run } = setUp();
  for (const atS of [1, 2, 3, 4]) seek(store, atS);
  expect(asked.map((one) => one.atS)).toEqual([1]);
  await asked[0].answer();
  expect(asked.map((one) => one.atS)).toEqual([1, 4]);
  await asked[1].answer();
  expect(momentShown(store.get())).toMatchObject({ atS: 4, runId: run.id, revision: 3 });
  expect(asked).toHaveLength(2);
});

test('rest brings the worst over time back, also when a map is still on its way', async () => {
  const { store, asked } = setUp();
  seek(store, 9);
  seek(store, null);
  await asked[0].answer();
  expect(momentShown(store.get())).toBeNull();
});

test('the time stays within the run, and choosing one shows the run that is played', () => {
  const { store, run } = setUp();
  seek(store, 1e6);
  expect(store.get().view).toMatchObject({ playS: runSeconds(run), shownRunId: run.id });
  seek(store, -5);
  expect(store.get().view.playS).toBe(0);
});

test('a moment of another evaluation or run is not shown; newer figures are asked anew', async () => {
  const { store, asked } = setUp();
  seek(store, 5);
  await asked[0].answer();
  const shown = store.get();
  store.set({ ...shown, view: { ...shown.view, shownRunId: 'other' } });
  expect(momentShown(store.get())).toBeNull();
  await asked[1].answer();
  store.set({ ...shown, evaluation: { ...shown.evaluation, assessment: assessed(4, 'coarse'), wantedRevision: 4 } });
  expect(momentShown(store.get())).toBeNull();
  const before = asked.length;
  store.set({ ...shown, evaluation: { ...shown.evaluation, assessment: assessed(4, 'fine'), wantedRevision: 4 } });
  expect(asked.slice(before).map((one) => [one.revision, one.atS])).toEqual([[4, 5]]);
});

test('a refusal ends the playing; a run that is over plays from its beginning', async () => {
  const { store, asked, run, stop } = setUp(true);
  seek(store, runSeconds(run));
  togglePlaying(store);
  expect(store.get().view).toMatchObject({ playS: 0, playing: true });
  await asked[0].answer();
  expect(store.get().view.playing).toBe(false);
  stop();
});
