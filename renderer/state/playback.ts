import type { Backend } from '../../shared-types/contract.ts';
import type { HeatRun } from '../../shared-types/plan.ts';
import type { AppState, ShownMoment } from './app-state.ts';
import type { Store } from './store.ts';

export const runSeconds = (run: HeatRun): number => run.segments.reduce((sum, segment) => sum + segment.seconds, 0);

/** The run that is played: the shown one, else the first. */
export function playedRun({ ticket, view }: AppState): HeatRun | null {
  const runs = ticket?.document.plan.heatRuns ?? [];
  return runs.find((run) => run.id === view.shownRunId) ?? runs[0] ?? null;
}

/** Revision whose moments can be asked for; null: the fine figures of the present plan are not there. */
export function playableRevision({ evaluation }: AppState): number | null {
  const shown = evaluation.assessment?.evaluation;
  return shown?.phase === 'fine' && shown.revision >= evaluation.wantedRevision ? shown.revision : null;
}

/** The moment that the map shows; null: the worst over time. A moment of another evaluation or run is not shown. */
export function momentShown(state: AppState): ShownMoment | null {
  const { moment, view, evaluation } = state;
  if (!moment || view.playS === null || moment.runId !== view.shownRunId) return null;
  return moment.revision === evaluation.assessment?.evaluation.revision ? moment : null;
}

/** Puts the time in a run; null: back to the worst over time. */
export function seek(store: Store<AppState>, playS: number | null): void {
  store.set((state) => {
    const run = playedRun(state);
    if (playS === null || !run) return { ...state, moment: null, view: { ...state.view, playS: null, playing: false } };
    const atS = Math.min(runSeconds(run), Math.max(0, playS));
    return { ...state, view: { ...state.view, playS: atS, shownRunId: run.id } };
  });
}

/** Starts at the beginning when the run is over, pauses when it plays. */
export function togglePlaying(store: Store<AppState>): void {
  const state = store.get();
  const run = playedRun(state);
  if (!run) return;
  if (state.view.playing) {
    store.set({ ...state, view: { ...state.view, playing: false } });
    return;
  }
  const over = state.view.playS === null || state.view.playS >= runSeconds(run) - 0.5;
  seek(store, over ? 0 : state.view.playS);
  store.set((next) => ({ ...next, view: { ...next.view, playing: true } }));
}

/** A whole run plays in about so many seconds. */
const PLAY_IN_S = 20;
const LEAST_TICK_MS = 60;

/**
 * Follows the time with maps: one question at a time, the newest time next. While it plays the time moves on when
 * the map of the last one has come, so that a slow machine shows fewer maps, not late ones.
 */
export function followPlayback(store: Store<AppState>, backend: Backend): () => void {
  let asking = false;
  let asked: readonly unknown[] = [];
  let stopped = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let tickedAt = 0;

  const look = () => {
    const state = store.get();
    const { ticket, view } = state;
    const revision = playableRevision(state);
    if (stopped || asking || !ticket || view.playS === null || revision === null || !view.shownRunId) return;
    const wanted = [ticket.id, revision, view.shownRunId, view.playS];
    if (wanted.every((value, index) => value === asked[index])) {
      if (view.playing) schedule();
      return;
    }
    asked = wanted;
    asking = true;
    const { id } = ticket;
    const [runId, atS] = [view.shownRunId, view.playS];
    void backend.request('evaluation.moment', { id, revision, runId, atS }).then((answer) => {
      asking = false;
      if (stopped) return;
      if (answer.ok && store.get().view.playS !== null) {
        store.set((now) => ({ ...now, moment: { ...answer.value, runId, revision } }));
      }
      if (!answer.ok) store.set((now) => ({ ...now, view: { ...now.view, playing: false } }));
      look();
    });
  };

  function schedule(): void {
    if (timer !== undefined) return;
    const since = Date.now() - tickedAt;
    timer = setTimeout(
      () => {
        timer = undefined;
        tick();
      },
      Math.max(0, LEAST_TICK_MS - since),
    );
  }

  function tick(): void {
    const state = store.get();
    const run = playedRun(state);
    if (!state.view.playing || state.view.playS === null || !run) return;
    const passedS = Math.min(0.25, (Date.now() - tickedAt) / 1000);
    tickedAt = Date.now();
    const seconds = runSeconds(run);
    const next = state.view.playS + passedS * Math.max(5, seconds / PLAY_IN_S);
    seek(store, next);
    if (next >= seconds) store.set((now) => ({ ...now, view: { ...now.view, playing: false } }));
  }

  const stop = store.subscribe(look);
  return () => {
    stopped = true;
    clearTimeout(timer);
    stop();
  };
}
