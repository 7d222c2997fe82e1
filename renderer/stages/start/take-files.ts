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
  // With a ticket open, files are likely newer ones of its board; the sheet offers a new ticket beside.
  await startImport(app, read, app.store.get().ticket ? 'update' : 'new');
}

/** Asks for files and compares the open board with what they hold; nothing is changed before it was shown. */
export function chooseUpdateFiles(app: App): void {
  const input = document.createElement('input');
  input.type = 'file';
  input.multiple = true;
  input.onchange = async () => {
    const files = await Promise.all([...(input.files ?? [])].map(readFile));
    if (files.length > 0) await startImport(app, files, 'update');
  };
  input.click();
}

async function readFile(file: File): Promise<NamedBytes> {
  return { name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) };
}
