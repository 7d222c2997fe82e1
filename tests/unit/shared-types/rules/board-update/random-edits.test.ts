import { describe, expect, it } from 'vitest';
import { placed } from '../../../../../shared-types/rules/board-frame.ts';
import { alignBoards } from '../../../../../shared-types/rules/board-update/align.ts';
import { compareBoards } from '../../../../../shared-types/rules/board-update/compare.ts';
import { aspectKey, usualDecisions } from '../../../../../shared-types/rules/board-update/decide.ts';
import { updateTicket } from '../../../../../shared-types/rules/board-update/update-ticket.ts';
import { emptyPlan } from '../../../../../shared-types/rules/new-plan.ts';
import { editedBoard } from './random-edits.ts';

const SEEDS = Array.from({ length: 24 }, (_, index) => ({ seed: 100 + index, count: 12 + index * 6 }));
const names = (parts: readonly { refdes: string }[]) => parts.map(({ refdes }) => refdes).sort();

describe('random boards with known edits, drawn in another frame', () => {
  it.each(SEEDS)('seed $seed, $count parts: the frame is found, and exactly the edits', ({ seed, count }) => {
    const { ticket, files, told, frame, edits, added, gone } = editedBoard(seed, count);
    const source = { board: files, told };
    const found = alignBoards(ticket, source);
    expect(found.by).toBe('references');
    expect([found.frame.mirror, found.frame.over ?? false, found.frame.quarters]).toEqual([
      frame.mirror,
      frame.over ?? false,
      frame.quarters,
    ]);
    for (const at of [
      { x: 0, y: 0 },
      { x: 70, y: 20 },
    ]) {
      const [there, right] = [placed(found.frame, at), placed(frame, at)];
      expect(Math.hypot(there.x - right.x, there.y - right.y)).toBeLessThan(0.002);
    }
    const changes = compareBoards(ticket, source);
    expect(names(changes.gone)).toEqual([...gone].sort());
    expect(names(changes.added)).toEqual(added);
    expect(Object.fromEntries(changes.changed.map(({ refdes, aspects }) => [refdes, aspects]))).toEqual(
      Object.fromEntries([...edits].map(([refdes, aspect]) => [refdes, [aspect]])),
    );
    expect(changes.same).toBe(ticket.parts.length - gone.length - edits.size);
    expect([changes.outline, changes.covers, changes.questions]).toEqual([null, [], []]);
    for (const { refdes, movedMm } of changes.changed)
      expect(movedMm).toBeCloseTo(edits.get(refdes) === 'place' ? Math.hypot(1.3, 0.4) : 0, 2);
  });

  it('once all is taken, the same files have nothing more to change', () => {
    for (const { seed, count } of SEEDS.slice(0, 8)) {
      const { ticket, files, told } = editedBoard(seed, count);
      const source = { board: files, told };
      const changes = compareBoards(ticket, source);
      const ticks = Object.fromEntries(
        changes.changed.flatMap(({ refdes, aspects }) => aspects.map((aspect) => [aspectKey(aspect, refdes), true])),
      );
      const { board } = updateTicket({ board: ticket, plan: emptyPlan('T') }, changes, { ...usualDecisions, ticks });
      const again = compareBoards(board, source);
      expect([again.changed, again.added, again.gone]).toEqual([[], [], []]);
    }
  });

  it('once nothing is taken, the ticket keeps its parts as they were', () => {
    const { ticket, files, told } = editedBoard(7, 60);
    const changes = compareBoards(ticket, { board: files, told });
    const ticks = Object.fromEntries([
      ...changes.changed.flatMap(({ refdes, aspects }) => aspects.map((aspect) => [aspectKey(aspect, refdes), false])),
      ...changes.added.map(({ refdes }) => [`added ${refdes}`, false]),
    ]);
    const decisions = { ticks, stay: changes.gone.map(({ refdes }) => refdes) };
    expect(updateTicket({ board: ticket, plan: emptyPlan('T') }, changes, decisions).board.parts).toEqual(ticket.parts);
  });
});
