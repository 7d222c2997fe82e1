import { expect, it } from 'vitest';
import { nothingDecided, updateBoard, withRenames } from '../../../../renderer/editing/board-update.ts';
import { setTag } from '../../../../renderer/editing/tags.ts';
import { alignBoards } from '../../../../shared-types/rules/board-update/align.ts';
import { compareBoards } from '../../../../shared-types/rules/board-update/compare.ts';
import { tellingAll } from '../../shared-types/rules/board-update/random-edits.ts';
import { smallDocument } from './sample-document.ts';

/** The small board with tags on three parts, and files in which C1 and U2 are gone and R1 is called R9. */
function updated() {
  const document = setTag(setTag(smallDocument(), ['C1', 'U2'], 'remove'), ['R1'], 'shield');
  const board = {
    ...document.board,
    parts: document.board.parts
      .filter(({ refdes }) => refdes !== 'C1' && refdes !== 'U2')
      .map((part) => (part.refdes === 'R1' ? { ...part, refdes: 'R9' } : part)),
  };
  return { document, source: { board, told: tellingAll(board) } };
}

it('takes a part off with its tags, keeps another, and follows a third to its new designator', () => {
  const { document, source } = updated();
  const decisions = { ...nothingDecided, fates: { C1: 'clear', U2: 'stay' }, renames: { R1: 'R9' } } as const;
  const named = withRenames(document, decisions);
  const changes = compareBoards(named.board, source, alignBoards(named.board, source));
  expect(changes.gone.map(({ refdes }) => refdes)).toEqual(['C1', 'U2']);
  const next = updateBoard(document, changes, decisions);
  expect(next.board.parts.map(({ refdes }) => refdes)).toEqual(['U1', 'C2', 'R9', 'U2']);
  expect(next.plan.tags.map(({ kind, refdes }) => [kind, refdes])).toEqual([
    ['remove', 'U2'],
    ['shield', 'R9'],
  ]);
});

it('leaves the tags of a part that goes unless it is told', () => {
  const { document, source } = updated();
  const next = updateBoard(document, compareBoards(document.board, source), nothingDecided);
  expect(next.board.parts.map(({ refdes }) => refdes)).toEqual(['U1', 'C2', 'R9']);
  expect(next.plan).toEqual(document.plan);
});
