import type { DocumentPatch } from '../../shared-types/contract.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { type Result, succeed } from '../../shared-types/problem.ts';
import { applyDocumentPatches } from '../../shared-types/rules/patches.ts';
import { readBoard, readPlan } from '../document/open-document.ts';
import {
  JOURNAL_FORMAT,
  JOURNAL_VERSION,
  type JournalEntry,
  type JournalHeader,
  readJournalLines,
} from './journal-lines.ts';

/** What a journal leads to. */
export type Replay = {
  path: string;
  document: TicketDocument;
  revision: number;
  /** Contents of the ticket's file that this journal knows: the one it started from, and those it was about to write. */
  knownHashes: string[];
  /** Set when the last revision was written to the file: the hash it then has. */
  savedAs: string | null;
};

/**
 * Plays a journal: the last whole document and the patches that follow it without a gap.
 * Null when it holds no document, or one that no longer reads.
 */
export function replayJournal(text: string): Replay | null {
  const [first, ...rest] = readJournalLines(text);
  const header = first as JournalHeader | undefined;
  if (header?.kind !== 'header' || header.format !== JOURNAL_FORMAT || header.version > JOURNAL_VERSION) return null;
  const state: Played = { document: null, revision: -1, hashes: [header.baseHash], saved: null };
  for (const entry of rest as JournalEntry[]) playEntry(state, entry);
  const document = state.document && checked(state.document);
  if (!document?.ok) return null;
  return {
    path: header.path,
    document: document.value,
    revision: state.revision,
    knownHashes: state.hashes,
    savedAs: state.saved?.revision === state.revision ? state.saved.hash : null,
  };
}

type Played = {
  document: TicketDocument | null;
  revision: number;
  hashes: string[];
  saved: { revision: number; hash: string } | null;
};

function playEntry(state: Played, entry: JournalEntry): void {
  if (entry.kind === 'document') {
    state.document = entry.document;
    state.revision = entry.revision;
  } else if (entry.kind === 'saving') {
    state.hashes.push(entry.hash);
    state.saved = entry;
  } else if (entry.kind === 'patches' && state.document && entry.base === state.revision) {
    const next = applied(state.document, entry.patches);
    if (!next) return;
    state.document = next;
    state.revision = entry.revision;
  }
}

/** Null for patches that do not fit: what follows them has no base then and is passed over as well. */
function applied(document: TicketDocument, patches: readonly DocumentPatch[]): TicketDocument | null {
  try {
    return applyDocumentPatches(document, patches);
  } catch {
    return null;
  }
}

/** A journal may come from an older program: its document is read as a file would be, with migrations. */
function checked(document: TicketDocument): Result<TicketDocument> {
  const board = readBoard(JSON.stringify(document.board), 'journal');
  if (!board.ok) return board;
  const plan = readPlan(JSON.stringify(document.plan), 'journal');
  return plan.ok ? succeed({ board: board.value, plan: plan.value }) : plan;
}
