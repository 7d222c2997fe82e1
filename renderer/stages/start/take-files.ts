import { BOARD_EXTENSION, TICKET_EXTENSION } from '../../../shared-types/format-version.ts';
import { addPhotos, isPicture } from '../../photos/add-photos.ts';
import type { App } from '../../state/app.ts';
import { startImport } from '../../state/importing.ts';
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
  await startImport(app, read);
}

async function readFile(file: File): Promise<NamedBytes> {
  return { name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) };
}
