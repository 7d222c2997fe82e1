import type { DocumentPatch, MainEvent, PicturePiece } from '../../shared-types/contract.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import type { Result } from '../../shared-types/problem.ts';
import type { FileSystem } from './file-system.ts';
import type { LoosePhotos } from './loose-photos.ts';
import type { Pictures } from './ticket-photos.ts';
import type { Versions } from './versions.ts';

/** What every session shares. Pauses in ms; tests shorten them. */
export type SessionPlace = {
  fs: FileSystem;
  journalFolder: string;
  versions: Versions;
  loosePhotos: LoosePhotos;
  now: () => Date;
  /** From a patch to the journal on the disk; the promise of the program is one second. */
  journalAfterMs: number;
  /** From the last patch to the rewritten ticket file. */
  saveAfterMs: number;
  /** From a refusal of the disk to the next try. */
  retryAfterMs: number;
};

export const SESSION_PAUSES = { journalAfterMs: 200, saveAfterMs: 4000, retryAfterMs: 5000 };

/** Where a session starts from. */
export type SessionStart = {
  id: string;
  path: string;
  document: TicketDocument;
  photos: Pictures;
  /** Hash of the file's content as read or written last. */
  fileHash: string;
  revision: number;
  /** True when the document holds more than the file. */
  unsaved: boolean;
  /** A journal taken over from a run that died. */
  journalPath: string | null;
};

export type SessionEvent = Extract<MainEvent, { name: 'ticket.saved' | 'ticket.problem' }>;
export type SavedTicket = { savedAt: string; conflictCopy: string | null };

/** One open ticket: the document, its revision, and the way to the disk. */
export type TicketSession = {
  readonly id: string;
  readonly path: string;
  readonly document: TicketDocument;
  readonly revision: number;
  readonly journalPath: string | null;
  readonly unsaved: boolean;
  /** Applies patches made on `base`; another base is a gap. Errors: what would not read again is refused. */
  patch(base: number, patches: readonly DocumentPatch[]): Result<{ revision: number; gap: boolean }>;
  /** Takes a whole document. Errors: as `patch`. */
  replace(document: TicketDocument): Result<{ revision: number }>;
  /** Pictures at hand by their hash, named by the board or not. */
  readonly pictures: Pictures;
  /** Takes a picture in, in pieces, before a patch names it; its hash with the last. Errors: as `ArrivingPictures` and `addPicture`. */
  addPicture(piece: PicturePiece): Promise<Result<{ sha256: string | null }>>;
  save(): Promise<Result<SavedTicket>>;
  /** Saves and lets go. On a problem the session stays open and goes on trying. */
  close(): Promise<Result<SavedTicket>>;
  /** Sends what happens elsewhere: to another window, or nowhere. */
  tell(listener: (event: SessionEvent) => void): void;
};
