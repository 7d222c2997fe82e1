import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { contentHash, opaqueId } from '../../../../main/files/content-hash.ts';
import { journalLine } from '../../../../main/files/journal-lines.ts';
import { temporaryFolder } from '../../../support/shell/folders.ts';
import { notePatch } from '../../../support/shell/small-ticket.ts';
import { bench, journals, openTicket } from '../../../support/shell/tickets.ts';

const PAST = join(import.meta.dirname, '../../../documents/past-versions');

/** A shelf with a ticket of version 1, and the journal that a program of that time left when it died. */
function leftByOlderProgram(folder: string): string {
  const path = join(folder, 'shelf', 'T-1.hmticket');
  const ticket = readFileSync(join(PAST, 'board-1-plan-1.hmticket'));
  const board = JSON.parse(readFileSync(join(PAST, 'board-1.board.json'), 'utf8'));
  const plan = JSON.parse(readFileSync('sample-boards/tide-gauge-logger.plan.json', 'utf8'));
  mkdirSync(join(folder, 'shelf'), { recursive: true });
  mkdirSync(join(folder, 'app', 'journals'), { recursive: true });
  writeFileSync(path, ticket);
  const header = { kind: 'header', format: 'heatmargin-journal', version: 1 } as const;
  const lines = [
    { ...header, path, baseHash: contentHash(ticket) },
    { kind: 'document', revision: 1, document: { board, plan } } as const,
  ];
  const name = `${opaqueId(path)}.00000000.1.beef.journal`;
  writeFileSync(join(folder, 'app', 'journals', name), lines.map(journalLine).join(''));
  return opaqueId(path);
}

test('work after taking over the journal of an older program survives a second crash', async () => {
  const folder = temporaryFolder();
  const id = leftByOlderProgram(folder);
  const hourLater = { now: () => new Date(Date.now() + 3_600_000) };
  const first = await openTicket(bench(folder, hourLater), id);
  expect(first.recovered).toBe(true);
  // A place that documents of version 1 do not have.
  const sha256 = 'a'.repeat(64);
  const photo = {
    ...{ id: 'photo-1', side: 'top', name: 'bench.jpg', sha256, mediaType: 'image/jpeg', orientation: 1 },
    ...{ widthPx: 40, heightPx: 30, pairs: [], fit: null, opacity: 0.6, shown: true },
    working: { sha256, mediaType: 'image/jpeg', widthPx: 40, heightPx: 30 },
  };
  const add = { op: 'add' as const, path: ['board', 'photos', 0], value: photo };
  first.session.patch(first.session.revision, [add, notePatch('after the first crash')]);
  await expect.poll(() => readFileSync(join(folder, 'app/journals', journals(folder)[0]), 'utf8')).toMatch(/after the/);

  const second = await openTicket(bench(folder, hourLater), id);
  expect(second.recovered).toBe(true);
  expect(second.session.document.plan.ticket.notes).toBe('after the first crash');
});
