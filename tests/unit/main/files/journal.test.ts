import { expect, test } from 'vitest';
import { type JournalEntry, journalLine } from '../../../../main/files/journal-lines.ts';
import { journalName, ownerLives, readJournalName } from '../../../../main/files/journal-owner.ts';
import { replayJournal } from '../../../../main/files/journal-replay.ts';
import { bareTicket, notePatch } from '../../../support/shell/small-ticket.ts';

const header = {
  kind: 'header',
  format: 'heatmargin-journal',
  version: 1,
  path: '/shelf/T-1.hmticket',
  baseHash: 'h0',
} as const;
const patched = (revision: number): JournalEntry => ({
  kind: 'patches',
  base: revision - 1,
  revision,
  patches: [notePatch(`note ${revision}`)],
});
const entries: JournalEntry[] = [
  { kind: 'document', revision: 1, document: bareTicket() },
  patched(2),
  patched(3),
  { kind: 'saving', revision: 3, hash: 'h3' },
  patched(4),
];
const journal = (lines: JournalEntry[]) => [header, ...lines].map(journalLine).join('');

test('a journal leads to its last revision', () => {
  expect(replayJournal(journal(entries))).toMatchObject({
    ...{ path: header.path, revision: 4, knownHashes: ['h0', 'h3'], savedAs: null },
    document: { plan: { ticket: { notes: 'note 4' } } },
  });
  expect(replayJournal(journal(entries.slice(0, 4)))?.savedAs).toBe('h3');
});

test('cut off at any byte, a journal leads to a revision that was there, never further and never to rubbish', () => {
  const whole = journal(entries);
  let last = 0;
  for (let length = 0; length <= whole.length; length++) {
    const replay = replayJournal(whole.slice(0, length));
    if (!replay) continue;
    expect(replay.revision).toBeGreaterThanOrEqual(last);
    expect(replay.document.plan.ticket.notes).toBe(replay.revision === 1 ? '' : `note ${replay.revision}`);
    last = replay.revision;
  }
  expect(last).toBe(4);
});

test('a broken line in the middle stops the chain of patches, a whole document after it starts a new one', () => {
  const lines = [header, ...entries].map(journalLine);
  lines[2] = lines[2].replace('note', 'nope');
  expect(replayJournal(lines.join(''))?.revision).toBe(1);
  lines.push(journalLine({ kind: 'document', revision: 9, document: bareTicket('T-9') }));
  expect(replayJournal(lines.join(''))).toMatchObject({
    revision: 9,
    document: { plan: { ticket: { number: 'T-9' } } },
  });
});

test('a write that was repeated after a refusal counts once', () => {
  const lines = [...entries.slice(0, 3), patched(2), patched(3), patched(4)];
  expect(replayJournal(journal(lines))).toMatchObject({ revision: 4 });
});

test('patches that fit no place, and documents that would not open, lead nowhere', () => {
  const nowhere: JournalEntry = {
    ...{ kind: 'patches', base: 1, revision: 2 },
    patches: [{ op: 'replace', path: ['plan', 'sites', 7, 'name'], value: 'x' }],
  };
  expect(replayJournal(journal([entries[0], nowhere]))?.revision).toBe(1);
  const broken = bareTicket();
  const document = { ...broken, board: { ...broken.board, version: 99 as typeof broken.board.version } };
  expect(replayJournal(journal([{ kind: 'document', revision: 1, document }]))).toBeNull();
  expect(replayJournal(journal([]))).toBeNull();
  expect(replayJournal('')).toBeNull();
});

test('a journal tells its owner by name: process, host and ticket', () => {
  const owner = readJournalName(journalName('key-1', 'beef'));
  expect(owner).toMatchObject({ ticketKey: 'key-1', pid: process.pid });
  expect(readJournalName('notes.txt')).toBeNull();
});

test('an owner lives while its process does and the journal is touched', () => {
  const mine = readJournalName(journalName('k', 'beef'))!;
  const parent = { ...mine, pid: process.ppid };
  const gone = { ...mine, pid: 2 ** 22 + 1 };
  const elsewhere = { ...mine, host: '00000000' };
  const now = 1_000_000;
  expect(ownerLives(mine, now, now, true)).toBe(true);
  expect(ownerLives(mine, now, now, false)).toBe(false);
  expect(ownerLives(parent, now, now, false)).toBe(true);
  expect(ownerLives(parent, now - 60_000, now, false)).toBe(false);
  expect(ownerLives(gone, now, now, false)).toBe(false);
  expect(ownerLives(elsewhere, now - 5000, now, false)).toBe(true);
  expect(ownerLives(elsewhere, now - 60_000, now, false)).toBe(false);
});
