import { basename, dirname } from 'node:path';
import type { Problem, Result } from '../../shared-types/problem.ts';
import { succeed } from '../../shared-types/problem.ts';
import { packTicket } from '../document/ticket-archive.ts';
import { contentHash, opaqueId } from './content-hash.ts';
import { type ClaimedJournal, claimDeadJournals, type RecoveryPlace } from './journal-recovery.ts';
import type { SessionPlace, SessionStart } from './session-types.ts';
import { addToFolder, readTicketAt } from './shelf.ts';
import { conflictStem } from './ticket-names.ts';
import { withLoosePictures } from './ticket-photos.ts';

/** What opening found: where the session starts, whether work of a dead run was taken over, and what to tell. */
export type Opening = { start: SessionStart; recovered: boolean; problems: Problem[] };

/**
 * Reads a ticket and what dead runs left in its journals. The newest journal that belongs to the file as it stands is taken over;
 * every other one becomes a copy beside the ticket. Errors: those of `readTicketAt`.
 */
export async function openTicketAt(
  place: SessionPlace,
  id: string,
  path: string,
  isOpenHere: (journalPath: string) => boolean,
): Promise<Result<Opening>> {
  const read = await readTicketAt(place.fs, path);
  if (!read.ok) return read;
  const { contents, bytes } = read.value;
  const fileHash = contentHash(bytes);
  const start: SessionStart = {
    ...{ id, path, fileHash, photos: contents.photos, document: contents.document },
    ...{ revision: 0, unsaved: false, journalPath: null },
  };
  const recovery: RecoveryPlace = { fs: place.fs, folder: place.journalFolder, now: place.now, isOpenHere };
  const opening: Opening = { start, recovered: false, problems: [] };
  const claimed = await claimDeadJournals(recovery, () => true, opaqueId(path));
  for (const journal of claimed.reverse()) await settle(place, opening, journal);
  return succeed(opening);
}

async function settle(place: SessionPlace, opening: Opening, journal: ClaimedJournal): Promise<void> {
  const { start } = opening;
  const { replay, journalPath } = journal;
  if (replay.savedAs === start.fileHash) {
    await place.fs.unlink(journalPath).catch(() => undefined);
  } else if (!opening.recovered && replay.knownHashes.includes(start.fileHash)) {
    opening.recovered = true;
    const photos = await withLoosePictures(place.loosePhotos, replay.document.board, start.photos);
    const { document, revision } = replay;
    opening.start = { ...start, document, photos, revision, unsaved: true, journalPath };
  } else {
    const problem = await keepBeside(place, start, journal);
    if (problem) opening.problems.push(problem);
  }
}

/** The file went another way since: the recovered work becomes a ticket of its own, and only then its journal goes. */
async function keepBeside(place: SessionPlace, start: SessionStart, journal: ClaimedJournal): Promise<Problem | null> {
  const { document } = journal.replay;
  const photos = await withLoosePictures(place.loosePhotos, document.board, start.photos);
  const bytes = packTicket({ document, photos });
  const stem = conflictStem(basename(start.path), place.now());
  const kept = await addToFolder(place.fs, dirname(start.path), stem, bytes);
  if (!kept.ok) return kept.problem;
  await place.fs.unlink(journal.journalPath).catch(() => undefined);
  const copy = basename(kept.value);
  return { code: 'changed-elsewhere', file: basename(start.path), detail: { copy } };
}
