import { basename } from 'node:path';
import type { DocumentPatch, PicturePiece } from '../../shared-types/contract.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { type Problem, type Result, succeed } from '../../shared-types/problem.ts';
import { applyDocumentPatches } from '../../shared-types/rules/patches.ts';
import { packTicket } from '../document/ticket-archive.ts';
import { type ArrivingPictures, createArrivals } from './arriving-pictures.ts';
import { contentHash } from './content-hash.ts';
import { documentProblem } from './document-check.ts';
import { createTurns } from './in-turn.ts';
import { createJournalWriter, type JournalWriter } from './journal-writer.ts';
import { saveTicket } from './save-ticket.ts';
import type { SavedTicket, SessionEvent, SessionPlace, SessionStart, TicketSession } from './session-types.ts';
import { addPicture, dropUnnamed } from './ticket-photos.ts';

type State = SessionStart & {
  photos: Map<string, Uint8Array>;
  arrivals: ArrivingPictures;
  place: SessionPlace;
  savedRevision: number;
  last: SavedTicket;
  listener: (event: SessionEvent) => void;
  saveTimer: NodeJS.Timeout | null;
  problemTold: string | null;
  writer: JournalWriter;
  closed: boolean;
};

/** Opens a session on a ticket that was read before. It journals and saves by itself from here on. */
export function createTicketSession(place: SessionPlace, start: SessionStart): TicketSession {
  const state = startState(place, start);
  const inTurn = createTurns();
  const save = () => inTurn(() => saveNow(state, save));
  if (start.unsaved) scheduleSave(state, save, place.saveAfterMs);
  return {
    get id() {
      return state.id;
    },
    get path() {
      return state.path;
    },
    get document() {
      return state.document;
    },
    get revision() {
      return state.revision;
    },
    get journalPath() {
      return state.writer.path;
    },
    get unsaved() {
      return state.savedRevision !== state.revision;
    },
    patch: (base, patches) => patch(state, save, base, patches),
    replace: (document) => replace(state, save, document),
    pictures: state.photos,
    addPicture: (piece) => takePiece(state, piece),
    save,
    close: () => close(state, save),
    tell(listener) {
      state.listener = listener;
    },
  };
}

function startState(place: SessionPlace, start: SessionStart): State {
  const state: Omit<State, 'writer'> & { writer?: JournalWriter } = {
    ...start,
    photos: new Map(start.photos),
    arrivals: createArrivals(),
    place,
    savedRevision: start.unsaved ? -1 : start.revision,
    last: { savedAt: place.now().toISOString(), conflictCopy: null },
    listener: () => undefined,
    saveTimer: null,
    problemTold: null,
    closed: false,
  };
  state.writer = createJournalWriter(place, () => state, start.journalPath, {
    written: (revision) => {
      tellSaved(state as State, revision, 'journal');
    },
    refused: (problem) => tellProblem(state as State, problem),
  });
  return state as State;
}

function patch(
  state: State,
  save: Save,
  base: number,
  patches: readonly DocumentPatch[],
): Result<{ revision: number; gap: boolean }> {
  if (base !== state.revision) return succeed({ revision: state.revision, gap: true });
  const next = patched(state.document, patches);
  if (!next) return succeed({ revision: state.revision, gap: true });
  const problem = documentProblem(next, state.document);
  if (problem) return { ok: false, problem };
  advance(state, save, next);
  state.writer.patched(base, state.revision, patches);
  return succeed({ revision: state.revision, gap: false });
}

/** Null when a path does not exist: the window then holds another document and sends the whole. */
function patched(document: TicketDocument, patches: readonly DocumentPatch[]): TicketDocument | null {
  try {
    return applyDocumentPatches(document, patches);
  } catch {
    return null;
  }
}

function replace(state: State, save: Save, document: TicketDocument): Result<{ revision: number }> {
  const problem = documentProblem(document, null);
  if (problem) return { ok: false, problem };
  advance(state, save, document);
  state.writer.replaced();
  return succeed({ revision: state.revision });
}

async function takePiece(state: State, piece: PicturePiece): Promise<Result<{ sha256: string | null }>> {
  const arrived = state.arrivals.take(piece);
  if (!arrived.ok) return arrived;
  return arrived.value ? addPicture(state.place.loosePhotos, state.photos, arrived.value) : succeed({ sha256: null });
}

type Save = () => Promise<Result<SavedTicket>>;

function advance(state: State, save: Save, next: TicketDocument): void {
  state.document = next;
  state.revision += 1;
  scheduleSave(state, save, state.place.saveAfterMs);
}

function scheduleSave(state: State, save: Save, afterMs: number): void {
  if (state.saveTimer) clearTimeout(state.saveTimer);
  state.saveTimer = state.closed ? null : setTimeout(() => void save(), afterMs);
}

async function saveNow(state: State, save: Save): Promise<Result<SavedTicket>> {
  const { revision, place } = state;
  if (state.savedRevision === revision) return succeed(state.last);
  const bytes = packTicket({ document: state.document, photos: state.photos });
  const hash = contentHash(bytes);
  await state.writer.noteSaving(revision, hash);
  const saved = await saveTicket(place, { path: state.path, bytes, hash, fileHash: state.fileHash });
  if (!saved.ok) {
    tellProblem(state, saved.problem);
    scheduleSave(state, save, place.retryAfterMs);
    return saved;
  }
  const { path, conflict, versionProblem } = saved.value;
  state.fileHash = hash;
  state.savedRevision = revision;
  state.problemTold = null;
  state.last = { savedAt: place.now().toISOString(), conflictCopy: conflict ? basename(path) : null };
  await settleJournal(state, path, revision);
  tellSaved(state, revision, 'file');
  if (versionProblem) tellProblem(state, versionProblem);
  return succeed(state.last);
}

async function settleJournal(state: State, path: string, revision: number): Promise<void> {
  const changedPlace = path !== state.path;
  state.path = path;
  if (state.revision === revision) await state.writer.drop(revision);
  else if (changedPlace) await state.writer.moved();
}

async function close(state: State, save: Save): Promise<Result<SavedTicket>> {
  // Pictures that nothing names any more leave the file when nobody can undo to them.
  if (dropUnnamed(state.photos, state.document.board)) state.savedRevision = -1;
  const saved = await save();
  if (!saved.ok) {
    await state.writer.flush();
    return saved;
  }
  if (state.savedRevision !== state.revision) return close(state, save);
  state.closed = true;
  if (state.saveTimer) clearTimeout(state.saveTimer);
  state.writer.stop();
  return saved;
}

function tellSaved(state: State, revision: number, kind: 'journal' | 'file'): void {
  const { savedAt, conflictCopy } = kind === 'file' ? state.last : nowSaved(state);
  state.listener({ name: 'ticket.saved', id: state.id, revision, savedAt, state: kind, conflictCopy });
}

const nowSaved = (state: State): SavedTicket => ({ savedAt: state.place.now().toISOString(), conflictCopy: null });

/** The same problem is told once, until saving works again. */
function tellProblem(state: State, problem: Problem): void {
  if (state.problemTold === problem.code) return;
  state.problemTold = problem.code;
  state.listener({ name: 'ticket.problem', id: state.id, problem });
}
