import type { Backend, MainEvent, OpenedTicket } from '../../shared-types/contract.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import type { Problem, Result } from '../../shared-types/problem.ts';
import type { SheetFormat } from '../../shared-types/sheet-format.ts';
import { frameWords as words } from '../../shared-types/words/window/frame.ts';
import { emptyHistory } from '../editing/history.ts';
import { type AppState, noEvaluation, nothingSelected, startingView, type TicketState } from './app-state.ts';
import { createDocumentSync, type DocumentSync } from './document-sync.ts';
import { createAsker, run } from './evaluation-asking.ts';
import { matters } from './evaluation-inbox.ts';
import { refreshShelf } from './shelf.ts';
import type { Store } from './store.ts';
import { recallView } from './view-memory.ts';

/** A file as the contract wants it. */
export type NamedBytes = { name: string; bytes: Uint8Array<ArrayBuffer> };

/** Opening, keeping and closing tickets. A promise of true: the ticket is open now. */
export type Tickets = {
  refreshShelf(): Promise<void>;
  /** `notes`: what is to be told of it besides. */
  open(id: string, notes?: OpenedTicket['notes']): Promise<boolean>;
  openFile(file: NamedBytes): Promise<boolean>;
  fromSample(id: string, number: string): Promise<boolean>;
  /** An earlier version of a ticket, as a ticket of its own beside it. */
  openVersion(id: string, version: string): Promise<boolean>;
  create(number: string, document: TicketDocument): Promise<boolean>;
  remove(id: string): Promise<void>;
  /** Sends what is left, saves and goes back to the shelf. */
  close(): Promise<void>;
  save(): Promise<void>;
  cancelEvaluation(): void;
  runEvaluation(): void;
  /** The sheet of the newest document as bytes (pages as pictures: a ZIP); null when it could not be made (the user was told). */
  renderWorkMap(
    format: SheetFormat,
  ): Promise<{ fileName: string; bytes: Uint8Array<ArrayBuffer>; pages: number } | null>;
  /** Every change made so far has reached the program behind the window. */
  flush(): Promise<void>;
  changed(document: TicketDocument, when: 'now' | 'soon'): void;
  saved(event: Extract<MainEvent, { name: 'ticket.saved' }>): void;
  tell(problem: Problem): void;
};

export function createTickets(store: Store<AppState>, backend: Backend, tell: (problem: Problem) => void): Tickets {
  let sync: DocumentSync | null = null;
  const asker = createAsker(store, backend);

  const take = async (answer: Promise<Result<OpenedTicket>>, notes: OpenedTicket['notes'] = []): Promise<boolean> => {
    store.set((state) => ({ ...state, busy: true }));
    const opened = await answer;
    store.set((state) => ({ ...state, busy: false }));
    if (!opened.ok) {
      tell(opened.problem);
      return false;
    }
    sync?.stop();
    sync = syncFor(store, backend, opened.value, tell, asker.ask);
    store.set((state) => withTicket(state, { ...opened.value, notes: [...(opened.value.notes ?? []), ...notes] }));
    run(store, backend, 'both');
    return true;
  };

  return {
    refreshShelf: () => refreshShelf(store, backend),
    open: (id, notes) => take(backend.request('ticket.open', { id }), notes),
    openFile: (file) => take(backend.request('ticket.openFile', { file })),
    fromSample: (id, number) => take(backend.request('ticket.fromSample', { id, number })),
    openVersion: (id, version) => take(backend.request('ticket.openVersion', { id, version })),
    create: (number, document) => take(backend.request('ticket.new', { number, document })),
    async remove(id) {
      const answer = await backend.request('ticket.remove', { id });
      if (!answer.ok) tell(answer.problem);
      await refreshShelf(store, backend);
    },
    async close() {
      await sync?.flush();
      sync?.stop();
      sync = null;
      const id = store.get().ticket?.id;
      store.set((state) => ({ ...state, ...withoutTicket }));
      if (!id) return;
      const answer = await backend.request('ticket.close', { id });
      if (!answer.ok) tell(answer.problem);
      await refreshShelf(store, backend);
    },
    async save() {
      await sync?.flush();
      const id = store.get().ticket?.id;
      const answer = id ? await backend.request('ticket.save', { id }) : null;
      if (answer && !answer.ok) tell(answer.problem);
      else if (answer) markSaved(store, 'filed', answer.value.savedAt);
    },
    cancelEvaluation() {
      const id = store.get().ticket?.id;
      if (id) void backend.request('evaluation.cancel', { id });
      store.set((state) => ({ ...state, evaluation: { ...state.evaluation, running: null, cancelled: true } }));
    },
    runEvaluation: () => run(store, backend, 'both'),
    async renderWorkMap(format) {
      await sync?.flush();
      return renderWorkMap(store, backend, tell, format);
    },
    flush: async () => sync?.flush(),
    changed(document, when) {
      sync?.changed(document, when);
      // A gesture's last sending may have been its last change: the fine map is still owed at its end.
      if (when === 'now') void sync?.flush().then(() => asker.settle());
    },
    saved(event) {
      if (event.conflictCopy) tell({ code: 'changed-elsewhere', detail: { copy: event.conflictCopy } });
      const { ticket } = store.get();
      if (ticket && event.revision >= ticket.revision && ticket.save.state !== 'changed')
        markSaved(store, event.state === 'file' ? 'filed' : 'kept', event.savedAt);
    },
    tell,
  };
}

