import fc from 'fast-check';
import { expect, test } from 'vitest';
import { diffDocuments } from '../../../../renderer/editing/diff.ts';
import { emptyHistory, record, redo, undo } from '../../../../renderer/editing/history.ts';
import { setTag } from '../../../../renderer/editing/tags.ts';
import { documentSchema } from '../../../../shared-types/contract.ts';
import type { TicketDocument } from '../../../../shared-types/plan.ts';
import { boardFault } from '../../../../shared-types/rules/board-faults.ts';
import { contourFaultOf } from '../../../../shared-types/rules/contour-faults.ts';
import { applyDocumentPatches } from '../../../../shared-types/rules/patches.ts';
import { planFault } from '../../../../shared-types/rules/plan-faults.ts';
import { anyCommand, type Command } from './random-commands.ts';
import { smallDocument } from './sample-document.ts';

const run = (commands: readonly Command[]) => {
  let document: TicketDocument = smallDocument();
  let history = emptyHistory;
  for (const command of commands) {
    const next = command(document);
    history = record(history, 'edit', document, next);
    document = next;
  }
  return { document, history };
};

test('undoing everything gives the start, redoing everything the end', () => {
  fc.assert(
    fc.property(fc.array(anyCommand, { maxLength: 25 }), (commands) => {
      const { document: end, history: filled } = run(commands);
      let state = { document: end, history: filled };
      for (let step = undo(state.history, state.document); step; step = undo(state.history, state.document))
        state = step;
      expect(state.document).toEqual(smallDocument());
      for (let step = redo(state.history, state.document); step; step = redo(state.history, state.document))
        state = step;
      expect(state.document).toEqual(end);
    }),
    { numRuns: 150 },
  );
});

test('any commands leave a document that schema and plan rules accept', () => {
  fc.assert(
    fc.property(fc.array(anyCommand, { maxLength: 25 }), (commands) => {
      const { document } = run(commands);
      expect(documentSchema.safeParse(document).error?.issues ?? []).toEqual([]);
      expect(planFault(document.plan)).toBeNull();
      const { outline, cutouts } = document.board;
      for (const id of ['outline' as const, ...cutouts.keys()]) expect(contourFaultOf(outline, cutouts, id)).toBeNull();
    }),
    { numRuns: 150 },
  );
});

test('designators stay unique, and no tag or site refers to a part that is gone', () => {
  fc.assert(
    fc.property(fc.array(anyCommand, { maxLength: 25 }), (commands) => {
      const { board, plan } = run(commands).document;
      expect(boardFault(board)).toBeNull();
      const known = new Set([...board.parts.map((part) => part.refdes), ...board.covers.map((cover) => cover.id)]);
      const named = plan.tags.flatMap((tag) => tag.refdes ?? []).concat(plan.sites.map((site) => site.target));
      expect(named.filter((refdes) => !known.has(refdes))).toEqual([]);
      for (const site of plan.sites)
        expect(board.parts.find((part) => part.refdes === site.target)?.side).toBe(site.side);
    }),
    { numRuns: 150 },
  );
});

test('the patches between any two documents survive a trip as JSON', () => {
  fc.assert(
    fc.property(fc.array(anyCommand, { maxLength: 12 }), fc.array(anyCommand, { maxLength: 12 }), (first, second) => {
      const [from, to] = [run(first).document, run(second).document];
      const patches = JSON.parse(JSON.stringify(diffDocuments(from, to)));
      expect(applyDocumentPatches(from, patches)).toEqual(to);
    }),
    { numRuns: 100 },
  );
});

test('one undo takes one step back, and a new edit clears what could be redone', () => {
  const start = smallDocument();
  const first = setTag(start, ['C1'], 'remove');
  const second = setTag(first, ['C2'], 'shield');
  const history = record(record(emptyHistory, 'a', start, first), 'b', first, second);
  const back = undo(history, second)!;
  expect(back.document).toEqual(first);
  expect(back.label).toBe('b');
  expect(back.history.undone).toHaveLength(1);
  const edited = record(back.history, 'c', first, setTag(first, ['U2'], 'shield'));
  expect(edited.undone).toHaveLength(0);
  expect(edited.done.map((step) => step.label)).toEqual(['a', 'c']);
});

test('an edit that changes nothing is no step and keeps what can be redone', () => {
  const start = smallDocument();
  const next = setTag(start, ['C1'], 'remove');
  const back = undo(record(emptyHistory, 'a', start, next), next)!;
  expect(record(back.history, 'nothing', start, start)).toBe(back.history);
});

test('a change of one part is one small patch', () => {
  const start = smallDocument();
  const next = setTag(start, ['C1'], 'remove');
  expect(diffDocuments(start, next)).toEqual([
    { op: 'add', path: ['plan', 'tags', 0], value: expect.objectContaining({ kind: 'remove', refdes: 'C1' }) },
  ]);
});
