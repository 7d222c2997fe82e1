import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { BOARD, PLAN } from '../../main/document/migrations/formats.ts';
import { migrate } from '../../main/document/migrations/migrate.ts';
import { readBoard, readPlan, writeBoard } from '../../main/document/open-document.ts';
import { journalLine } from '../../main/files/journal-lines.ts';
import { replayJournal } from '../../main/files/journal-replay.ts';
import { readTicketFile } from '../../main/files/ticket-file.ts';

/** Documents that older programs wrote, kept as they were: NAME-VERSION.board.json, .plan.json and whole tickets. */
const FOLDER = join(import.meta.dirname, 'past-versions');
const textOf = (name: string) => readFileSync(join(FOLDER, name), 'utf8');

const formats = [
  { format: BOARD, kind: 'board', read: readBoard },
  { format: PLAN, kind: 'plan', read: readPlan },
];
const steps = formats.flatMap(({ format, kind, read }) =>
  format.migrations.map((step) => ({ format, kind, read, step, file: `${kind}-${step.from}.${kind}.json` })),
);

test('there is one step from every version to the next, in order', () => {
  for (const { format } of formats)
    expect(format.migrations.map(({ from }) => from)).toEqual(
      Array.from({ length: format.version - 1 }, (_, index) => index + 1),
    );
});

describe.each(steps)('$kind, the step from version $step.from', ({ format, read, step, file }) => {
  test('has a document of that version, which the step changes and the program opens', () => {
    expect(existsSync(join(FOLDER, file)), `keep a real document as ${file}`).toBe(true);
    const old = JSON.parse(textOf(file));
    expect(old).toMatchObject({ format: format.name, version: step.from });
    expect(step.migrate(structuredClone(old)), 'the step does something').not.toEqual(old);
    const opened = read(textOf(file), file);
    expect(opened.ok, JSON.stringify(opened)).toBe(true);
    expect(opened.ok && opened.value.version).toBe(format.version);
  });

  test('is told when it is missing: nothing else does its work', () => {
    const others = format.migrations.filter((one) => one !== step);
    const opened = migrate(JSON.parse(textOf(file)), { ...format, migrations: others }, file);
    expect(opened).toMatchObject({ ok: false, problem: { code: 'migration-failed' } });
  });
});

test('version 1 boards get no photos and keep everything else', () => {
  const old = JSON.parse(textOf('board-1.board.json'));
  expect(old.photos).toBeUndefined();
  const opened = readBoard(textOf('board-1.board.json'), 'old');
  if (!opened.ok) throw new Error(opened.problem.code);
  const { photos, straps, packages, ...rest } = JSON.parse(writeBoard(opened.value));
  expect({ photos, straps, packages }).toEqual({ photos: [], straps: [], packages: [] });
  expect({ ...rest, version: 1 }).toEqual(old);
});

test.each(readdirSync(FOLDER).filter((name) => name.endsWith('.hmticket')))('the ticket %s opens', (name) => {
  const read = readTicketFile(new Uint8Array(readFileSync(join(FOLDER, name))), name);
  if (!read.ok) throw new Error(JSON.stringify(read.problem));
  expect(read.value.document.board).toMatchObject({ version: BOARD.version });
  expect(read.value.document.plan).toMatchObject({ version: PLAN.version });
});

test('a journal that an older program left is read through the steps as a file is', () => {
  const board = JSON.parse(textOf('board-1.board.json'));
  const ticket = readTicketFile(new Uint8Array(readFileSync(join(FOLDER, 'board-1-plan-1.hmticket'))), 'old');
  if (!ticket.ok) throw new Error(ticket.problem.code);
  const { plan } = ticket.value.document;
  const header = { kind: 'header', format: 'heatmargin-journal', version: 1, path: '/old', baseHash: 'h' } as const;
  const text = [header, { kind: 'document', revision: 3, document: { board, plan } } as const]
    .map(journalLine)
    .join('');
  expect(replayJournal(text)?.document.board).toMatchObject({ version: BOARD.version, photos: [] });
});
