import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { writeBoard } from '../../main/document/open-document.ts';
import { packTicket } from '../../main/document/ticket-archive.ts';
import { loadSheetFonts } from '../../main/shells/fonts.ts';
import { renderWorkMap } from '../../main/work-map/render.ts';
import { renderWorkMapSvg } from '../../main/work-map/render-svg.ts';
import type { EvaluatedTicket } from '../../main/workers/evaluator.ts';
import { type MainEvent, type RequestName, requests } from '../../shared-types/contract.ts';
import { encodeFrame } from '../../shared-types/frame.ts';
import type { Plan } from '../../shared-types/plan.ts';
import type { SearchBounds } from '../../shared-types/profile-search.ts';
import { defaultSettings } from '../../shared-types/settings.ts';
import type { TagOf } from '../../shared-types/tags.ts';
import { builtPart } from '../support/shell/build-main.ts';
import { type Connect, carriers } from '../support/shell/carriers.ts';
import { temporaryFolder } from '../support/shell/folders.ts';
import { eventLog, testProgram } from '../support/shell/program.ts';
import { notePatch, smallBoard, smallTicket } from '../support/shell/small-ticket.ts';

const mainFolder = builtPart('main');

const FIXED_DATE = new Date('2026-11-25T14:12:00Z');

const isFine = (event: MainEvent): event is Extract<MainEvent, { name: 'evaluation.result' }> =>
  event.name === 'evaluation.result' && event.phase === 'fine';

async function bench(connect: Connect) {
  const folder = temporaryFolder();
  const workerFile = join(mainFolder(), 'evaluation.worker.js');
  const { program } = await testProgram({
    ...{ folder, workerFile, now: () => FIXED_DATE, pauses: { journalAfterMs: 20, saveAfterMs: 60_000 } },
    async renderWorkMap(ticket) {
      const sheet = await renderWorkMap(sheetInput(ticket));
      return { bytes: new Uint8Array(sheet.bytes), pages: sheet.pages };
    },
    drawSheetPages: async (ticket) =>
      renderWorkMapSvg(sheetInput(ticket)).map((page) => new TextEncoder().encode(page)),
  });
  const connection = await connect(program);
  const log = eventLog();
  connection.backend.listen(log.hear);
  return { ...connection, program, log, folder };
}

const sheetInput = ({ document, assessment }: EvaluatedTicket) => ({
  ...document,
  ...{ assessment, fonts: loadSheetFonts(), programVersion: '0.0.0', date: FIXED_DATE.toISOString() },
});

/** Runs one of everything that the contract has, and writes down what came back, times of the machine left out. */
async function story(connect: Connect) {
  const { backend, log, folder } = await bench(connect);
  const asked = new Set<RequestName>();
  const answers: unknown[] = [];
  const ask: typeof backend.request = async (name, input) => {
    asked.add(name);
    const answer = await backend.request(name, input);
    answers.push([name, answer]);
    return answer;
  };
  const samples = await ask('samples.list', {});
  const sampleId = samples.ok ? samples.value.cards[0].id : '';
  const opened = await ask('ticket.fromSample', { id: sampleId, number: 'T-7' });
  if (!opened.ok) throw new Error(JSON.stringify(opened));
  const { id } = opened.value;
  const result = await log.find(isFine);
  const { plan } = opened.value.document;
  const about = { id, revision: result.revision, runId: plan.heatRuns[0].id };
  await ask('evaluation.moment', { ...about, atS: 62.5 });
  const refdes = [plan.sites[0].target];
  await ask('evaluation.curves', { ...about, refdes, tagIds: [] });
  const boardReadings = { sourceC: 300, readings: [{ atS: 120, boardC: 90 }] };
  await ask('preheater.fit', { id, boardReadings });
  const logged = new TextEncoder().encode('time;W1\n0;23\n60;90\n120;140');
  await ask('calibration.readLog', { file: { name: 'log.csv', bytes: logged } });
  await ask('ticket.patch', { id, base: 0, patches: [notePatch('mind the connector')] });
  await ask('ticket.patch', { id, base: 7, patches: [notePatch('from another revision')] });
  const watched: Plan = { ...plan, tags: [...plan.tags, watchPoint] };
  await ask('ticket.replace', { id, document: { board: smallBoard('Second drawing'), plan: watched } });
  const point = { tagId: watchPoint.id, attachment: 'epoxy', samples: null, peakC: 215 } as const;
  const order = { runId: about.runId, logName: 'typed', points: [point] };
  await ask('calibration.fit', { id, order });
  await ask('search.run', { id, order: { runId: about.runId, bounds: NARROW } });
  await ask('study.cancel', { id });
  await ask('evaluation.cancel', { id });
  await ask('evaluation.run', { id, phase: 'both' });
  const picture = new Uint8Array([0xff, 0xd8, 0xff, 1, 2, 3]);
  const piece = { id, arrival: 'first', size: picture.length };
  await ask('photo.add', { ...piece, at: 0, bytes: picture.slice(0, 4) });
  await ask('photo.add', { ...piece, at: 5, bytes: picture.slice(5) });
  await ask('photo.add', { ...piece, at: 0, bytes: picture.slice(0, 4) });
  const added = await ask('photo.add', { ...piece, at: 4, bytes: picture.slice(4) });
  await ask('photo.read', { id, sha256: (added.ok && added.value.sha256) || '' });
  await ask('photo.read', { id, sha256: 'none' });
  await ask('ticket.save', { id });
  await ask('workMap.render', { id, format: 'pdf' });
  await ask('workMap.preview', { id });
  await ask('ticket.versions', { id });
  await ask('ticket.openVersion', { id, version: 'none' });
  await ask('ticket.close', { id });
  await ask('ticket.open', { id });
  await ask('ticket.remove', { id });
  await ask('ticket.new', { number: 'T-8', document: smallTicket('T-8') });
  await ask('ticket.new', { number: 'T-8', document: smallTicket('T-8') });
  const board = new TextEncoder().encode(writeBoard(smallBoard()));
  await ask('ticket.openFile', { file: { name: 'drawn.board.json', bytes: board } });
  const ticket = packTicket({ document: smallTicket('T-9'), photos: new Map([['a1', new Uint8Array([1, 2, 3])]]) });
  await ask('ticket.openFile', { file: { name: 'C:\\bench\\T-9.hmticket', bytes: new Uint8Array(ticket) } });
  await ask('import.read', {
    files: [{ name: 'nothing.txt', bytes: new Uint8Array([0xff, 0xfe, 0x00]) }],
    choices: {},
  });
  await ask('settings.write', { settings: { ...defaultSettings, theme: 'dark' } });
  await ask('settings.read', {});
  await ask('about.read', {});
  await ask('shelf.list', {});
  const files = readdirSync(join(folder, 'shelf')).sort();
  const kept = files.map((name) => readFileSync(join(folder, 'shelf', name)));
  return { asked, answers: withoutClock(answers, folder), assessment: result.assessment, files, kept };
}

