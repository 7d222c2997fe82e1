import type { Backend, MainEvent } from '../../shared-types/contract.ts';
import type { Problem } from '../../shared-types/problem.ts';
import type { Settings } from '../../shared-types/settings.ts';
import { type AppState, startingState, type ViewState } from './app-state.ts';
import { BOARD_TOOLS, type CanvasHandle } from './canvas-model.ts';
import { receive } from './evaluation-inbox.ts';
import { wordsOf } from './problem-words.ts';
import { createStore, type Store } from './store.ts';
import { createTickets, type Tickets } from './tickets.ts';
import { forgetView, keepViewNow } from './view-memory.ts';
import { type Bench, createBench } from './workbench.ts';

/** Everything the window's parts share. */
export type App = {
  store: Store<AppState>;
  backend: Backend;
  bench: Bench;
  tickets: Tickets;
  /** The mounted canvas; null before it is ready. */
  canvas: { current: CanvasHandle | null };
  setView(fields: Partial<ViewState>): void;
  changeSettings(fields: Partial<Settings>): void;
  notify(weight: 'problem' | 'warn' | 'note', title: string, text?: string): void;
  dismiss(id: number): void;
};

/** Joins store, workbench and backend; starts nothing: see `startApp`. */
export function createApp(backend: Backend): App {
  const store = createStore(startingState());
  const notices = noticeVerbs(store);
  const tickets = createTickets(store, backend, notices.problem);
  const bench = createBench(store, (document, when) => tickets.changed(document, when));
  const app: App = {
    store,
    backend,
    bench,
    tickets: {
      ...tickets,
      close() {
        keepViewNow(app);
        return tickets.close();
      },
      remove(id) {
        forgetView(app, id);
        return tickets.remove(id);
      },
    },
    canvas: { current: null },
    setView: (fields) => store.set((state) => ({ ...state, view: viewWith(state.view, fields) })),
    changeSettings(fields) {
      store.set((state) => ({ ...state, settings: { ...state.settings, ...fields } }));
      void backend.request('settings.write', { settings: fields }).then((answer) => {
        if (!answer.ok) notices.problem(answer.problem);
      });
    },
    notify: notices.notify,
    dismiss: notices.dismiss,
  };
  return app;
}

/** The view with other fields; another stage takes the tools away that draw on the board. */
function viewWith(view: ViewState, fields: Partial<ViewState>): ViewState {
  const next = { ...view, ...fields };
  const home =
    next.tool === 'match' ? 'photo' : (BOARD_TOOLS as readonly string[]).includes(next.tool) ? 'board' : null;
  return home && next.stage !== home ? { ...next, tool: 'select' } : next;
}

/** Reads settings and shelf and starts listening; gives back what stops it. */
export function startApp(app: App): () => void {
  const stop = app.backend.listen((event) => hear(app, event));
  void app.backend.request('settings.read', {}).then((answer) => {
    if (answer.ok) app.store.set((state) => ({ ...state, settings: answer.value }));
  });
  void app.tickets.refreshShelf().then(() => openStartTicket(app));
  return stop;
}

/** The ticket that the program was started with, and what stood in the way of it. */
async function openStartTicket(app: App): Promise<void> {
  const answer = await app.backend.request('about.read', {});
  if (!answer.ok) return;
  for (const problem of answer.value.startProblems) app.tickets.tell(problem);
  const { startTicket, startNotes } = answer.value;
  if (startTicket !== null) await app.tickets.open(startTicket, startNotes);
}

function hear(app: App, event: MainEvent): void {
  if (event.id !== app.store.get().ticket?.id) return;
  if (event.name === 'ticket.problem') {
    app.tickets.tell(event.problem);
    return;
  }
  if (event.name === 'ticket.saved') {
    app.tickets.saved(event);
    return;
  }
  if (event.name === 'study.progress') {
    app.store.set((state) =>
      state.study ? { ...state, study: { ...state.study, share: event.share, fit: event.fit } } : state,
    );
    return;
  }
  app.store.set((state) => ({ ...state, evaluation: receive(state.evaluation, event) }));
}

function noticeVerbs(store: Store<AppState>) {
  let lastId = 0;
  const notify: App['notify'] = (weight, title, text = '') => {
    lastId += 1;
    const notice = { id: lastId, weight, title, text };
    store.set((state) => {
      const others = state.notices.filter((one) => one.title !== title || one.text !== text);
      return { ...state, notices: [...others, notice].slice(-4) };
    });
  };
  return {
    notify,
    dismiss: (id: number) =>
      store.set((state) => ({ ...state, notices: state.notices.filter((one) => one.id !== id) })),
    problem: (problem: Problem) => notify('problem', ...wordsOf(problem)),
  };
}