async function renderWorkMap(
  store: Store<AppState>,
  backend: Backend,
  tell: (problem: Problem) => void,
  format: SheetFormat,
) {
  const id = store.get().ticket?.id;
  const answer = id ? await backend.request('workMap.render', { id, format }) : null;
  if (answer?.ok) return answer.value as Awaited<ReturnType<Tickets['renderWorkMap']>>;
  if (answer) tell(answer.problem);
  return null;
}

function syncFor(
  store: Store<AppState>,
  backend: Backend,
  opened: OpenedTicket,
  tell: (problem: Problem) => void,
  ask: () => void,
): DocumentSync {
  const { id, revision, document } = opened;
  return createDocumentSync(
    {
      patch: (base, patches) => backend.request('ticket.patch', { id, base, patches }),
      replace: (whole) => backend.request('ticket.replace', { id, document: whole as OpenedTicket['document'] }),
    },
    {
      sent(next, patches, newest) {
        const heat = patches.some(matters);
        store.set((state) => acknowledged(state, next, heat, newest));
        if (heat) ask();
      },
      refused: tell,
    },
    { revision, document },
  );
}

function acknowledged(state: AppState, revision: number, heat: boolean, newest: boolean): AppState {
  if (!state.ticket) return state;
  const wantedRevision = heat ? revision : state.evaluation.wantedRevision;
  return {
    ...state,
    ticket: { ...state.ticket, revision, save: newest ? { ...state.ticket.save, state: 'kept' } : state.ticket.save },
    evaluation: { ...state.evaluation, wantedRevision },
  };
}

const withoutTicket = {
  ticket: null,
  history: emptyHistory,
  gesture: null,
  selection: nothingSelected,
  evaluation: noEvaluation,
  menu: null,
  dialog: null,
  search: null,
};

function withTicket(state: AppState, opened: OpenedTicket): AppState {
  const { id, fileName, document, revision, recovered, notes = [] } = opened;
  const side = document.plan.sites[0]?.side ?? 'top';
  const notices = recovered
    ? [...state.notices, { id: -1, weight: 'note' as const, title: words.recoveredTitle, text: words.recoveredText }]
    : state.notices;
  const ticket: TicketState = {
    id,
    fileName,
    document,
    revision,
    save: { state: recovered ? 'kept' : 'filed', at: null },
  };
  const left = recallView(state, ticket);
  return {
    ...state,
    ...withoutTicket,
    ...(left && { selection: left.selection }),
    ...(notes.length > 0 ? { dialog: 'notes' as const, openedNotes: notes } : {}),
    notices,
    ticket,
    evaluation: { ...noEvaluation, wantedRevision: revision },
    view: {
      ...startingView,
      side: left?.side ?? side,
      stage: left?.stage ?? (document.plan.sites.length > 0 ? 'heat' : 'plan'),
      panelOpen: state.view.panelOpen,
    },
  };
}

function markSaved(store: Store<AppState>, how: 'kept' | 'filed', at: string): void {
  store.set((state) => (state.ticket ? { ...state, ticket: { ...state.ticket, save: { state: how, at } } } : state));
}
