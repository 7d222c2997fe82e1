import type { SheetFormat } from '../../shared-types/sheet-format.ts';
import type { App } from './app.ts';
import { saveBytes } from './save-bytes.ts';

/** Draws the sheet of the newest plan and hands it over as a download; null when it could not be made. */
export async function saveSheet(app: App, format: SheetFormat): Promise<{ fileName: string; pages: number } | null> {
  app.store.set((state) => ({ ...state, busy: true }));
  const sheet = await app.tickets.renderWorkMap(format);
  app.store.set((state) => ({ ...state, busy: false }));
  if (sheet) saveBytes(sheet.fileName, sheet.bytes, format === 'pdf' ? 'application/pdf' : 'application/zip');
  return sheet;
}
