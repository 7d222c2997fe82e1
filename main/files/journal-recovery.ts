import { randomBytes } from 'node:crypto';
import { join } from 'node:path';
import type { FileSystem } from './file-system.ts';
import { journalName, ownerLives, readJournalName } from './journal-owner.ts';
import { type Replay, replayJournal } from './journal-replay.ts';

/** A journal of a run that died, now ours; its file already carries our name. */
export type ClaimedJournal = { journalPath: string; replay: Replay };

export type RecoveryPlace = {
  fs: FileSystem;
  folder: string;
  now: () => Date;
  isOpenHere(journalPath: string): boolean;
};

/**
 * Claims the journals that dead runs left and whose ticket is wanted. Claiming renames the file, so of two instances one wins.
 * A journal that cannot be replayed is set aside under '.unreadable', never thrown away. Oldest first.
 */
export async function claimDeadJournals(
  place: RecoveryPlace,
  wanted: (ticketPath: string) => boolean | Promise<boolean>,
  ticketKey?: string,
): Promise<ClaimedJournal[]> {
  const claimed: (ClaimedJournal & { touchedMs: number })[] = [];
  for (const dead of await deadJournals(place, ticketKey)) {
    const text = await place.fs.readFile(dead.path, 'utf8').catch(() => null);
    const replay = text === null ? null : replayJournal(text);
    if (text !== null && !replay) await moved(place.fs, dead.path, `${dead.path}.unreadable`);
    if (!replay || !(await wanted(replay.path))) continue;
    const journalPath = join(place.folder, journalName(dead.ticketKey, randomBytes(4).toString('hex')));
    if (await moved(place.fs, dead.path, journalPath)) claimed.push({ journalPath, replay, touchedMs: dead.touchedMs });
  }
  return claimed.sort((a, b) => a.touchedMs - b.touchedMs);
}

type Dead = { path: string; ticketKey: string; touchedMs: number };

async function deadJournals(place: RecoveryPlace, ticketKey?: string): Promise<Dead[]> {
  const dead: Dead[] = [];
  for (const name of await place.fs.readdir(place.folder).catch((): string[] => [])) {
    const owner = readJournalName(name);
    if (!owner || (ticketKey !== undefined && owner.ticketKey !== ticketKey)) continue;
    const path = join(place.folder, name);
    const stat = await place.fs.stat(path).catch(() => null);
    if (!stat || ownerLives(owner, stat.mtimeMs, place.now().getTime(), place.isOpenHere(path))) continue;
    dead.push({ path, ticketKey: owner.ticketKey, touchedMs: stat.mtimeMs });
  }
  return dead;
}

const moved = (fs: FileSystem, from: string, to: string): Promise<boolean> =>
  fs.rename(from, to).then(
    () => true,
    () => false,
  );
