import { createHash } from 'node:crypto';
import { hostname } from 'node:os';

/** A run touches its journals this often; one that was not touched for three times as long has no living owner. */
export const BEAT_MS = 10_000;
const SILENT_AFTER_MS = 3 * BEAT_MS;

const hostKey = (): string => createHash('sha256').update(hostname()).digest('hex').slice(0, 8);
const NAME = /^([\w-]+)\.([0-9a-f]{8})\.(\d+)\.([0-9a-f]+)\.journal$/;

/** File name of a journal: ticket, host, process and a random serial. */
export const journalName = (ticketKey: string, serial: string): string =>
  `${ticketKey}.${hostKey()}.${process.pid}.${serial}.journal`;

export type JournalOwner = { ticketKey: string; host: string; pid: number };

export function readJournalName(name: string): JournalOwner | null {
  const found = NAME.exec(name);
  return found && { ticketKey: found[1], host: found[2], pid: Number(found[3]) };
}

/** Whether the run that writes a journal still lives. `mine`: journals that this very run has open. */
export function ownerLives(owner: JournalOwner, touchedMs: number, nowMs: number, isMine: boolean): boolean {
  if (isMine) return true;
  if (owner.host === hostKey() && (owner.pid === process.pid || !processLives(owner.pid))) return false;
  return nowMs - touchedMs < SILENT_AFTER_MS;
}

function processLives(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // EPERM: it lives and belongs to somebody else.
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}