/** One profile and no other: the search itself has tests of its own. */
const NARROW: SearchBounds = {
  ...{ belowC: { from: 300, to: 300 }, leadS: { from: 120, to: 120 }, gasC: { from: 340, to: 340 } },
  ...{ gasS: { from: 40, to: 42 }, toPeakS: 480 },
};

const watchPoint: TagOf<'watchPoint'> = {
  ...{ id: 'w1', kind: 'watchPoint', order: null, note: '', name: 'W1', side: 'top', x: 10, y: 10, refdes: null },
};

/** Dates of files and folders of the test differ from run to run by nature. */
function withoutClock(value: unknown, folder: string): unknown {
  if (typeof value === 'string' && value.includes(folder)) return value.replace(folder, '');
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return value;
  if (Array.isArray(value)) return value.map((item) => withoutClock(item, folder));
  const entries = Object.entries(value).filter(([key]) => key !== 'changedAt' && key !== 'id');
  return Object.fromEntries(entries.map(([key, item]) => [key, withoutClock(item, folder)]));
}

test('every carrier brings the same bytes of everything in the contract', async () => {
  const [first, ...others] = await Promise.all(carriers.map(([, connect]) => story(connect)));
  expect([...first.asked].sort()).toEqual(Object.keys(requests).sort());
  expect(first.assessment.evaluation.fields.top.length).toBeGreaterThan(100);
  expect(first.files).toEqual(['T-8.hmticket', 'T-9.hmticket', 'drawn.hmticket']);
  for (const other of others) {
    expect(other.answers).toEqual(first.answers);
    expect(Buffer.compare(encodeFrame(other.assessment), encodeFrame(first.assessment))).toBe(0);
    expect(Buffer.compare(encodeFrame(other.answers), encodeFrame(first.answers))).toBe(0);
    expect(other.kept).toEqual(first.kept);
  }
}, 60_000);

test('the story answers as the contract says', async () => {
  const { answers } = await story(carriers[0][1]);
  const told = (
    answers as [string, { ok: boolean; value?: Record<string, unknown>; problem?: { code: string } }][]
  ).map(([name, answer]) => [name, answer.ok ? 'ok' : answer.problem?.code]);
  expect(told.filter(([, outcome]) => outcome !== 'ok')).toEqual([
    ['photo.add', 'invalid-field'],
    ['photo.read', 'not-found'],
    ['ticket.openVersion', 'not-found'],
    ['ticket.new', 'file-exists'],
  ]);
  const render = (answers as [string, { value: { bytes: Uint8Array } }][]).find(([name]) => name === 'workMap.render');
  expect(new TextDecoder().decode(render?.[1].value.bytes.subarray(0, 5))).toBe('%PDF-');
  const preview = (answers as [string, { value: { pages: Uint8Array[] } }][]).find(
    ([name]) => name === 'workMap.preview',
  );
  const pages = preview?.[1].value.pages ?? [];
  expect(pages.length).toBeGreaterThan(5);
  for (const page of pages) expect(new TextDecoder().decode(page.subarray(0, 5))).toBe('<?xml');
}, 60_000);

