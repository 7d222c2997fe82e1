import type { Result } from '../../shared-types/problem.ts';
import type { App } from './app.ts';
import type { AppState } from './app-state.ts';

type About = NonNullable<AppState['study']>['about'];

/** Number of the last work asked for: one that was overtaken leaves the progress to the next. */
let last = 0;

/** Runs long work of main while its progress is shown; the work that is under way is ended first. */
export async function runStudy<T>(app: App, about: About, ask: () => Promise<Result<T>>): Promise<Result<T>> {
  last += 1;
  const mine = last;
  app.store.set((state) => ({ ...state, study: { about, share: 0 } }));
  const answer = await ask();
  if (mine === last) app.store.set((state) => ({ ...state, study: null }));
  return answer;
}

/** Asks main to end what is under way, if it is work of this kind; the answer then is 'cancelled'. */
export function cancelStudy(app: App, about: About): void {
  const { study, ticket } = app.store.get();
  if (study?.about === about && ticket) void app.backend.request('study.cancel', { id: ticket.id });
}
