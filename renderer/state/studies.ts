import type { Result } from '../../shared-types/problem.ts';
import type { App } from './app.ts';

/** Runs long work of main while its progress is shown; the work that is under way is ended first. */
export async function runStudy<T>(app: App, ask: () => Promise<Result<T>>): Promise<Result<T>> {
  const mine = { share: 0 };
  app.store.set((state) => ({ ...state, study: mine }));
  running = mine;
  const answer = await ask();
  if (running === mine) app.store.set((state) => ({ ...state, study: null }));
  return answer;
}

/** The work whose end takes the progress away: one that was overtaken leaves it to the next. */
let running: object | null = null;

/** Asks main to end what is under way; the answer then is 'cancelled'. */
export function cancelStudy(app: App): void {
  const { study, ticket } = app.store.get();
  if (study && ticket) void app.backend.request('study.cancel', { id: ticket.id });
}
