import { expect, test } from 'vitest';
import { setTag } from '../../../../renderer/editing/tags.ts';
import { createDocumentSync, type SyncPort } from '../../../../renderer/state/document-sync.ts';
import type { DocumentPatch } from '../../../../shared-types/contract.ts';
import type { TicketDocument } from '../../../../shared-types/plan.ts';
import { fail, type Problem, succeed } from '../../../../shared-types/problem.ts';
import { applyDocumentPatches } from '../../../../shared-types/rules/patches.ts';
import { smallDocument } from '../editing/sample-document.ts';

/** Main as the sync sees it: applies patches with the shared rule and answers when it is told to. */
function fakeMain(start: TicketDocument) {
  const main = {
    document: start,
    revision: 0,
    sendings: [] as DocumentPatch[][],
    replaced: 0,
    refuse: false,
    slow: false,
    release: [] as (() => void)[],
  };
  const port: SyncPort = {
    async patch(base, patches) {
      if (main.slow) await new Promise<void>((resolve) => main.release.push(resolve));
      if (main.refuse) return fail('invalid-field');
      if (base !== main.revision) return succeed({ revision: main.revision, gap: true });
      main.sendings.push(patches);
      main.document = applyDocumentPatches(main.document, structuredClone(patches));
      main.revision += 1;
      return succeed({ revision: main.revision, gap: false });
    },
    async replace(document) {
      main.replaced += 1;
      main.document = document;
      main.revision += 1;
      return succeed({ revision: main.revision });
    },
  };
  return { main, port };
}

const quiet = { sent: () => {}, refused: () => {} };
const step = () => new Promise((resolve) => setTimeout(resolve, 5));

test('each change reaches main as patches on its base', async () => {
  const start = smallDocument();
  const { main, port } = fakeMain(start);
  const revisions: number[] = [];
  const sync = createDocumentSync(port, { ...quiet, sent: (r) => revisions.push(r) }, { revision: 0, document: start });
  const first = setTag(start, ['C1'], 'remove');
  const second = setTag(first, ['C2'], 'shield');
  sync.changed(first, 'now');
  sync.changed(second, 'now');
  await sync.flush();
  expect(main.document).toEqual(second);
  expect(revisions.at(-1)).toBe(main.revision);
});

test('changes made while one is under way go together in the next sending', async () => {
  const start = smallDocument();
  const { main, port } = fakeMain(start);
  main.slow = true;
  const sync = createDocumentSync(port, quiet, { revision: 0, document: start });
  const first = setTag(start, ['C1'], 'remove');
  const second = setTag(first, ['C2'], 'shield');
  const third = setTag(second, ['U2'], 'remove');
  sync.changed(first, 'now');
  sync.changed(second, 'now');
  sync.changed(third, 'now');
  main.slow = false;
  for (const go of main.release) go();
  await sync.flush();
  expect(main.sendings).toHaveLength(2);
  expect(main.document).toEqual(third);
});

test('a gap makes the window send the whole document', async () => {
  const start = smallDocument();
  const { main, port } = fakeMain(start);
  main.revision = 7;
  const sync = createDocumentSync(port, quiet, { revision: 0, document: start });
  const next = setTag(start, ['C1'], 'remove');
  sync.changed(next, 'now');
  await sync.flush();
  expect(main.replaced).toBe(1);
  expect(main.document).toEqual(next);
  sync.changed(setTag(next, ['C2'], 'shield'), 'now');
  await sync.flush();
  expect(main.replaced).toBe(1);
  expect(main.revision).toBe(9);
});

test('a refused change is told and stays in the window; the next one carries both', async () => {
  const start = smallDocument();
  const { main, port } = fakeMain(start);
  const told: Problem[] = [];
  const sync = createDocumentSync(port, { ...quiet, refused: (p) => told.push(p) }, { revision: 0, document: start });
  main.refuse = true;
  const first = setTag(start, ['C1'], 'remove');
  sync.changed(first, 'now');
  await sync.flush();
  expect(told.length).toBeGreaterThan(0);
  main.refuse = false;
  const second = setTag(first, ['C2'], 'shield');
  sync.changed(second, 'now');
  await sync.flush();
  expect(main.document).toEqual(second);
});

test('a running gesture is sent throttled, its end at once', async () => {
  const start = smallDocument();
  const { main, port } = fakeMain(start);
  const sync = createDocumentSync(port, quiet, { revision: 0, document: start });
  let document = start;
  for (const refdes of ['C1', 'C2', 'U2']) {
    document = setTag(document, [refdes], 'shield');
    sync.changed(document, 'soon');
    await step();
  }
  expect(main.sendings).toHaveLength(0);
  sync.changed(document, 'now');
  await sync.flush();
  expect(main.sendings).toHaveLength(1);
  expect(main.document).toEqual(document);
});
