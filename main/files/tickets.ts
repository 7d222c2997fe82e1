import { basename, dirname, join } from 'node:path';
import type { OpenedTicket } from '../../shared-types/contract.ts';
import { TICKET_EXTENSION } from '../../shared-types/format-version.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { fail, type Problem, type Result, succeed } from '../../shared-types/problem.ts';
import { packTicket } from '../document/ticket-archive.ts';
import { attempt } from './file-problems.ts';
import type { FileSystem } from './file-system.ts';
import { createTurns } from './in-turn.ts';
import { createLoosePhotos } from './loose-photos.ts';
import { openTicketAt } from './open-ticket.ts';
import { adoptOrphans } from './orphan-journals.ts';
import { SESSION_PAUSES, type SessionPlace, type TicketSession } from './session-types.ts';
import { addToFolder, createShelf, type Shelf } from './shelf.ts';
import { readTicketFile } from './ticket-file.ts';
import { fileStem, momentForName, withoutExtension } from './ticket-names.ts';
import { createTicketSession } from './ticket-session.ts';
import { createVersions, type Versions } from './versions.ts';
import { writeExclusively } from './write-atomically.ts';

export type TicketsOptions = {
  fs: FileSystem;
  shelfFolder: string;
  appFolder: string;
  now?: () => Date;
  pauses?: Partial<typeof SESSION_PAUSES>;
};

/** A session with what opening it found. */
export type OpenSession = { session: TicketSession; recovered: boolean; problems: Problem[] };

/** All tickets of one run of the program: the shelf, the open sessions, and those that still try to save after their window went. */
export type Tickets = {
  readonly shelf: Shelf;
  readonly versions: Versions;
  open(id: string): Promise<Result<OpenSession>>;
  /**
   * A new ticket on the shelf, opened; when not `exact`, under a free name, or the one that is there with the same content.
   * Errors: file-exists when `exact` and the name is taken; those of the disk.
   */
  create(stem: string, bytes: Uint8Array, exact: boolean): Promise<Result<OpenSession>>;
  openVersion(id: string, version: string): Promise<Result<OpenSession>>;
  /** Lets go of a session: saved and closed, or kept trying in the background. The problem that stands in the way, or null. */
  release(session: TicketSession): Promise<Problem | null>;
  /** Takes a ticket off the shelf, into the app's own folder. */
  remove(id: string): Promise<Result<Record<string, never>>>;
  adoptOrphans(): Promise<string[]>;
  /** Saves and closes everything; what could not be saved. */
  closeAll(): Promise<Problem[]>;
};

type State = {
  place: SessionPlace;
  shelf: Shelf;
  removedFolder: string;
  open: Set<TicketSession>;
  parked: Set<TicketSession>;
};

export function createTickets(options: TicketsOptions): Tickets {
  const { fs, appFolder, now = () => new Date(), pauses } = options;
  const versions = createVersions(fs, join(appFolder, 'versions'), now);
  const journalFolder = join(appFolder, 'journals');
  const place: SessionPlace = {
    ...{ fs, versions, now, journalFolder },
    loosePhotos: createLoosePhotos(fs, join(appFolder, 'photos'), journalFolder, now),
    ...{ ...SESSION_PAUSES, ...pauses },
  };
  const shelf = createShelf(fs, options.shelfFolder);
  const state: State = {
    ...{ place, shelf, removedFolder: join(appFolder, 'removed') },
    ...{ open: new Set<TicketSession>(), parked: new Set<TicketSession>() },
  };
  // Opening and letting go take turns, so that a page that reloads finds its ticket saved.
  const inTurn = createTurns();
  return {
    ...{ shelf, versions },
    open: (id) => inTurn(() => openById(state, id)),
    create: (stem, bytes, exact) => inTurn(() => create(state, fileStem(stem), bytes, exact)),
    openVersion: (id, version) => inTurn(() => openVersion(state, id, version)),
    release: (session) => inTurn(() => release(state, session)),
    remove: (id) => inTurn(() => remove(state, id)),
    adoptOrphans: () =>
      inTurn(async () => {
        const adopted = await adoptOrphans({ ...recoveryPlace(state), loosePhotos: place.loosePhotos }, shelf);
        await place.loosePhotos.sweep();
        return adopted;
      }),
    closeAll: () =>
      inTurn(async () => {
        const left = await Promise.all([...state.open, ...state.parked].map((session) => release(state, session)));
        return left.filter((problem) => problem !== null);
      }),
  };
}

