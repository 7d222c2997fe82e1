import type { RememberedView } from '../../shared-types/remembered-view.ts';
import type { App } from './app.ts';
import { type AppState, nothingSelected, type Selection, STAGES, type Stage } from './app-state.ts';
import { pruneSelection } from './selection.ts';

/** Tickets kept in mind; the ones left longest ago are forgotten. */
const MOST_KEPT = 60;
/** A view that stood still for so long is kept. */
const LOOK_EVERY_MS = 1500;
/** So many chosen parts are kept at most: more was a stroke over the board, not a choice to come back to. */
const MOST_PARTS = 200;

type Left = { stage: Stage; side: AppState['view']['side']; selection: Selection };

/** How a ticket was left, as far as its document still has what was chosen; null: not known. */
export function recallView(
  { settings }: Pick<AppState, 'settings'>,
  ticket: NonNullable<AppState['ticket']>,
): Left | null {
  const kept = settings.rememberedViews.find(({ ticketId }) => ticketId === ticket.id);
  const stage = STAGES.find((name) => name === kept?.stage);
  if (!kept || !stage) return null;
  const { side, siteId, watchId, coverId } = kept;
  const selection = { ...nothingSelected, parts: new Set(kept.parts), siteId, watchId, coverId };
  return { stage, side, selection: pruneSelection(selection, ticket.document) };
}

/** Where the eye was on the open ticket; null: on the whole board, or not known. */
export const recallEye = ({ settings, ticket }: AppState): RememberedView['eye'] =>
  settings.rememberedViews.find(({ ticketId }) => ticketId === ticket?.id)?.eye ?? null;

/** Looks now and then how the open ticket is seen, and keeps it in the settings. Gives back what stops it. */
export function keepViews(app: App): () => void {
  let before = '';
  const look = (settled: boolean) => {
    const seen = seenOf(app);
    if (!seen) return;
    const text = JSON.stringify(seen);
    const rests = text === before || settled;
    before = text;
    if (rests) keep(app, seen);
  };
  const every = setInterval(() => look(false), LOOK_EVERY_MS);
  const now = () => look(true);
  // The window may be closed from here on without another word.
  window.addEventListener('pagehide', now);
  window.addEventListener('blur', now);
  return () => {
    clearInterval(every);
    window.removeEventListener('pagehide', now);
    window.removeEventListener('blur', now);
  };
}

/** Keeps how the open ticket is seen now: before it is closed. */
export function keepViewNow(app: App): void {
  const seen = seenOf(app);
  if (seen) keep(app, seen);
}

/** A ticket that goes: another may get its name. */
export function forgetView(app: App, id: string): void {
  const { rememberedViews } = app.store.get().settings;
  const others = rememberedViews.filter(({ ticketId }) => ticketId !== id);
  if (others.length < rememberedViews.length) app.changeSettings({ rememberedViews: others });
}

function seenOf({ store, canvas }: App): RememberedView | null {
  const { ticket, view, selection } = store.get();
  if (!ticket || !canvas.current) return null;
  const { siteId, watchId, coverId } = selection;
  const parts = selection.parts.size > MOST_PARTS ? [] : [...selection.parts];
  const { stage, side } = view;
  return { ticketId: ticket.id, stage, side, parts, siteId, watchId, coverId, eye: canvas.current.eye() };
}

function keep(app: App, seen: RememberedView): void {
  const { rememberedViews } = app.store.get().settings;
  const known = rememberedViews.find(({ ticketId }) => ticketId === seen.ticketId);
  if (JSON.stringify(known) === JSON.stringify(seen)) return;
  const others = rememberedViews.filter((one) => one !== known);
  app.changeSettings({ rememberedViews: [...others, seen].slice(-MOST_KEPT) });
}
