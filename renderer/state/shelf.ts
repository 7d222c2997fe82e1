import type { Backend } from '../../shared-types/contract.ts';
import type { AppState } from './app-state.ts';
import type { Store } from './store.ts';

/** Reads the ticket shelf and the samples anew. */
export async function refreshShelf(store: Store<AppState>, backend: Backend): Promise<void> {
  const [shelf, samples] = await Promise.all([backend.request('shelf.list', {}), backend.request('samples.list', {})]);
  store.set((state) => ({
    ...state,
    shelf: {
      folder: shelf.ok ? shelf.value.folder : state.shelf.folder,
      cards: shelf.ok ? shelf.value.cards : [],
      samples: samples.ok ? samples.value.cards : [],
      state: 'ready',
      problem: shelf.ok ? (samples.ok ? null : samples.problem) : shelf.problem,
    },
  }));
}
