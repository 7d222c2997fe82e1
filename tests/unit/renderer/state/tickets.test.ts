import { expect, test, vi } from 'vitest';
import { addSiteOn, moveSiteArea } from '../../../../renderer/editing/sites.ts';
import { setTagNote } from '../../../../renderer/editing/tags.ts';
import { createApp, startApp } from '../../../../renderer/state/app.ts';
import type { Backend, RequestName } from '../../../../shared-types/contract.ts';
import type { TicketDocument } from '../../../../shared-types/plan.ts';
import { fail, succeed } from '../../../../shared-types/problem.ts';
import { smallDocument } from '../editing/sample-document.ts';

/** A backend that answers at once and writes down what it was asked. */
function fakeBackend(document: TicketDocument) {
  const asked: { name: RequestName; input: Record<string, unknown> }[] = [];
  let revision = 0;
  const answers: Partial<Record<RequestName, () => unknown>> = {
    'ticket.open': () => ({ id: 't', fileName: 't.hmticket', revision, document, recovered: false }),
    'ticket.patch': () => ({ revision: ++revision, gap: false }),
    'evaluation.run': () => ({}),
    'ticket.close': () => ({}),
    'shelf.list': () => ({ folder: '/shelf', cards: [] }),
    'samples.list': () => ({ cards: [] }),
  };
  const request = async (name: RequestName, input: Record<string, unknown>) => {
    asked.push({ name, input });
    const answer = answers[name];
    return answer ? succeed(answer()) : fail('refused');
  };
  const backend = { request, listen: () => () => {} } as unknown as Backend;
  const runs = () => asked.filter((one) => one.name === 'evaluation.run').map((one) => one.input.phase);
  return { backend, asked, answers, runs };
}

async function opened() {
  const fake = fakeBackend(addSiteOn(smallDocument(), 'U1'));
  const app = createApp(fake.backend);
  expect(await app.tickets.open('t')).toBe(true);
  return { ...fake, app };
}

const to = (x: number) => (document: TicketDocument) =>
  moveSiteArea(document, 'site-1', { x, y: 1, lengthMm: 5, widthMm: 5, turnDeg: 0 });

test('opening a ticket asks for its map', async () => {
  const { runs } = await opened();
  expect(runs()).toEqual(['both']);
});

test('a gesture asks for coarse maps, its end for the fine one, though its last change was sent already', async () => {
  const { app, runs } = await opened();
  app.bench.begin('move');
  app.bench.preview(to(10));
  await vi.waitFor(() => expect(runs()).toEqual(['both', 'coarse']));
  app.bench.commit();
  await vi.waitFor(() => expect(runs()).toEqual(['both', 'coarse', 'both']));
});

test('an edit asks for both at once, a note for nothing', async () => {
  const { app, runs, asked } = await opened();
  app.bench.apply('move', to(12));
  await vi.waitFor(() => expect(runs()).toEqual(['both', 'both']));
  app.bench.apply('note', (document) => setTagNote(document, 'tag-1', 'mind the coil'));
  await vi.waitFor(() => expect(asked.filter((one) => one.name === 'ticket.patch')).toHaveLength(2));
  await vi.waitFor(() => expect(app.store.get().ticket?.save.state).toBe('kept'));
  expect(runs()).toEqual(['both', 'both']);
});

test('closing sends what is left before it goes back to the shelf', async () => {
  const { app, asked } = await opened();
  app.bench.begin('move');
  app.bench.preview(to(20));
  await app.tickets.close();
  const names = asked.map((one) => one.name);
  expect(names.indexOf('ticket.patch')).toBeGreaterThan(0);
  expect(names.indexOf('ticket.close')).toBeGreaterThan(names.indexOf('ticket.patch'));
  expect(app.store.get().ticket).toBeNull();
});

const guessed = { weight: 'warn' as const, sentence: 'Two classes are guessed.' };

test('what the import of an opened drawing guessed is shown with the ticket, and nothing where there is nothing', async () => {
  const fake = fakeBackend(smallDocument());
  const app = createApp({
    ...fake.backend,
    request: async (name: RequestName, input: never) => {
      const answer = await fake.backend.request(name === 'ticket.openFile' ? 'ticket.open' : name, input);
      return name === 'ticket.openFile' && answer.ok
        ? succeed({ ...(answer.value as object), notes: [guessed] })
        : answer;
    },
  } as Backend);
  expect(await app.tickets.openFile({ name: 'places.csv', bytes: new Uint8Array() })).toBe(true);
  expect(app.store.get()).toMatchObject({ dialog: 'notes', openedNotes: [guessed] });
  expect(await app.tickets.open('t')).toBe(true);
  expect(app.store.get().dialog).toBeNull();
});

test('the program starts with the ticket, the notes and the problems of the file it was given', async () => {
  const fake = fakeBackend(smallDocument());
  const problem = { code: 'not-found' as const, file: 'settings.json' };
  fake.answers['about.read'] = () => ({ startTicket: 't', startNotes: [guessed], startProblems: [problem] });
  const app = createApp(fake.backend);
  const stop = startApp(app);
  await vi.waitFor(() => expect(app.store.get().ticket?.id).toBe('t'));
  expect(app.store.get()).toMatchObject({ dialog: 'notes', openedNotes: [guessed] });
  expect(
    app.store
      .get()
      .notices.map((one) => one.title)
      .join(),
  ).toContain('settings.json');
  stop();
});

test('an earlier version opens as the ticket that main made of it', async () => {
  const fake = fakeBackend(smallDocument());
  fake.answers['ticket.openVersion'] = () => ({
    ...{ id: 'v', fileName: 't (earlier).hmticket', revision: 0, document: smallDocument(), recovered: false },
  });
  const app = createApp(fake.backend);
  expect(await app.tickets.openVersion('t', '17-ab')).toBe(true);
  expect(fake.asked[0]).toEqual({ name: 'ticket.openVersion', input: { id: 't', version: '17-ab' } });
  expect(app.store.get().ticket?.id).toBe('v');
});

test('a refusal is told and opens nothing', async () => {
  const { backend } = fakeBackend(smallDocument());
  const app = createApp(backend);
  expect(await app.tickets.fromSample('s', 'T-9')).toBe(false);
  expect(app.store.get().notices).toHaveLength(1);
  expect(app.store.get().ticket).toBeNull();
});
