import { BOARD_EXTENSION, TICKET_EXTENSION } from '../../../shared-types/format-version.ts';
import { addPhotos, isPicture } from '../../photos/add-photos.ts';
import type { App } from '../../state/app.ts';
import type { NamedBytes } from '../../state/tickets.ts';

/** Opens a dropped or chosen ticket or board; reads any other files as the drawing of one board. */
export async function takeFiles(app: App, files: readonly File[]): Promise<void> {
  if (files.length === 0) return;
  if (files.every(isPicture)) return addPhotos(app, files);
  const read = await Promise.all(files.map(readFile));
  const whole = read.find(({ name }) => name.endsWith(TICKET_EXTENSION) || name.endsWith(BOARD_EXTENSION));
  if (whole && read.length === 1) {
    if (app.store.get().ticket) await app.tickets.close();
    app.store.set((state) => ({ ...state, dialog: null }));
    await app.tickets.openFile(whole);
    return;
  }
  await readDrawing(app, read);
}

async function readFile(file: File): Promise<NamedBytes> {
  return { name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) };
}

async function readDrawing(app: App, files: NamedBytes[]): Promise<void> {
  app.store.set((state) => ({ ...state, busy: true }));
  const answer = await app.backend.request('import.read', { files });
  app.store.set((state) => ({ ...state, busy: false }));
  if (!answer.ok) {
    app.tickets.tell(answer.problem);
    return;
  }
  const { board, notes } = answer.value;
  const imported = { board, notes, fileNames: files.map((file) => file.name) };
  app.store.set((state) => ({ ...state, imported, dialog: 'import' }));
}
