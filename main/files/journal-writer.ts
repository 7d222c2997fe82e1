import { basename } from 'node:path';
import type { DocumentPatch } from '../../shared-types/contract.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import type { Problem } from '../../shared-types/problem.ts';
import { diskCode, fileProblem } from './file-problems.ts';
import { createTurns } from './in-turn.ts';
import { createJournal, type Journal } from './journal.ts';
import type { JournalEntry } from './journal-lines.ts';
import { BEAT_MS } from './journal-owner.ts';
import type { SessionPlace } from './session-types.ts';

export type JournalState = { path: string; fileHash: string; document: TicketDocument; revision: number };
export type JournalTold = { written(revision: number): void; refused(problem: Problem): void };

/** Brings patches to the journal within the promised second, keeps what the disk refuses, and tries again. */
export type JournalWriter = {
  readonly path: string | null;
  patched(base: number, revision: number, patches: readonly DocumentPatch[]): void;
  /** The next entry is the whole document. */
  replaced(): void;
  /** Writes what waits, and notes that the file is about to be replaced. A refusal is told, not thrown. */
  noteSaving(revision: number, hash: string): Promise<void>;
  /** Writes what waits; false when the disk refuses. */
  flush(): Promise<boolean>;
  /** The file holds this revision: the journal goes, unless there is a newer one already. */
  drop(revision: number): Promise<void>;
  /** The ticket goes on as another file: a new journal, then away with the old one. */
  moved(): Promise<void>;
  stop(): void;
};

type Work = {
  place: SessionPlace;
  state: () => JournalState;
  told: JournalTold;
  journal: Journal;
  waiting: JournalEntry[];
  wholeNext: boolean;
  refusalTold: boolean;
  timer: NodeJS.Timeout | null;
  inTurn: ReturnType<typeof createTurns>;
};

export function createJournalWriter(
  place: SessionPlace,
  state: () => JournalState,
  existing: string | null,
  told: JournalTold,
): JournalWriter {
  const journal = beginJournal(place, state, existing);
  const inTurn = createTurns();
  const work: Work = {
    ...{ place, state, told, journal, inTurn },
    // A journal taken over may come from an older program: what follows it needs a document of this one before it.
    ...{ waiting: [], wholeNext: existing !== null, refusalTold: false, timer: null },
  };
  const beat = setInterval(() => void work.journal.beat(place.now()), BEAT_MS);
  beat.unref();
  return {
    get path() {
      return work.journal.path;
    },
    patched(base, revision, patches) {
      work.waiting.push({ kind: 'patches', base, revision, patches });
      schedule(work, place.journalAfterMs);
    },
    replaced() {
      work.waiting = [];
      work.wholeNext = true;
      schedule(work, place.journalAfterMs);
    },
    noteSaving: (revision, hash) => inTurn(() => noteSaving(work, revision, hash)),
    flush: () => inTurn(() => write(work)),
    drop: (revision) => inTurn(() => drop(work, revision)),
    moved: () => inTurn(() => move(work)),
    stop() {
      if (work.timer) clearTimeout(work.timer);
      clearInterval(beat);
    },
  };
}

function beginJournal(place: SessionPlace, state: () => JournalState, existing: string | null): Journal {
  const origin = () => ({ ticketPath: state().path, baseHash: state().fileHash });
  return createJournal({ fs: place.fs, folder: place.journalFolder, origin }, existing);
}

function schedule(work: Work, afterMs: number): void {
  work.timer ??= setTimeout(() => {
    work.timer = null;
    void work.inTurn(() => write(work));
  }, afterMs);
}

/** Everything that waits, until nothing does. A new journal starts with the whole document: the waiting patches are in it. */
async function write(work: Work): Promise<boolean> {
  while (work.waiting.length > 0 || work.wholeNext) {
    const { document, revision } = work.state();
    const whole = work.wholeNext || work.journal.path === null;
    const taken = work.waiting.length;
    const entries: JournalEntry[] = whole ? [{ kind: 'document', revision, document }] : work.waiting.slice();
    work.wholeNext = false;
    const problem = await refusalOf(() => work.journal.append(entries), work);
    if (problem) {
      work.wholeNext ||= whole;
      if (!work.refusalTold) work.told.refused(problem);
      work.refusalTold = true;
      schedule(work, work.place.retryAfterMs);
      return false;
    }
    work.waiting = work.waiting.slice(taken);
    work.refusalTold = false;
    work.told.written(revision);
  }
  return true;
}

async function refusalOf(append: () => Promise<void>, work: Work): Promise<Problem | null> {
  try {
    await append();
    return null;
  } catch (error) {
    if (diskCode(error) === undefined) throw error;
    return fileProblem(error, basename(work.state().path));
  }
}

async function noteSaving(work: Work, revision: number, hash: string): Promise<void> {
  if (!(await write(work)) || work.journal.path === null) return;
  await refusalOf(() => work.journal.append([{ kind: 'saving', revision, hash }]), work);
}

async function drop(work: Work, revision: number): Promise<void> {
  if (work.state().revision !== revision) return;
  work.waiting = [];
  work.wholeNext = false;
  await work.journal.remove();
}

async function move(work: Work): Promise<void> {
  const old = work.journal;
  work.journal = beginJournal(work.place, work.state, null);
  work.wholeNext = true;
  await write(work);
  await old.remove();
}
