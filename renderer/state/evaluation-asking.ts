import type { Backend } from '../../shared-types/contract.ts';
import { type AppState, noEvaluation } from './app-state.ts';
import type { Store } from './store.ts';

/** Asks for the coarse map while a gesture runs and for the fine one when it is over. */
export function createAsker(store: Store<AppState>, backend: Backend) {
  let owed = false;
  const ask = () => {
    owed = store.get().gesture !== null;
    run(store, backend, owed ? 'coarse' : 'both');
  };
  return {
    ask,
    settle() {
      if (owed && !store.get().gesture) ask();
    },
  };
}

/** Asks for figures. A board without a heat run has none to ask for. */
export function run(store: Store<AppState>, backend: Backend, phase: 'coarse' | 'both'): void {
  const { ticket } = store.get();
  if (!ticket) return;
  if (ticket.document.plan.heatRuns.length === 0) {
    store.set((state) => ({
      ...state,
      evaluation: { ...noEvaluation, wantedRevision: state.evaluation.wantedRevision },
    }));
    return;
  }
  store.set((state) => ({
    ...state,
    evaluation: {
      ...state.evaluation,
      cancelled: false,
      running: state.evaluation.running ?? { phase: 'coarse', share: 0 },
    },
  }));
  void backend.request('evaluation.run', { id: ticket.id, phase }).then((answer) => {
    if (answer.ok) return;
    store.set((state) => ({ ...state, evaluation: { ...state.evaluation, running: null, problem: answer.problem } }));
  });
}
