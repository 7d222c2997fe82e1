import { crc32 } from 'node:zlib';
import type { DocumentPatch } from '../../shared-types/contract.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';

export const JOURNAL_FORMAT = 'heatmargin-journal';
export const JOURNAL_VERSION = 1;

/** First line of a journal: which ticket it belongs to, and the content of the file that it starts from. */
export type JournalHeader = {
  kind: 'header';
  format: typeof JOURNAL_FORMAT;
  version: typeof JOURNAL_VERSION;
  path: string;
  baseHash: string;
};

/** A line after it. `saving` stands before the file is replaced, so that a crash in between is understood. */
export type JournalEntry =
  | { kind: 'document'; revision: number; document: TicketDocument }
  | { kind: 'patches'; base: number; revision: number; patches: readonly DocumentPatch[] }
  | { kind: 'saving'; revision: number; hash: string };

const CHECKSUM_DIGITS = 8;
const checksum = (text: string): string => crc32(text).toString(16).padStart(CHECKSUM_DIGITS, '0');

/** One line: checksum, space, JSON. A line begins with a line break, so that one after a broken end is whole again. */
export function journalLine(entry: JournalHeader | JournalEntry): string {
  const json = JSON.stringify(entry);
  return `\n${checksum(json)} ${json}`;
}

/** The sound lines of a journal, in order; broken ones (the end of a write that a crash cut off) are passed over. */
export function readJournalLines(text: string): unknown[] {
  return text.split('\n').flatMap((line) => {
    const json = line.slice(CHECKSUM_DIGITS + 1);
    if (json === '' || line.slice(0, CHECKSUM_DIGITS) !== checksum(json)) return [];
    return [JSON.parse(json) as unknown];
  });
}
