import { basename, dirname } from 'node:path';
import { packTicket } from '../document/ticket-archive.ts';
import { diskCode } from './file-problems.ts';
import { claimDeadJournals, type RecoveryPlace } from './journal-recovery.ts';
import type { LoosePhotos } from './loose-photos.ts';
import type { Shelf } from './shelf.ts';
import { withoutExtension } from './ticket-names.ts';
import { withLoosePictures } from './ticket-photos.ts';

/**
 * Work whose ticket file is gone (moved or deleted by hand) while a run died over it comes back as a ticket on the shelf.
 * Where the whole folder is missing it may only be unplugged: then its journals wait. Returns the names written.
 */
export async function adoptOrphans(
  place: RecoveryPlace & { loosePhotos: LoosePhotos },
  shelf: Shelf,
): Promise<string[]> {
  const adopted: string[] = [];
  const isOrphan = async (path: string) => (await missing(place, path)) && !(await missing(place, dirname(path)));
  for (const { journalPath, replay } of await claimDeadJournals(place, isOrphan)) {
    const photos = await withLoosePictures(place.loosePhotos, replay.document.board, new Map());
    const bytes = packTicket({ document: replay.document, photos });
    const kept = await shelf.add(`${withoutExtension(basename(replay.path))} (recovered)`, bytes);
    if (!kept.ok) continue;
    await place.fs.unlink(journalPath).catch(() => undefined);
    adopted.push(basename(kept.value));
  }
  return adopted;
}

const missing = (place: RecoveryPlace, path: string): Promise<boolean> =>
  place.fs.stat(path).then(
    () => false,
    (error: unknown) => diskCode(error) === 'ENOENT',
  );
