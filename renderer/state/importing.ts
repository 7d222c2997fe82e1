import type { RequestOutput } from '../../shared-types/contract.ts';
import type { WindowImportChoices } from '../../shared-types/import-choices.ts';
import type { Result } from '../../shared-types/problem.ts';
import type { App } from './app.ts';
import type { Imported } from './app-state.ts';
import { recall, remember } from './import-memory.ts';
import type { NamedBytes } from './tickets.ts';

/**
 * Reads files as the drawing of one board and opens the import on it; files that give no board too, so that what they lack
 * can be said or added there. What was chosen before for files of the same kind is taken again and said. An import that
 * stands open gets the files besides its own.
 */
export async function startImport(
  app: App,
  files: readonly NamedBytes[],
  wanted: Imported['purpose'] = 'new',
): Promise<void> {
  const { dialog, imported: standing } = app.store.get();
  const open = dialog === 'import' || dialog === 'update' ? standing : null;
  const purpose = open?.purpose ?? wanted;
  const all = open ? [...open.files, ...files] : files;
  app.store.set((state) => ({ ...state, busy: true }));
  const plain = await ask(app, all, open?.choices ?? {}, purpose);
  const known = plain.ok && !open ? recall(app.store.get().settings.rememberedImports, plain.value) : null;
  const again = known && (await ask(app, all, known, purpose));
  app.store.set((state) => ({ ...state, busy: false }));
  const kept = plain.ok && again?.ok && (again.value.read !== null || plain.value.read === null);
  const answer = kept ? again : plain;
  if (!answer.ok) {
    if (open) patchImport(app, { problem: answer.problem });
    else app.tickets.tell(answer.problem);
    return;
  }
  const before = { read: open?.read ?? null, remembered: open?.remembered ?? Boolean(kept) };
  const choices = open?.choices ?? (kept && known ? known : {});
  const imported: Imported = { ...before, purpose, files: all, choices, ...found(answer.value, before.read) };
  app.store.set((state) => ({ ...state, imported, dialog: 'import' }));
}

/** What an answer brings; a board from before stays shown where it brings none. */
function found(
  { read, problem, files, tables }: RequestOutput<'import.read'>,
  before: Imported['read'],
): Pick<Imported, 'read' | 'problem' | 'listed' | 'tables' | 'reading'> {
  return { read: read ?? before, problem, listed: files, tables, reading: false };
}

/** Reads the same files with other choices. One that gives no board is said in place; the last board stays shown. */
export async function chooseImport(app: App, choices: WindowImportChoices): Promise<void> {
  const { imported } = app.store.get();
  if (!imported) return;
  patchImport(app, { choices, reading: true });
  const answer = await ask(app, imported.files, choices, imported.purpose);
  if (app.store.get().imported?.choices !== choices) return;
  if (answer.ok) patchImport(app, found(answer.value, imported.read));
  else patchImport(app, { problem: answer.problem, reading: false });
}

/** Makes a new ticket of the files, or an update of the open ticket's board; a bill of materials alone is read only for that. */
export async function importFor(app: App, purpose: Imported['purpose']): Promise<void> {
  const { imported } = app.store.get();
  if (!imported || imported.purpose === purpose) return;
  patchImport(app, { purpose, read: null });
  await chooseImport(app, { ...imported.choices });
}

/** Takes back every choice, and what was remembered for files of this kind. */
export async function forgetImport(app: App): Promise<void> {
  const { imported, settings } = app.store.get();
  if (!imported) return;
  app.changeSettings({ rememberedImports: remember(settings.rememberedImports, imported, {}) });
  patchImport(app, { remembered: false });
  await chooseImport(app, {});
}

/** Keeps the choices for the next files with the same headings. */
export function rememberImport(app: App, imported: Imported): void {
  const { rememberedImports: kept } = app.store.get().settings;
  const next = remember(kept, imported, imported.choices);
  if (JSON.stringify(next) !== JSON.stringify(kept)) app.changeSettings({ rememberedImports: next });
}

function ask(
  app: App,
  files: readonly NamedBytes[],
  choices: WindowImportChoices,
  purpose: Imported['purpose'],
): Promise<Result<RequestOutput<'import.read'>>> {
  const { ticket } = app.store.get();
  const onto = purpose === 'update' && ticket ? { onto: ticket.id } : {};
  return app.backend.request('import.read', { files: [...files], choices, ...onto });
}

function patchImport(app: App, fields: Partial<Imported>): void {
  app.store.set((state) => (state.imported ? { ...state, imported: { ...state.imported, ...fields } } : state));
}
