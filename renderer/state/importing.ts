import type { WindowImportChoices } from '../../shared-types/import-choices.ts';
import type { App } from './app.ts';
import type { Imported } from './app-state.ts';
import { recall, remember } from './import-memory.ts';
import type { NamedBytes } from './tickets.ts';

/**
 * Reads files as the drawing of one board and opens the import on it. What was chosen before for files of the same kind is
 * taken again and said. Files that give no board are told; an import that stands open stays as it is.
 */
export async function startImport(app: App, files: readonly NamedBytes[]): Promise<void> {
  const open = app.store.get().dialog === 'import' ? app.store.get().imported : null;
  const all = open ? [...open.files, ...files] : files;
  app.store.set((state) => ({ ...state, busy: true }));
  const plain = await ask(app, all, open?.choices ?? {});
  const known = plain.ok && !open ? recall(app.store.get().settings.rememberedImports, plain.value.report) : null;
  const answer = known ? await ask(app, all, known) : plain;
  app.store.set((state) => ({ ...state, busy: false }));
  const read = answer.ok ? answer : plain;
  if (!read.ok) {
    if (open) patchImport(app, { problem: read.problem });
    else app.tickets.tell(read.problem);
    return;
  }
  const choices = open?.choices ?? (answer.ok && known ? known : {});
  const remembered = open?.remembered ?? (answer.ok && known !== null);
  const imported: Imported = { ...read.value, files: all, choices, remembered, problem: null, reading: false };
  app.store.set((state) => ({ ...state, imported, dialog: 'import' }));
}

/** Reads the same files with other choices. One that gives no board is said in place; the last board stays shown. */
export async function chooseImport(app: App, choices: WindowImportChoices): Promise<void> {
  const { imported } = app.store.get();
  if (!imported) return;
  patchImport(app, { choices, reading: true });
  const answer = await ask(app, imported.files, choices);
  if (app.store.get().imported?.choices !== choices) return;
  if (answer.ok) patchImport(app, { ...answer.value, problem: null, reading: false });
  else patchImport(app, { problem: answer.problem, reading: false });
}

/** Takes back every choice, and what was remembered for files of this kind. */
export async function forgetImport(app: App): Promise<void> {
  const { imported, settings } = app.store.get();
  if (!imported) return;
  app.changeSettings({ rememberedImports: remember(settings.rememberedImports, imported.report, {}) });
  patchImport(app, { remembered: false });
  await chooseImport(app, {});
}

/** Keeps the choices for the next files with the same headings. */
export function rememberImport(app: App, { report, choices }: Imported): void {
  const { rememberedImports: kept } = app.store.get().settings;
  const next = remember(kept, report, choices);
  if (JSON.stringify(next) !== JSON.stringify(kept)) app.changeSettings({ rememberedImports: next });
}

const ask = (app: App, files: readonly NamedBytes[], choices: WindowImportChoices) =>
  app.backend.request('import.read', { files: [...files], choices });

function patchImport(app: App, fields: Partial<Imported>): void {
  app.store.set((state) => (state.imported ? { ...state, imported: { ...state.imported, ...fields } } : state));
}
