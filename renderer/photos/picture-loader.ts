import type { BoardPhoto } from '../../shared-types/photo.ts';
import type { App } from '../state/app.ts';
import type { AppState } from '../state/app-state.ts';
import { askPhotoWorker } from './ask-worker.ts';
import type { PictureLevels } from './photo-messages.ts';

/** Decoded pictures kept at once; each takes up to 84 MB. */
const MOST_KEPT = 4;

type Working = BoardPhoto['working'];

/** Decodes the pictures of photos that are to be seen, and lets go of others. Gives back what stops it. */
export function loadPictures(app: App): () => void {
  const asked = new Set<string>();
  let ticketId: string | null = null;
  const look = () => {
    const state = app.store.get();
    if ((state.ticket?.id ?? null) !== ticketId) {
      ticketId = state.ticket?.id ?? null;
      asked.clear();
      release(app, () => true);
    }
    for (const working of wantedPictures(state)) {
      if (asked.has(working.sha256)) continue;
      asked.add(working.sha256);
      void load(app, ticketId, working).then((gone) => {
        for (const sha256 of gone) asked.delete(sha256);
      });
    }
  };
  look();
  return app.store.subscribe(look);
}

function wantedPictures({ ticket, view }: AppState): Working[] {
  const photos = ticket?.document.board.photos ?? [];
  return photos.filter((photo) => photo.shown && photo.side === view.side).map(({ working }) => working);
}

/** Fetches and decodes one picture; the hashes that had to make room for it. */
async function load(app: App, id: string | null, { sha256, mediaType }: Working): Promise<string[]> {
  if (id === null) return [];
  const answer = await app.backend.request('photo.read', { id, sha256 });
  const bytes = answer.ok ? answer.value.bytes.slice() : null;
  const decoded = bytes && (await askPhotoWorker({ kind: 'levels', bytes, mediaType }).catch(() => null));
  const levels = decoded?.levels ?? null;
  if (app.store.get().ticket?.id !== id) {
    closeAll(levels);
    return [];
  }
  app.store.set((state) => ({ ...state, pictures: new Map(state.pictures).set(sha256, levels ?? 'missing') }));
  return makeRoom(app);
}

function makeRoom(app: App): string[] {
  const state = app.store.get();
  const wanted = new Set(wantedPictures(state).map((working) => working.sha256));
  const spare = [...state.pictures.keys()].filter((sha256) => !wanted.has(sha256));
  const gone = spare.slice(0, Math.max(0, state.pictures.size - MOST_KEPT));
  release(app, (sha256) => gone.includes(sha256));
  return gone;
}

function release(app: App, isGone: (sha256: string) => boolean): void {
  const { pictures } = app.store.get();
  const left = [...pictures].filter(([sha256]) => isGone(sha256));
  if (left.length === 0) return;
  app.store.set((state) => ({
    ...state,
    pictures: new Map([...state.pictures].filter(([sha256]) => !isGone(sha256))),
  }));
  // The canvas takes the new model at its next frame; until then it may still draw the old pictures.
  setTimeout(() => {
    for (const [, levels] of left) closeAll(levels === 'missing' ? null : levels);
  }, 1000);
}

function closeAll(levels: PictureLevels | null): void {
  for (const level of levels ?? []) level.close();
}
