import { expect, test, vi } from 'vitest';
import { addSiteOn, moveSiteArea } from '../../../../renderer/editing/sites.ts';
import { setTagNote } from '../../../../renderer/editing/tags.ts';
import { createApp } from '../../../../renderer/state/app.ts';
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
  return { backend, asked, runs };
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

test('a refusal is told and opens nothing', async () => {
  const { backend } = fakeBackend(smallDocument());
  const app = createApp(backend);
  expect(await app.tickets.fromSample('s', 'T-9')).toBe(false);
  expect(app.store.get().notices).toHaveLength(1);
  expect(app.store.get().ticket).toBeNull();
});
