import { expect, test } from 'vitest';
import { addSiteOn, moveSiteArea } from '../../../../renderer/editing/sites.ts';
import { setTag } from '../../../../renderer/editing/tags.ts';
import { type AppState, startingState } from '../../../../renderer/state/app-state.ts';
import { createStore } from '../../../../renderer/state/store.ts';
import { createBench } from '../../../../renderer/state/workbench.ts';
import type { TicketDocument } from '../../../../shared-types/plan.ts';
import { smallDocument } from '../editing/sample-document.ts';

function bench() {
  const document: TicketDocument = addSiteOn(smallDocument(), 'U1');
  const ticket = { id: 't', fileName: 't', document, revision: 0, save: { state: 'filed' as const, at: null } };
  const store = createStore<AppState>({ ...startingState(), ticket });
  const heard: ('now' | 'soon')[] = [];
  const made = createBench(store, (_, when) => heard.push(when));
  return { ...made, store, heard, start: document, document: () => store.get().ticket?.document };
}

const to = (x: number) => (document: TicketDocument) =>
  moveSiteArea(document, 'site-1', { x, y: 1, lengthMm: 5, widthMm: 5, turnDeg: 0 });

test('a gesture is one undo step, and what it shows on the way replaces itself', () => {
  const b = bench();
  b.begin('move');
  for (const x of [1, 2, 3]) b.preview(to(x));
  expect(b.document()?.plan.sites[0].area.x).toBe(3);
  b.commit();
  expect(b.store.get().history.done).toHaveLength(1);
  b.undo();
  expect(b.document()).toEqual(b.start);
  b.redo();
  expect(b.document()?.plan.sites[0].area.x).toBe(3);
});

test('a cancelled gesture leaves nothing behind, not even an undo step', () => {
  const b = bench();
  b.begin('move');
  b.preview(to(9));
  b.cancel();
  expect(b.document()).toBe(b.start);
  expect(b.store.get().history.done).toHaveLength(0);
  expect(b.heard.at(-1)).toBe('now');
});

test('previews are sent as soon, ends at once', () => {
  const b = bench();
  b.begin('move');
  b.preview(to(9));
  expect(b.heard).toEqual(['soon']);
  b.commit();
  expect(b.heard.at(-1)).toBe('now');
});

test('an edit in the middle of a gesture ends the gesture first', () => {
  const b = bench();
  b.begin('move');
  b.preview(to(4));
  b.apply('shield', (document) => setTag(document, ['C1'], 'shield'));
  expect(b.store.get().history.done.map((step) => step.label)).toEqual(['move', 'shield']);
});

test('selecting is no undo step and leaves redo alone', () => {
  const b = bench();
  b.apply('shield', (document) => setTag(document, ['C1'], 'shield'));
  b.undo();
  b.select([{ kind: 'part', refdes: 'C1' }], 'replace');
  b.select([{ kind: 'part', refdes: 'C2' }], 'add');
  expect([...b.store.get().selection.parts]).toEqual(['C1', 'C2']);
  b.select([{ kind: 'part', refdes: 'C1' }], 'toggle');
  expect([...b.store.get().selection.parts]).toEqual(['C2']);
  expect(b.store.get().history.undone).toHaveLength(1);
});

test('what is gone is no longer selected', () => {
  const b = bench();
  b.select([{ kind: 'site', siteId: 'site-1' }], 'replace');
  b.apply('none', (document) => ({ ...document, plan: { ...document.plan, sites: [], heatRuns: [], tags: [] } }));
  expect(b.store.get().selection.siteId).toBeNull();
});

test('the menu keeps a selection that holds what lies under the pointer', () => {
  const b = bench();
  b.select(
    [
      { kind: 'part', refdes: 'C1' },
      { kind: 'part', refdes: 'C2' },
    ],
    'replace',
  );
  b.openMenu({ kind: 'part', refdes: 'C2' }, { x: 1, y: 1 });
  expect(b.store.get().selection.parts.size).toBe(2);
  b.openMenu({ kind: 'part', refdes: 'U1' }, { x: 1, y: 1 });
  expect([...b.store.get().selection.parts]).toEqual(['U1']);
});