describe.each(carriers)('over the %s', (_name, connect) => {
  test('answers come to the request that asked, however they overlap', async () => {
    const { backend } = await bench(connect);
    const numbers = Array.from({ length: 20 }, (_, index) => `T-${index}`);
    const opened = await Promise.all(
      numbers.map((number) => backend.request('ticket.new', { number, document: smallTicket(number) })),
    );
    const given = opened.map((answer) => (answer.ok ? answer.value.document.plan.ticket.number : answer.problem.code));
    expect(given).toEqual(numbers);
  });

  test('an unknown request and an input that does not fit are refused by name', async () => {
    const { backend } = await bench(connect);
    const request = backend.request as (name: string, input: unknown) => Promise<unknown>;
    expect(await request('shelf.burn', {})).toMatchObject({ ok: false, problem: { code: 'refused' } });
    expect(await request('__proto__', {})).toMatchObject({ ok: false, problem: { code: 'refused' } });
    expect(await request('ticket.open', { id: 'x', path: '/etc/passwd' })).toMatchObject({
      ...{ ok: false, problem: { code: 'invalid-field', where: 'ticket.open' } },
    });
    expect(await request('ticket.patch', { id: 'x', base: -1, patches: [] })).toMatchObject({
      ...{ ok: false, problem: { code: 'invalid-field', where: 'ticket.patch.base' } },
    });
  });

  test('a window that goes leaves its ticket saved', async () => {
    const { backend, cut, gone, folder } = await bench(connect);
    const opened = await backend.request('ticket.new', { number: 'T-1', document: smallTicket() });
    if (!opened.ok) throw new Error('not opened');
    await backend.request('ticket.patch', { id: opened.value.id, base: 0, patches: [notePatch('the last word')] });
    cut();
    await gone;
    const next = await bench(connect);
    const file = { name: 'T-1.hmticket', bytes: new Uint8Array(readFileSync(join(folder, 'shelf/T-1.hmticket'))) };
    const again = await next.backend.request('ticket.openFile', { file });
    expect(again.ok && again.value.document.plan.ticket.notes).toBe('the last word');
    expect(readdirSync(join(folder, 'app/journals'))).toEqual([]);
  });

  test('after a conflict the card of the original opens the original, not the copy', async () => {
    const { backend, program } = await bench(connect);
    const opened = await backend.request('ticket.new', { number: 'T-1', document: smallTicket() });
    if (!opened.ok) throw new Error('not opened');
    const { id } = opened.value;
    const other = await connect(program);
    await other.backend.request('ticket.open', { id });
    await other.backend.request('ticket.patch', { id, base: 0, patches: [notePatch('theirs')] });
    await backend.request('ticket.patch', { id, base: 0, patches: [notePatch('mine')] });
    await other.backend.request('ticket.save', { id });
    const saved = await backend.request('ticket.save', { id });
    expect(saved.ok && saved.value.conflictCopy).toMatch(/^T-1 \(other version/);
    const again = await backend.request('ticket.open', { id });
    expect(again.ok && [again.value.fileName, again.value.document.plan.ticket.notes]).toEqual([
      'T-1.hmticket',
      'theirs',
    ]);
    const shelf = await backend.request('shelf.list', {});
    const copy = shelf.ok ? shelf.value.cards.find((card) => card.fileName !== 'T-1.hmticket') : undefined;
    const mine = await backend.request('ticket.open', { id: copy?.id ?? '' });
    expect(mine.ok && mine.value.document.plan.ticket.notes).toBe('mine');
  });

  test('the same ticket dropped twice is one ticket', async () => {
    const { backend } = await bench(connect);
    const bytes = new Uint8Array(packTicket({ document: smallTicket('T-9'), photos: new Map() }));
    const ids: string[] = [];
    for (let time = 0; time < 2; time++) {
      const opened = await backend.request('ticket.openFile', { file: { name: 'T-9.hmticket', bytes } });
      if (!opened.ok) throw new Error(opened.problem.code);
      ids.push(opened.value.id);
      await backend.request('ticket.close', { id: opened.value.id });
    }
    expect(ids[1]).toBe(ids[0]);
    const open = await backend.request('ticket.open', { id: ids[0] });
    expect(open.ok).toBe(true);
    await backend.request('ticket.patch', { id: ids[0], base: 0, patches: [notePatch('edited since')] });
    const third = await backend.request('ticket.openFile', { file: { name: 'T-9.hmticket', bytes } });
    expect(third.ok && third.value.fileName).toBe('T-9 (2).hmticket');
    const first = await backend.request('ticket.open', { id: ids[0] });
    expect(first.ok && first.value.document.plan.ticket.notes).toBe('edited since');
  });

  test('when main is gone every open request is answered with a problem', async () => {
    const { backend, cut } = await bench(connect);
    const answers = [backend.request('shelf.list', {}), backend.request('samples.list', {})];
    cut();
    const later = await Promise.all(answers);
    expect(later.map((answer) => answer.ok || answer.problem.code === 'refused')).toEqual([true, true]);
    await expect.poll(async () => backend.request('about.read', {}).then((answer) => answer.ok)).toBe(false);
  });
});
