import type { BoardPhoto } from '../../shared-types/photo.ts';
import type { Problem, Result } from '../../shared-types/problem.ts';
import { photoEdits, photoWords as words } from '../../shared-types/words/window/photo.ts';
import { addPhoto } from '../editing/photos.ts';
import type { App } from '../state/app.ts';
import { askPhotoWorker } from './ask-worker.ts';
import type { PreparedPhoto } from './photo-messages.ts';
import { sendPicture } from './send-picture.ts';

/** Endings of picture files: what a drop of them means. */
const PICTURE = /\.(jpe?g|jfif|png|webp|tiff?|hei[cf]|avif)$/i;
const PICTURE_TYPES = /^image\/(jpeg|png|webp|tiff|hei[cf]|avif)$/;
const LARGEST_BYTES = 160 * 1024 * 1024;

export const isPicture = (file: File): boolean => PICTURE.test(file.name) || PICTURE_TYPES.test(file.type);

/** Endings for a file dialogue. */
export const PICTURE_ENDINGS = '.jpg,.jpeg,.png,.webp,.tif,.tiff,.heic,.heif';

/** Takes pictures in as photos of the shown side, one after the other; each that cannot be used is told and changes nothing. */
export async function addPhotos(app: App, files: readonly File[]): Promise<void> {
  const { ticket, view } = app.store.get();
  if (!ticket) {
    app.notify('note', words.needsTicket, words.needsTicketText);
    return;
  }
  coming(app, (names) => [...names, ...files.map(({ name }) => name)]);
  const place = { id: ticket.id, side: view.side };
  const lost: string[] = [];
  for (const file of files) {
    const problem = isLeft(app, place) ? null : await addOne(app, place, file);
    if (isLeft(app, place)) lost.push(file.name);
    else if (problem) app.tickets.tell({ ...problem, file: file.name });
    coming(app, (names) => without(names, file.name));
  }
  if (lost.length > 0) app.notify('warn', words.ticketLeft, words.ticketLeftText(lost));
}

/** Where photos go: the ticket and the side that were shown when they were given, however long they take. */
type Place = Pick<BoardPhoto, 'side'> & { id: string };

/** Another ticket was opened, or none is, since. */
const isLeft = (app: App, { id }: Place): boolean => app.store.get().ticket?.id !== id;

function coming(app: App, change: (names: readonly string[]) => readonly string[]): void {
  app.store.set((state) => ({ ...state, photosComing: change(state.photosComing) }));
}

function without(names: readonly string[], name: string): string[] {
  const at = names.indexOf(name);
  return names.filter((_, index) => index !== at);
}

/** The problem that stands in the way, or null; nothing is added to a ticket that was left. */
async function addOne(app: App, place: Place, file: File): Promise<Problem | null> {
  if (file.size > LARGEST_BYTES) return { code: 'too-large', detail: { limit: words.largestBytes } };
  const prepared = await prepare(file);
  if (!prepared.ok) return prepared.problem;
  const { working, ...about } = prepared.value;
  const first = await sendPicture(app.backend, place.id, file);
  if (!first.ok) return first.problem;
  const second = working.bytes ? await sendPicture(app.backend, place.id, working.bytes) : first;
  if (!second.ok) return second.problem;
  if (isLeft(app, place)) return null;
  const { mediaType, widthPx, heightPx } = working;
  const photo = {
    ...{ side: place.side, name: file.name.slice(0, 300), sha256: first.value.sha256 },
    ...about,
    working: { sha256: second.value.sha256, mediaType, widthPx, heightPx },
  };
  app.bench.apply(photoEdits.add(photo.name), (document) => addPhoto(document, photo));
  const added = app.store.get().ticket?.document.board.photos.at(-1);
  if (added) app.setView({ stage: 'photo', side: added.side, panelOpen: true, photoId: added.id, pairId: null });
  return null;
}

async function prepare(file: File): Promise<Result<PreparedPhoto>> {
  try {
    return (await askPhotoWorker({ kind: 'prepare', file })).result;
  } catch {
    return { ok: false, problem: { code: 'not-readable' } };
  }
}

/** Opens the system's file dialogue for photos. */
export function choosePhotos(app: App): void {
  const input = document.createElement('input');
  input.type = 'file';
  input.multiple = true;
  input.accept = PICTURE_ENDINGS;
  input.onchange = () => void addPhotos(app, [...(input.files ?? [])]);
  input.click();
}
