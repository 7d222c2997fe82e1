import { expect, test } from 'vitest';
import { addSiteOn } from '../../../../renderer/editing/sites.ts';
import { createApp } from '../../../../renderer/state/app.ts';
import type { CanvasHandle } from '../../../../renderer/state/canvas-model.ts';
import { recallEye } from '../../../../renderer/state/view-memory.ts';
import type { Backend, RequestName } from '../../../../shared-types/contract.ts';
import type { TicketDocument } from '../../../../shared-types/plan.ts';
import { succeed } from '../../../../shared-types/problem.ts';
import { defaultSettings, type Settings, settingsSchema } from '../../../../shared-types/settings.ts';
import { smallDocument } from '../editing/sample-document.ts';

const EYE = { centre: { x: 12, y: 7 }, zoom: 33 };

/** A window on tickets that all hold the same document, started with these settings. */
function windowOn(document: TicketDocument, settings: Settings = defaultSettings) {
  const written: Partial<Settings>[] = [];
  const request = async (name: RequestName, input: { id?: string; settings?: Partial<Settings> }) => {
    if (input.settings) written.push(input.settings);
    if (name === 'ticket.open')
      return succeed({ id: input.id, fileName: 't.hmticket', revision: 0, document, recovered: false });
    return succeed(name === 'shelf.list' ? { folder: '', cards: [] } : { cards: [] });
  };
  const app = createApp({ request, listen: () => () => {} } as unknown as Backend);
  app.store.set((state) => ({ ...state, settings }));
  const look = (eye: typeof EYE | null) => {
    app.canvas.current = { eye: () => eye } as unknown as CanvasHandle;
  };
  look(EYE);
  return { app, look, written, left: (): Settings => Object.assign({}, settings, ...written) };
}

const withSite = () => addSiteOn(smallDocument(), 'U1');

async function leave(document: TicketDocument, id = 't') {
  const bench = windowOn(document);
  await bench.app.tickets.open(id);
  bench.app.setView({ stage: 'board', side: 'bottom' });
  bench.app.store.set((state) => ({
    ...state,
    selection: { ...state.selection, parts: new Set(['U1', 'C1']), siteId: 'site-1' },
  }));
  await bench.app.tickets.close();
  return bench.left();
}

test('a ticket opened again shows the stage, the side, what was chosen and the place it was left at', async () => {
  const settings = await leave(withSite());
  expect(settingsSchema.parse(settings)).toEqual(settings);
  const { app } = windowOn(withSite(), settings);
  await app.tickets.open('t');
  const { view, selection } = app.store.get();
  expect(view).toMatchObject({ stage: 'board', side: 'bottom' });
  expect([...selection.parts].sort()).toEqual(['C1', 'U1']);
  expect(selection.siteId).toBe('site-1');
  expect(recallEye(app.store.get())).toEqual(EYE);
});

test('a stroke over hundreds of parts is not kept', async () => {
  const { app, left } = windowOn(withSite());
  for (const count of [200, 201]) {
    await app.tickets.open('t');
    const parts = new Set(Array.from({ length: count }, (_, index) => `R${index}`));
    app.store.set((state) => ({ ...state, selection: { ...state.selection, parts } }));
    await app.tickets.close();
    expect(left().rememberedViews[0]?.parts.length).toBe(count === 200 ? 200 : 0);
    expect(settingsSchema.safeParse(left()).success).toBe(true);
  }
});

test('what the ticket no longer has is left out, and a stage that is not known opens the usual one', async () => {
  const settings = await leave(withSite());
  const bare = smallDocument();
  const without = {
    ...bare,
    board: { ...bare.board, parts: bare.board.parts.filter(({ refdes }) => refdes !== 'U1') },
  };
  const { app } = windowOn(without, settings);
  await app.tickets.open('t');
  expect([...app.store.get().selection.parts]).toEqual(['C1']);
  expect(app.store.get().selection.siteId).toBeNull();

  const odd = { ...settings, rememberedViews: settings.rememberedViews.map((one) => ({ ...one, stage: 'attic' })) };
  const later = windowOn(withSite(), odd);
  await later.app.tickets.open('t');
  expect(later.app.store.get().view).toMatchObject({ stage: 'heat', side: 'top' });
  expect(later.app.store.get().selection.parts.size).toBe(0);
});

test('another ticket is not touched by it; one that is removed is forgotten; a hundred are not kept', async () => {
  const { app, look, written, left } = windowOn(withSite(), await leave(withSite()));
  await app.tickets.open('other');
  expect(app.store.get().view).toMatchObject({ stage: 'heat', side: 'top' });
  expect(recallEye(app.store.get())).toBeNull();
  look(null);
  await app.tickets.close();
  expect(left().rememberedViews.map(({ ticketId, eye }) => [ticketId, eye])).toEqual([
    ['t', EYE],
    ['other', null],
  ]);
  const writes = written.length;
  await app.tickets.open('other');
  await app.tickets.close();
  expect(written.length, 'nothing changed, nothing written').toBe(writes);
  expect(Object.keys(Object.assign({}, ...written)), 'nothing else is written').toEqual(['rememberedViews']);
  await app.tickets.remove('t');
  expect(left().rememberedViews.map(({ ticketId }) => ticketId)).toEqual(['other']);
  for (let index = 0; index < 100; index++) {
    await app.tickets.open(`${index}`);
    await app.tickets.close();
  }
  expect(left().rememberedViews.length).toBe(60);
  expect(left().rememberedViews.at(-1)?.ticketId).toBe('99');
});
