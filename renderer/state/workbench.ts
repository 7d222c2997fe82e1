import type { TicketDocument } from '../../shared-types/plan.ts';
import { record, redo, type Travelled, undo } from '../editing/history.ts';
import type { AppState, Selection } from './app-state.ts';
import { nothingSelected } from './app-state.ts';
import type { Edit, Pick, Workbench } from './canvas-model.ts';
import { canvasModelOf } from './canvas-model-of.ts';
import { pruneSelection } from './selection.ts';
import type { Store } from './store.ts';

export type DocumentListener = (document: TicketDocument, when: 'now' | 'soon') => void;

/** What the whole window may do to the document. Tools see it as `Workbench`. */
export type Bench = Workbench & { undo(): void; redo(): void; clearSelection(): void };

/** The workbench on a store; `changed` hears of every new document, a running gesture's as 'soon'. */
export function createBench(store: Store<AppState>, changed: DocumentListener): Bench {
  const put = (document: TicketDocument, rest: Partial<AppState>, when: 'now' | 'soon') => {
    const before = store.get();
    if (!before.ticket) return;
    const differs = before.ticket.document !== document;
    const save = differs ? { ...before.ticket.save, state: 'changed' as const } : before.ticket.save;
    store.set({
      ...before,
      ...rest,
      ticket: { ...before.ticket, document, save },
      selection: pruneSelection(before.selection, document),
    });
    if (differs || when === 'now') changed(document, when);
  };

  const commit = () => {
    const { ticket, gesture, history } = store.get();
    if (!ticket || !gesture) return;
    const next = record(history, gesture.label, gesture.base, ticket.document);
    put(ticket.document, { gesture: null, history: next }, 'now');
  };

  const travel = (way: typeof undo) => {
    commit();
    const { ticket, history } = store.get();
    const step: Travelled | null = ticket && way(history, ticket.document);
    if (step) put(step.document, { history: step.history }, 'now');
  };

  return {
    model: () => canvasModelOf(store.get()),
    begin(label) {
      commit();
      const { ticket } = store.get();
      if (ticket) store.set((state) => ({ ...state, gesture: { label, base: ticket.document } }));
    },
    preview(edit: Edit) {
      const { gesture } = store.get();
      if (gesture) put(edit(gesture.base), {}, 'soon');
    },
    commit,
    cancel() {
      const { gesture } = store.get();
      if (gesture) put(gesture.base, { gesture: null }, 'now');
    },
    apply(label, edit) {
      commit();
      const { ticket, history } = store.get();
      if (!ticket) return;
      const next = edit(ticket.document);
      if (next !== ticket.document) put(next, { history: record(history, label, ticket.document, next) }, 'now');
    },
    undo: () => travel(undo),
    redo: () => travel(redo),
    ...viewVerbs(store),
  };
}

function viewVerbs(store: Store<AppState>) {
  return {
    select(picks: readonly Pick[], mode: 'replace' | 'add' | 'toggle') {
      store.set((state) => ({ ...state, selection: selectPicks(state.selection, picks, mode) }));
    },
    clearSelection: () => store.set((state) => ({ ...state, selection: nothingSelected })),
    useTool: (tool: AppState['view']['tool']) => store.set((state) => ({ ...state, view: { ...state.view, tool } })),
    setOutline: (fields: Partial<AppState['view']['outline']>) =>
      store.set((state) => ({ ...state, view: { ...state.view, outline: { ...state.view.outline, ...fields } } })),
    choosePair: (pairId: string | null) => store.set((state) => ({ ...state, view: { ...state.view, pairId } })),
    setPlacing: ((fields) =>
      store.set((state) => ({
        ...state,
        view: { ...state.view, placing: { ...state.view.placing, ...fields } },
      }))) as Workbench['setPlacing'],
    hint: (text: string) => sayHint(store, text),
    hover: ((at, temperatureC, pick) =>
      store.set((state) => ({
        ...state,
        view: { ...state.view, hover: at && { at, temperatureC, pick } },
      }))) as Workbench['hover'],
    openMenu: ((pick, page) =>
      store.set((state) => ({
        ...state,
        selection: selectUnder(state.selection, pick),
        menu: { pick, page },
      }))) as Workbench['openMenu'],
  };
}

/** A menu works on what was under the pointer; a selection that holds it stays whole. */
function selectUnder(before: Selection, pick: Pick | null): Selection {
  if (!pick || (pick.kind === 'part' && before.parts.has(pick.refdes))) return before;
  return selectPicks(before, [pick], 'replace');
}

/** The selection after picking: parts add up, a site or a watch point is one at a time. */
export function selectPicks(before: Selection, picks: readonly Pick[], mode: 'replace' | 'add' | 'toggle'): Selection {
  const parts = new Set(mode === 'replace' ? [] : before.parts);
  let { siteId, watchId, coverId } = mode === 'replace' ? nothingSelected : before;
  for (const pick of picks) {
    if (pick.kind === 'part') {
      if (mode === 'toggle' && parts.has(pick.refdes)) parts.delete(pick.refdes);
      else parts.add(pick.refdes);
    }
    if (pick.kind === 'site') siteId = mode === 'toggle' && siteId === pick.siteId ? null : pick.siteId;
    if (pick.kind === 'cover') coverId = mode === 'toggle' && coverId === pick.id ? null : pick.id;
    if (pick.kind === 'watch') watchId = mode === 'toggle' && watchId === pick.tagId ? null : pick.tagId;
  }
  return { parts, siteId, watchId, coverId };
}

const HINT_MS = 4000;

/** Says a sentence in the status line; it goes by itself. */
export function sayHint(store: Store<AppState>, text: string): void {
  const say = (hint: string | null) => store.set((state) => ({ ...state, view: { ...state.view, hint } }));
  say(text);
  setTimeout(() => store.get().view.hint === text && say(null), HINT_MS);
}