/** What the window gets for an opened ticket. */
export const openedTicket = ({ session, recovered }: OpenSession): OpenedTicket => ({
  id: session.id,
  fileName: basename(session.path),
  revision: session.revision,
  document: session.document,
  recovered,
});

/** The file of a document that nobody saved before. */
export const newTicketBytes = (document: TicketDocument): Uint8Array => packTicket({ document, photos: new Map() });

const isOpenHere = (state: State) => (journalPath: string) =>
  [...state.open, ...state.parked].some((session) => session.journalPath === journalPath);

const recoveryPlace = (state: State) => ({
  ...{ fs: state.place.fs, folder: state.place.journalFolder, now: state.place.now },
  isOpenHere: isOpenHere(state),
});

async function openById(state: State, id: string): Promise<Result<OpenSession>> {
  const path = await state.shelf.find(id);
  return path === undefined ? fail('not-found') : openPath(state, path);
}

async function openPath(state: State, path: string): Promise<Result<OpenSession>> {
  const parked = [...state.parked].find((session) => session.path === path);
  if (parked) {
    state.parked.delete(parked);
    state.open.add(parked);
    return succeed({ session: parked, recovered: true, problems: [] });
  }
  const opening = await openTicketAt(state.place, state.shelf.register(path), path, isOpenHere(state));
  if (!opening.ok) return opening;
  const session = createTicketSession(state.place, opening.value.start);
  state.open.add(session);
  return succeed({ session, recovered: opening.value.recovered, problems: opening.value.problems });
}

async function create(state: State, stem: string, bytes: Uint8Array, exact: boolean): Promise<Result<OpenSession>> {
  const present = join(state.shelf.folder, `${stem}${TICKET_EXTENSION}`);
  if (!exact && (await hasContent(state.place.fs, present, bytes))) return openPath(state, present);
  const added = exact ? await addExactly(state, stem, bytes) : await state.shelf.add(stem, bytes);
  return added.ok ? openPath(state, added.value) : added;
}

/** The very same file lies there already: dropping it again makes no second one. */
async function hasContent(fs: FileSystem, path: string, bytes: Uint8Array): Promise<boolean> {
  const present = await fs.readFile(path).catch(() => null);
  return present !== null && Buffer.compare(present, bytes) === 0;
}

async function addExactly(state: State, stem: string, bytes: Uint8Array): Promise<Result<string>> {
  const present = await state.shelf.list();
  if (!present.ok) return present;
  const path = join(state.shelf.folder, `${stem}${TICKET_EXTENSION}`);
  const fileName = basename(path);
  if (present.value.some((card) => card.fileName.toLowerCase() === fileName.toLowerCase()))
    return fail('file-exists', { file: fileName });
  const written = await attempt(fileName, () => writeExclusively(state.place.fs, path, bytes));
  return written.ok ? succeed(path) : written;
}

async function openVersion(state: State, id: string, version: string): Promise<Result<OpenSession>> {
  const path = await state.shelf.find(id);
  const bytes = path === undefined ? undefined : await state.place.versions.read(path, version);
  if (path === undefined || bytes === undefined) return fail('not-found');
  const read = readTicketFile(bytes, basename(path));
  if (!read.ok) return read;
  const stem = `${withoutExtension(basename(path))} (earlier ${momentForName(new Date(Number(version.slice(0, 13))))})`;
  const added = await addToFolder(state.place.fs, dirname(path), stem, bytes);
  return added.ok ? openPath(state, added.value) : added;
}

async function release(state: State, session: TicketSession): Promise<Problem | null> {
  const closed = await session.close();
  state.open.delete(session);
  if (closed.ok) state.parked.delete(session);
  else state.parked.add(session);
  return closed.ok ? null : closed.problem;
}

async function remove(state: State, id: string): Promise<Result<Record<string, never>>> {
  const path = await state.shelf.find(id);
  if (path === undefined) return fail('not-found');
  const { fs } = state.place;
  const moved = await attempt(basename(path), async () => {
    const bytes = new Uint8Array(await fs.readFile(path));
    await fs.mkdir(state.removedFolder, { recursive: true });
    const kept = await addToFolder(fs, state.removedFolder, withoutExtension(basename(path)), bytes);
    if (kept.ok) await fs.unlink(path);
    return kept;
  });
  if (!moved.ok) return moved;
  return moved.value.ok ? succeed({}) : moved.value;
}
