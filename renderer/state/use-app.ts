import { createContext, useContext, useRef, useSyncExternalStore } from 'react';
import type { TicketDocument } from '../../shared-types/plan.ts';
import type { App } from './app.ts';
import type { AppState } from './app-state.ts';
import type { Edit } from './canvas-model.ts';
import { noDocument } from './canvas-model-of.ts';

export const AppContext = createContext<App | null>(null);

export function useApp(): App {
  const app = useContext(AppContext);
  if (!app) throw new Error('AppContext is missing');
  return app;
}

/**
 * A piece of the window's state; the component wakes only when the piece changes. Pieces that are made anew on each
 * reading are compared field by field.
 */
export function useAppState<T>(select: (state: AppState) => T): T {
  const { store } = useApp();
  const last = useRef<{ value: T } | null>(null);
  const read = () => {
    const value = select(store.get());
    if (last.current && sameFields(last.current.value, value)) return last.current.value;
    last.current = { value };
    return value;
  };
  return useSyncExternalStore(store.subscribe, read);
}

function sameFields(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (!isPlain(a) || !isPlain(b)) return false;
  const names = Object.keys(a);
  return names.length === Object.keys(b).length && names.every((name) => Object.is(a[name], b[name]));
}

const isPlain = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype;

/** The open ticket's document. */
export function useDocument(): TicketDocument {
  return useAppState((state) => state.ticket?.document ?? noDocument);
}

/** `onType` and `onDone` of a text field whose words go into the document as one undo step. */
export function useTypedEdit(label: string, edit: (value: string) => Edit) {
  const { bench, store } = useApp();
  const preview = (value: string) => {
    if (store.get().gesture?.label !== label) bench.begin(label);
    bench.preview(edit(value));
  };
  return {
    onType: preview,
    onDrop: () => {
      if (store.get().gesture?.label === label) bench.cancel();
    },
    onDone: (value: string) => {
      preview(value);
      bench.commit();
    },
  };
}
