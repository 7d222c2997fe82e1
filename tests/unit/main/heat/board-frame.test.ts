import { expect, test } from 'vitest';
import { placeBoard } from '../../../../renderer/editing/board-frame.ts';
import { evaluated, smallBoard, smallPlan } from './support.ts';

/** The coarse map's cells, mm: moved by whole cells the board is cut up alike. */
const CELL_MM = 2;

test('the heat is the same wherever the board lies, mirrored or turned', () => {
  const board = smallBoard();
  const document = { board, plan: smallPlan(board) };
  const start = evaluated(document.board, document.plan);
  for (const frame of [
    { mirror: false, quarters: 0, by: { x: 10 * CELL_MM, y: -3 * CELL_MM } },
    { mirror: true, quarters: 0, by: { x: 0, y: 0 } },
    { mirror: true, quarters: 1, by: { x: 6, y: 8 } },
    { mirror: false, quarters: 3, by: { x: 0, y: 0 } },
  ] as const) {
    const moved = placeBoard(document, frame);
    const next = evaluated(moved.board, moved.plan);
    for (const [index, part] of start.parts.entries()) {
      expect(next.parts[index].refdes).toBe(part.refdes);
      // Cells are summed in another order; no more than that may differ.
      for (const judged of ['body', 'skin', 'joint'] as const)
        expect(Math.abs(next.parts[index][judged].maxC - part[judged].maxC), `${part.refdes} ${judged}`).toBeLessThan(
          0.05,
        );
    }
  }
});
